#include <array>

#include "base/diagnose/suggest.hpp"
#include "language/check/checker.hpp"

namespace plumbrule::check {

FormulaId Checker::add(Formula formula) {
  rules_.formulas.push_back(std::move(formula));
  return static_cast<FormulaId>(rules_.formulas.size() - 1);
}

std::optional<FormulaId> Checker::formula(syntax::ExprId id, const Measure& measure) {
  const syntax::Expr& expr = file_->exprs.at(id);
  if (const auto* literal = std::get_if<syntax::NumberExpr>(&expr.node)) {
    return number(*literal, expr.span);
  }
  if (const auto* reference = std::get_if<syntax::NameExpr>(&expr.node)) {
    return name(*reference, measure, expr.span);
  }
  if (const auto* applied = std::get_if<syntax::CallExpr>(&expr.node)) {
    return call(*applied, measure, expr.span);
  }
  return binary(std::get<syntax::BinaryExpr>(expr.node), measure, expr.span);
}

std::optional<FormulaId> Checker::number(const syntax::NumberExpr& node, const Span& span) {
  Formula out{FormulaKind::number, 0, node.quantity.number, {}, {}, span};
  if (!unit(node.quantity.unit, out.type)) {
    return std::nullopt;
  }
  return add(std::move(out));
}

std::optional<FormulaId> Checker::name(const syntax::NameExpr& node, const Measure& measure, const Span& span) {
  std::vector<std::string_view> known;
  if (!in_own_formula_) {
    known.emplace_back(measure.name);
  }
  for (std::size_t at = 0; at < measure.readings.size(); ++at) {
    if (measure.readings[at].name == node.name.value) {
      return add({FormulaKind::reading, static_cast<std::uint32_t>(at), {}, {}, measure.readings[at].type, span});
    }
    known.emplace_back(measure.readings[at].name);
  }
  if (node.name.value == measure.name) {
    if (in_own_formula_) {
      error(diagnose::Code::name_wrong_kind, span,
            "found measure `" + measure.name + "` in its own formula, which has no value yet",
            "only `refused when` may speak of the result; a formula is made of readings");
      return std::nullopt;
    }
    return add({FormulaKind::result, 0, {}, {}, measure.type, span});
  }
  if (measure_broken_) {
    return std::nullopt;  // the reading may stand in a clause that could not be read
  }
  error(diagnose::Code::name_unknown, span,
        "found `" + node.name.value + "`, no reading of measure `" + measure.name + "`",
        diagnose::suggestion(node.name.value, known));
  return std::nullopt;
}

std::optional<FormulaId> Checker::call(const syntax::CallExpr& node, const Measure& measure, const Span& span) {
  const auto found = names_.find(node.name.value);
  if (found != names_.end() && found->second.kind == NameKind::table) {
    return lookup(node, found->second.index, measure, span);
  }
  return function(node, measure, span);
}

namespace {

struct Function {
  std::string_view name;
  FormulaKind kind;
  std::size_t least, most;  // arguments
};
constexpr std::array<Function, 5> functions{{{"cumulative", FormulaKind::cumulative, 1, 1},
                                             {"total", FormulaKind::total, 1, 1},
                                             {"larger", FormulaKind::greatest, 2, 8},
                                             {"smaller", FormulaKind::least, 2, 8},
                                             {"fraction", FormulaKind::fraction, 1, 1}}};

}  // namespace

void Checker::unknown_function(const syntax::Text& name) {
  std::vector<std::string_view> known;
  known.reserve(functions.size() + rules_.tables.size());
  for (const Function& one : functions) {
    known.push_back(one.name);
  }
  for (const Table& table : rules_.tables) {
    known.emplace_back(table.name);
  }
  error(diagnose::Code::name_unknown, name.span, "found `" + name.value + "`, no table or function of that name",
        diagnose::suggestion(name.value, known));
}

// Whether a function may be applied to its arguments; reports why not.
bool Checker::applicable(const Formula& call, const std::string& name) {
  const Formula& first = rules_.formulas.at(call.arguments.front());
  const bool over_series = call.kind == FormulaKind::cumulative || call.kind == FormulaKind::total;
  if (first.type.is_word() || (over_series && first.kind != FormulaKind::reading)) {
    error(diagnose::Code::limit_kind, first.span, "found something else than a measured reading in `" + name + "`",
          over_series ? "apply it to one reading of the measure" : "apply it to readings that are numbers");
    return false;
  }
  if (call.kind == FormulaKind::fraction && unit_of(first.type).dimension != quantity::Dimension{}) {
    error(diagnose::Code::unit_dimension, first.span, "found " + type_text(first.type) + ", expected a percentage",
          "`fraction` takes a percentage; leave it out for anything else");
    return false;
  }
  return std::all_of(call.arguments.begin(), call.arguments.end(), [&](FormulaId argument) {
    const Formula& other = rules_.formulas.at(argument);
    return comparable(first.type, other.type, other.span);
  });
}

std::optional<FormulaId> Checker::function(const syntax::CallExpr& node, const Measure& measure, const Span& span) {
  const auto* const at = std::find_if(functions.begin(), functions.end(),
                                      [&](const Function& one) { return one.name == node.name.value; });
  if (at == functions.end()) {
    unknown_function(node.name);
    return std::nullopt;
  }
  if (node.arguments.size() < at->least || node.arguments.size() > at->most) {
    error(diagnose::Code::limit_kind, span,
          "found " + std::to_string(node.arguments.size()) + (node.arguments.size() == 1 ? " argument" : " arguments") +
              " for `" + node.name.value + "`",
          at->most == 1 ? "give it one" : "give it 2 to 8");
    return std::nullopt;
  }
  Formula out{at->kind, 0, {}, {}, {}, span};
  for (const syntax::ExprId argument : node.arguments) {
    const auto id = formula(argument, measure);
    if (!id) {
      return std::nullopt;
    }
    out.arguments.push_back(*id);
  }
  if (!applicable(out, node.name.value)) {
    return std::nullopt;
  }
  const Formula& first = rules_.formulas.at(out.arguments.front());
  out.index = first.index;
  out.type = at->kind == FormulaKind::fraction ? Type{} : first.type;
  return add(std::move(out));
}

bool Checker::comparable(const Type& left, const Type& right, const Span& span) {
  if (left.broken || right.broken) {
    return false;
  }
  if (left.is_word() || right.is_word()) {
    error(diagnose::Code::limit_kind, span, "found a word in a formula", "words are keys of tables, not numbers");
    return false;
  }
  if (!quantity::convertible(unit_of(left), unit_of(right))) {
    error(diagnose::Code::unit_dimension, span, "found " + type_text(left) + " against " + type_text(right),
          "both sides must be of one kind");
    return false;
  }
  if (left.basis != right.basis) {
    error(diagnose::Code::percent_basis, span, "found " + type_text(left) + " against " + type_text(right),
          "percentages of different bases cannot be compared or added");
    return false;
  }
  return true;
}

std::optional<Type> Checker::sum_type(bool subtract, const Type& left, const Type& right, const Span& span) {
  const bool left_point = unit_of(left).point;
  const bool right_point = unit_of(right).point;
  if (right_point && !(left_point && subtract)) {
    error(diagnose::Code::unit_temperature, span,
          left_point ? "found a sum of two temperatures" : "found a temperature taken as a difference",
          "only a difference (`Cdeg`, `Fdeg`) can be added to a temperature (`degC`, `degF`)");
    return std::nullopt;
  }
  Type compared = left;
  Type out = left;
  if (left_point) {
    const UnitId difference = rules_.units.difference(left.unit);
    (right_point ? out : compared).unit = difference;
  }
  if (!comparable(compared, right, span)) {
    return std::nullopt;
  }
  return out;
}

std::optional<Type> Checker::product_type(bool divide, const Type& left, const Type& right, const Span& span) {
  if (unit_of(left).point || unit_of(right).point) {
    error(diagnose::Code::unit_temperature, span, "found a temperature multiplied or divided",
          "only a difference of temperatures (`Cdeg`, `Fdeg`) can be multiplied");
    return std::nullopt;
  }
  const bool same_basis = divide && left.basis == right.basis;
  if (right.basis != none && !same_basis && (divide || left.basis != none)) {
    error(diagnose::Code::percent_basis, span,
          "found " + type_text(left) + (divide ? " divided by " : " multiplied by ") + type_text(right),
          "use `fraction(...)` to say that a percentage is meant as a plain ratio");
    return std::nullopt;
  }
  Type out;
  const auto scaled =
      divide ? rules_.units.quotient(left.unit, right.unit) : rules_.units.product(left.unit, right.unit);
  if (!scaled) {
    error(diagnose::Code::unit_dimension, span, "found a product whose unit has powers beyond what is handled",
          "compute it in smaller steps");
    return std::nullopt;
  }
  out.unit = *scaled;
  const bool ratio = unit_of(out).dimension == quantity::Dimension{};
  if (!same_basis && ratio) {
    out.basis = left.basis != none ? left.basis : right.basis;
  }
  return out;
}

std::optional<FormulaId> Checker::binary(const syntax::BinaryExpr& node, const Measure& measure, const Span& span) {
  const auto left = formula(node.left, measure);
  const auto right = formula(node.right, measure);
  if (!left || !right) {
    return std::nullopt;
  }
  const Type left_type = rules_.formulas.at(*left).type;
  const Type right_type = rules_.formulas.at(*right).type;
  if (left_type.is_word() || right_type.is_word()) {
    error(diagnose::Code::limit_kind, span, "found a word in a formula",
          "words are keys of tables: write `table_name(reading)`");
    return std::nullopt;
  }
  const bool sum = node.op == syntax::Operator::add || node.op == syntax::Operator::subtract;
  const auto type = sum ? sum_type(node.op == syntax::Operator::subtract, left_type, right_type, span)
                        : product_type(node.op == syntax::Operator::divide, left_type, right_type, span);
  if (!type) {
    return std::nullopt;
  }
  static constexpr FormulaKind kinds[] = {FormulaKind::add, FormulaKind::subtract, FormulaKind::multiply,
                                          FormulaKind::divide};
  return add({kinds[static_cast<std::size_t>(node.op)], 0, {}, {*left, *right}, *type, span});
}

}  // namespace plumbrule::check
