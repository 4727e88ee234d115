#include <algorithm>

#include "language/plan/plan.hpp"

namespace plumbrule::plan {
namespace {

using check::Formula;
using check::FormulaKind;

class Compiler {
 public:
  explicit Compiler(const check::Rules& rules) : rules_(rules) {
    plan_.units = rules.units;
    plan_.categories = rules.categories.size();
  }

  Plan run() {
    for (const check::Table& table : rules_.tables) {
      add(table);
    }
    for (const check::Measure& measure : rules_.measures) {
      add(measure);
    }
    for (const check::Requirement& requirement : rules_.requirements) {
      add(requirement);
    }
    return std::move(plan_);
  }

 private:
  const check::Rules& rules_;
  Plan plan_;

  template <typename Element>
  static std::uint32_t count(const std::vector<Element>& all) {
    return static_cast<std::uint32_t>(all.size());
  }

  void emit(OpCode code, std::uint32_t index = 0, std::uint32_t reading = 0) {
    plan_.ops.push_back({code, index, reading, 0, 0});
  }

  void convert(UnitId from, UnitId to) {
    if (from != to) {
      plan_.ops.push_back({OpCode::convert, 0, 0, from, to});
    }
  }

  void add(const check::Table& table) {
    using Edge = syntax::TableEdge::Kind;
    Table out;
    out.values = table.values;
    out.unit = table.type.unit;
    for (const check::Edge& edge : table.edges) {
      out.rising = edge.kind == Edge::at_most || edge.kind == Edge::below;
      out.edges.push_back({edge.value, edge.kind == Edge::at_most || edge.kind == Edge::at_least});
    }
    plan_.tables.push_back(std::move(out));
  }

  // The unit into which the right side of a sum or comparison goes. A difference added to a temperature is converted
  // as a difference, never as a point.
  UnitId right_unit(UnitId left, UnitId right) {
    const bool to_difference = plan_.units.at(left).point && !plan_.units.at(right).point;
    return to_difference ? plan_.units.difference(left) : left;
  }

  void leaf(const Formula& formula) {
    switch (formula.kind) {
      case FormulaKind::number:
        emit(OpCode::number, count(plan_.numbers));
        plan_.numbers.push_back(formula.value);
        return;
      case FormulaKind::reading:
        return emit(OpCode::reading, formula.index);
      case FormulaKind::result:
        return emit(OpCode::result);
      case FormulaKind::lookup:
        return emit(OpCode::lookup, formula.index, rules_.formulas.at(formula.arguments.front()).index);
      case FormulaKind::cumulative:
        return emit(OpCode::cumulative, formula.index);
      default:
        return emit(OpCode::total, formula.index);
    }
  }

  static bool is_leaf(FormulaKind kind) { return kind <= FormulaKind::total; }

  static OpCode operation(FormulaKind kind) {
    switch (kind) {
      case FormulaKind::add:
        return OpCode::add;
      case FormulaKind::subtract:
        return OpCode::subtract;
      case FormulaKind::multiply:
        return OpCode::multiply;
      case FormulaKind::divide:
        return OpCode::divide;
      case FormulaKind::greatest:
        return OpCode::larger;
      default:
        return OpCode::smaller;
    }
  }

  void code(check::FormulaId id, std::size_t depth) {
    plan_.deepest_stack = std::max(plan_.deepest_stack, depth);
    const Formula& formula = rules_.formulas.at(id);
    if (is_leaf(formula.kind)) {
      return leaf(formula);
    }
    code(formula.arguments.front(), depth);
    const UnitId first = rules_.formulas.at(formula.arguments.front()).type.unit;
    if (formula.kind == FormulaKind::fraction) {
      return convert(first, quantity::UnitTable::number);
    }
    if (formula.kind == FormulaKind::graded) {
      convert(first, rules_.tables.at(formula.index).key.unit);
      return emit(OpCode::grade, formula.index);
    }
    const bool scaled = formula.kind == FormulaKind::multiply || formula.kind == FormulaKind::divide;
    for (std::size_t at = 1; at < formula.arguments.size(); ++at) {
      code(formula.arguments[at], depth + 1);
      const UnitId right = rules_.formulas.at(formula.arguments[at]).type.unit;
      if (!scaled) {
        convert(right, right_unit(first, right));
      }
      emit(operation(formula.kind));
    }
  }

  Program program(check::FormulaId id) {
    Program out{{count(plan_.ops), 0}, rules_.formulas.at(id).type.unit};
    code(id, 1);
    out.ops.end = count(plan_.ops);
    return out;
  }

