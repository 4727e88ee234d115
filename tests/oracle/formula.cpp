#include "formula.hpp"

#include <algorithm>

namespace plumbrule::oracle {
namespace {

Value lacking(Why why) {
  Value out;
  out.why = why;
  return out;
}

Value of(const Interval& amount, quantity::UnitId unit) {
  Value out;
  out.amount = amount;
  out.unit = unit;
  const bool finite =
      (amount.low.infinite || amount.low.value.finite()) && (amount.high.infinite || amount.high.value.finite());
  return finite ? out : lacking(Why::not_computable);
}

const syntax::Reading* find_reading(const syntax::Measure& measure, const std::string& name) {
  const auto at = std::find_if(measure.readings.begin(), measure.readings.end(),
                               [&](const syntax::Reading& one) { return one.name.value == name; });
  return at == measure.readings.end() ? nullptr : &*at;
}

}  // namespace

Value stated_value(const Stated& stated, Why if_missing) {
  if (!stated.usable()) {
    return lacking(stated.kind == Stated::Kind::missing ? if_missing : Why::unusable_value);
  }
  Value out;
  out.amount = stated.amount;
  out.unit = stated.unit;
  out.word = stated.word;
  return out;
}

Value Valuer::in_unit(Value value, quantity::UnitId unit) {
  if (value.good() && value.unit != unit) {
    value.amount.low.value = units_.convert(value.amount.low.value, value.unit, unit);
    value.amount.high.value = units_.convert(value.amount.high.value, value.unit, unit);
    value.unit = unit;
  }
  return value;
}

Value Valuer::reading(const Sample& sample, const syntax::Reading& tree) {
  const auto at = sample.readings.find(tree.name.value);
  Value out =
      at == sample.readings.end() ? lacking(Why::missing_reading) : stated_value(at->second, Why::missing_reading);
  return tree.unit ? in_unit(out, units_.of(*tree.unit)) : out;
}

Value Valuer::name(const std::string& name, const Scope& scope) {
  if (const syntax::Reading* tree = find_reading(scope.measure, name)) {
    return scope.sample == nullptr ? lacking(Why::missing_reading) : reading(*scope.sample, *tree);
  }
  return scope.result == nullptr ? lacking(Why::not_computable) : *scope.result;
}

Value Valuer::walk(syntax::ExprId id, const Scope& scope) {
  const syntax::Expr& expr = scope.file.exprs.at(id);
  if (const auto* number = std::get_if<syntax::NumberExpr>(&expr.node)) {
    return of(Interval::point(number->quantity.number), units_.of(number->quantity.unit));
  }
  if (const auto* named = std::get_if<syntax::NameExpr>(&expr.node)) {
    return name(named->name.value, scope);
  }
  if (const auto* called = std::get_if<syntax::CallExpr>(&expr.node)) {
    return call(*called, scope);
  }
  return binary(std::get<syntax::BinaryExpr>(expr.node), scope);
}

Value Valuer::lookup(const syntax::Table& table, const syntax::CallExpr& node, const Scope& scope) {
  const Value key = walk(node.arguments.front(), scope);
  if (!key.good()) {
    return key;
  }
  for (const syntax::TableRow& row : table.rows) {
    if (row.word.value == key.word) {
      return of(Interval::point(row.value), units_.of(table.unit));
    }
  }
  return lacking(Why::not_computable);
}

namespace {

// Whether `values` begin no earlier than `row` does.
bool begins_within(const End& row, const End& values) {
  if (row.infinite || values.infinite) {
    return row.infinite;
  }
  return values.value > row.value || (values.value == row.value && (row.closed || !values.closed));
}

bool ends_within(const End& row, const End& values) {
  if (row.infinite || values.infinite) {
    return row.infinite;
  }
  return values.value < row.value || (values.value == row.value && (row.closed || !values.closed));
}

bool within(const Interval& row, const Interval& values) {
  return begins_within(row.low, values.low) && ends_within(row.high, values.high);
}

// Cuts off the part of `rest` that the edge takes.
Interval cut(Interval& rest, const syntax::TableEdge& edge) {
  using Kind = syntax::TableEdge::Kind;
  const bool taken = edge.kind == Kind::at_most || edge.kind == Kind::at_least;
  const End own{edge.quantity.number, false, taken};
  const End left{edge.quantity.number, false, !taken};
  const bool from_below = edge.kind == Kind::at_most || edge.kind == Kind::below;
  const Interval row = from_below ? Interval{rest.low, own} : Interval{own, rest.high};
  (from_below ? rest.low : rest.high) = left;
  return row;
}

}  // namespace

// The rows as intervals: what lies in one of them has its value. Of what lies in several nothing is known, and nothing
// has a value that may lie in none.
Value Valuer::graded(const syntax::Table& table, const syntax::CallExpr& node, const Scope& scope) {
  const Value key = in_unit(walk(node.arguments.front(), scope), units_.of(*table.by_unit));
  if (!key.good()) {
    return key;
  }
  const quantity::UnitId unit = units_.of(table.unit);
  Interval rest = Interval::everything();
  Interval taken = rest;  // by all rows so far
  for (const syntax::TableRow& row : table.rows) {
    const bool edge = row.edge.has_value();
    if (within(edge ? cut(rest, *row.edge) : rest, key.amount)) {
      return of(Interval::point(row.value), unit);
    }
    Interval whole = Interval::everything();
    taken = edge ? cut(whole, *row.edge) : whole;
  }
  return within(taken, key.amount) ? of(Interval::everything(), unit) : lacking(Why::beyond_table);
}

// Where a row stands to another one of its series: a condition that cannot be read leaves it open.
enum class Place : std::uint8_t { apart, before, at_or_behind, open };

static Place place(const Trial& row, const Trial& own) {
  bool open = false;
  bool behind = false;
  for (const auto& [name, here] : own.conditions) {
    const auto at = row.conditions.find(name);
    if (at == row.conditions.end() || !at->second.usable() || !here.usable()) {
      open = true;
    } else if (name == own.series_condition) {
      behind = at->second.amount.value() >= here.amount.value();
    } else if (at->second.word != here.word ||
               (here.word.empty() && !(at->second.amount.value() == here.amount.value()))) {
      return Place::apart;
    }
  }
  open = open || !own.conditions.contains(own.series_condition);
  return open ? Place::open : behind ? Place::at_or_behind : Place::before;
}

// Sums run along the series: over the rows that differ from this one in nothing but its running condition.
Value Valuer::summed(const std::string& name, bool cumulative, const Scope& scope) {
  const Trial& own = scope.trial;
  if (!own.series) {
    return lacking(Why::series_needed);
  }
  const syntax::Reading& tree = *find_reading(scope.measure, name);
  Value sum = of(Interval::point(0), units_.of(*tree.unit));
  for (const Trial& row : record_.trials) {
    if (row.series != own.series || row.measure != own.measure) {
      continue;
    }
    const Place where = place(row, own);
    if (where == Place::open) {
      return lacking(Why::unusable_value);  // it may belong to the sum or not
    }
    if (where == Place::apart || (cumulative && where == Place::before)) {
      continue;
    }
    const Value one = reading(row.samples.front(), tree);
    if (!one.good()) {
      return one;
    }
    sum = of(add(sum.amount, one.amount), sum.unit);
  }
  return sum;
}

Value Valuer::call(const syntax::CallExpr& node, const Scope& scope) {
  if (const syntax::Table* table = book_.table(node.name.value)) {
    return table->by_unit ? graded(*table, node, scope) : lookup(*table, node, scope);
  }
  if (node.name.value == "cumulative" || node.name.value == "total") {
    const auto& argument = std::get<syntax::NameExpr>(scope.file.exprs.at(node.arguments.front()).node);
    return summed(argument.name.value, node.name.value == "cumulative", scope);
  }
  Value out = walk(node.arguments.front(), scope);
  if (node.name.value == "fraction") {
    return in_unit(out, quantity::UnitTable::number);
  }
  for (std::size_t at = 1; at < node.arguments.size() && out.good(); ++at) {
    const Value next = walk(node.arguments[at], scope);
    if (!next.good()) {
      return next;
    }
    const Interval& amount = in_unit(next, out.unit).amount;
    out = of(node.name.value == "larger" ? larger(out.amount, amount) : smaller(out.amount, amount), out.unit);
    if (out.amount.both_ends()) {
      lost_.note(Loss::both_ends);
    }
  }
  return out;
}

Value Valuer::binary(const syntax::BinaryExpr& node, const Scope& scope) {
  const Value left = walk(node.left, scope);
  if (!left.good()) {
    return left;
  }
  const Value right = walk(node.right, scope);
  if (!right.good()) {
    return right;
  }
  quantity::UnitTable& table = units_.table();
  if (node.op == syntax::Operator::multiply) {
    return of(multiply(left.amount, right.amount, lost_), *table.product(left.unit, right.unit));
  }
  if (node.op == syntax::Operator::divide) {
    const auto quotient = divide(left.amount, right.amount, lost_);
    return quotient ? of(*quotient, *table.quotient(left.unit, right.unit)) : lacking(Why::not_computable);
  }
  // Of temperatures: a point and a difference give a point, two points a difference.
  const bool from_point = table.at(left.unit).point;
  const bool to_point = table.at(right.unit).point;
  const Value other = in_unit(right, from_point && !to_point ? table.difference(left.unit) : left.unit);
  if (node.op == syntax::Operator::add) {
    return of(add(left.amount, other.amount), left.unit);
  }
  return of(subtract(left.amount, other.amount), from_point && to_point ? table.difference(left.unit) : left.unit);
}

bool Valuer::needs_readings(syntax::ExprId id, const Scope& scope) const {
  const syntax::Expr& expr = scope.file.exprs.at(id);
  if (const auto* named = std::get_if<syntax::NameExpr>(&expr.node)) {
    return find_reading(scope.measure, named->name.value) != nullptr;
  }
  if (const auto* called = std::get_if<syntax::CallExpr>(&expr.node)) {
    return std::any_of(called->arguments.begin(), called->arguments.end(),
                       [&](syntax::ExprId argument) { return needs_readings(argument, scope); });
  }
  const auto* pair = std::get_if<syntax::BinaryExpr>(&expr.node);
  return pair != nullptr && (needs_readings(pair->left, scope) || needs_readings(pair->right, scope));
}

bool Valuer::certainly(const Value& left, syntax::Comparison comparison, const Value& right) {
  const Interval difference = subtract(left.amount, in_unit(right, left.unit).amount);
  switch (comparison) {
    case syntax::Comparison::less:
      return at_least(difference, 0, {}) == Answer::no;
    case syntax::Comparison::less_or_equal:
      return at_most(difference, 0, {}) == Answer::yes;
    case syntax::Comparison::greater:
      return at_most(difference, 0, {}) == Answer::no;
    case syntax::Comparison::greater_or_equal:
      return at_least(difference, 0, {}) == Answer::yes;
    default:
      return difference.exact() && difference.value().zero();
  }
}

// A refusal speaks only where what it names is known: not of readings where only a result was reported.
Value Valuer::unless_refused(const Value& value, const Scope& scope) {
  for (const syntax::Refusal& refusal : scope.measure.refusals) {
    if (scope.sample == nullptr && (needs_readings(refusal.left, scope) || needs_readings(refusal.right, scope))) {
      continue;
    }
    const Value left = walk(refusal.left, scope);
    const Value right = walk(refusal.right, scope);
    if (!left.good() || !right.good()) {
      return left.good() ? right : left;
    }
    if (left.amount.unknown() || right.amount.unknown()) {
      lost_.note(Loss::unknown_refusal);
    }
    if (certainly(left, refusal.comparison, right)) {
      return lacking(Why::refused);
    }
  }
  return value;
}

Value Valuer::reported(const Trial& trial) {
  const syntax::Measure& measure = *book_.measure(trial.measure);
  const Value value =
      trial.samples_unusable ? lacking(Why::unusable_value) : stated_value(trial.reported, Why::no_value);
  if (!value.good() || !measure.unit) {
    return value;
  }
  const Value result = in_unit(value, units_.of(*measure.unit));
  return unless_refused(value, {measure, book_.file_of(trial.measure), trial, nullptr, &result});
}

Value Valuer::sample(const Trial& trial, const Sample& sample) {
  const syntax::Measure& measure = *book_.measure(trial.measure);
  const syntax::RuleFile& file = book_.file_of(trial.measure);
  const bool direct = !measure.computed || sample.direct.kind != Stated::Kind::missing;
  Value value;
  if (direct) {
    value = stated_value(sample.direct, Why::no_value);
  } else {
    for (const syntax::Reading& tree : measure.readings) {  // all are needed, whether the formula names them or not
      if (const Value one = reading(sample, tree); !one.good()) {
        return one;
      }
    }
    value = walk(*measure.computed, {measure, file, trial, &sample, nullptr});
  }
  if (!value.good() || !measure.unit) {
    return value;
  }
  const Value result = in_unit(value, units_.of(*measure.unit));
  return unless_refused(value, {measure, file, trial, direct ? nullptr : &sample, &result});
}

}  // namespace plumbrule::oracle