  void add(const check::Measure& measure) {
    Measure out;
    out.type = measure.type;
    out.readings.begin = count(plan_.reading_types);
    for (const check::Reading& reading : measure.readings) {
      plan_.reading_types.push_back(reading.type);
    }
    out.readings.end = count(plan_.reading_types);
    if (measure.computed) {
      out.computed = true;
      out.formula = program(*measure.computed);
    }
    out.refusals.begin = count(plan_.refusals);
    for (const check::Refusal& refusal : measure.refusals) {
      Refusal compiled{program(refusal.left), program(refusal.right), refusal.comparison, refusal.needs_readings};
      convert(compiled.right.unit, compiled.left.unit);
      compiled.right.ops.end = count(plan_.ops);
      plan_.refusals.push_back(compiled);
    }
    out.refusals.end = count(plan_.refusals);
    plan_.measures.push_back(out);
  }

  static Threshold fold(const check::End& end, bool high) {
    if (!end.rounding.place) {
      return {end.value, true};
    }
    return high ? quantity::fold_at_most(end.value, *end.rounding.place, end.rounding.ties)
                : quantity::fold_at_least(end.value, *end.rounding.place, end.rounding.ties);
  }

  // A range of temperatures is limited by a difference, but the specimens are temperatures.
  UnitId value_unit(const check::Assertion& assertion) {
    const check::Type& type = rules_.measures.at(assertion.measure).type;
    const UnitId limit = assertion.limit.unit;
    if (type.is_word() || plan_.units.at(type.unit).point == plan_.units.at(limit).point) {
      return limit;
    }
    const auto celsius = plan_.units.find("degC");
    const auto fahrenheit = plan_.units.find("degF");
    return plan_.units.difference(*fahrenheit) == limit ? *fahrenheit : *celsius;
  }

  void add(const check::Assertion& assertion) {
    Check out;
    out.measure = assertion.measure;
    out.conditions.begin = count(plan_.conditions);
    for (const check::ConditionValue& value : assertion.conditions) {
      plan_.conditions.push_back({value.condition, value.value, value.word, value.end, value.within});
    }
    out.conditions.end = count(plan_.conditions);
    out.statistic = assertion.statistic.kind;
    // One value has no spread.
    const bool spread =
        out.statistic == syntax::StatisticKind::range || out.statistic == syntax::StatisticKind::standard_deviation;
    out.specimens = std::max(assertion.statistic.at_least, spread ? 2U : 1U);
    out.over = assertion.statistic.over;
    out.unit = assertion.limit.unit;
    out.value_unit = value_unit(assertion);
    out.words = assertion.limit.words;
    if (assertion.limit.low) {
      out.has_low = true;
      out.low = fold(*assertion.limit.low, false);
      out.printed_low = assertion.limit.low->value;
    }
    if (assertion.limit.high) {
      out.has_high = true;
      out.high = fold(*assertion.limit.high, true);
      out.printed_high = assertion.limit.high->value;
    }
    if (assertion.limit.tolerance) {
      out.has_tolerance = true;
      out.tolerance = assertion.limit.tolerance->value;
      out.tolerance_rounding = assertion.limit.tolerance->rounding;
    }
    if (assertion.staged) {
      out.is_staged = true;
      out.staged = *assertion.staged;
    }
    plan_.checks.push_back(out);
  }

  Range tests(const std::vector<check::Test>& all) {
    Range out{count(plan_.tests), 0};
    for (const check::Test& test : all) {
      plan_.tests.push_back({test.category, test.words});
    }
    out.end = count(plan_.tests);
    return out;
  }

  void add(const check::Case& one) {
    Case out;
    out.tests = tests(one.where);
    out.groups.begin = count(plan_.groups);
    for (const check::Alternative& alternative : one.alternatives) {
      Group group;
      group.checks.begin = count(plan_.checks);
      for (const check::Assertion& assertion : alternative.assertions) {
        add(assertion);
      }
      group.checks.end = count(plan_.checks);
      group.has_ends = alternative.ends.has_value();
      group.ends = alternative.ends.value_or(Decimal{});
      plan_.groups.push_back(group);
    }
    out.groups.end = count(plan_.groups);
    plan_.cases.push_back(out);
  }

  void add(const check::Requirement& requirement) {
    Requirement out;
    out.optional = requirement.optional;
    out.severity = requirement.severity;
    out.validity = requirement.validity;
    out.tests = tests(requirement.where);
    out.cases.begin = count(plan_.cases);
    for (const check::Case& one : requirement.cases) {
      add(one);
    }
    out.cases.end = count(plan_.cases);
    plan_.requirements.push_back(out);
  }
};

}  // namespace

Plan compile(const check::Rules& rules) { return Compiler(rules).run(); }

}  // namespace plumbrule::plan
