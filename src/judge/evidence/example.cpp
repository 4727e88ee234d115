#include "judge/evidence/evidence.hpp"

#include <algorithm>

namespace plumbrule::evidence {
namespace {

Value value(const check::GivenValue& given) {
  const bool word = given.word != none;
  return {word ? Value::Kind::word : Value::Kind::quantity, given.amount, given.word, given.span};
}

std::vector<ConditionStated> conditions(const check::GivenResult& given, const check::Rules& rules) {
  std::vector<ConditionStated> out;
  for (const check::ConditionValue& stated : given.conditions) {
    Value one;
    one.kind = stated.word != none ? Value::Kind::word : Value::Kind::quantity;
    one.word = stated.word;
    one.amount = {stated.value, rules.conditions[stated.condition].unit, quantity::Bound::exact};
    one.span = stated.span;
    out.push_back({stated.condition, one});
  }
  return out;
}

bool same_conditions(const std::vector<ConditionStated>& left, const std::vector<ConditionStated>& right) {
  if (left.size() != right.size()) {
    return false;
  }
  for (std::size_t at = 0; at < left.size(); ++at) {
    const Value& a = left[at].value;
    const Value& b = right[at].value;
    if (left[at].condition != right[at].condition || a.word != b.word || !(a.amount.value == b.amount.value)) {
      return false;
    }
  }
  return true;
}

void add_specimens(const check::GivenResult& given, const check::Rules& rules, Result& out) {
  const std::size_t readings = rules.measures[given.measure].readings.size();
  for (const check::GivenValue& one : given.values) {
    Specimen specimen;
    specimen.readings.resize(readings);
    specimen.direct = value(one);
    specimen.span = one.span;
    out.specimens.push_back(std::move(specimen));
  }
  if (!given.readings.empty()) {
    Specimen specimen;
    specimen.readings.resize(readings);
    specimen.span = given.span;
    for (const auto& [index, one] : given.readings) {
      specimen.readings[index] = value(one);
    }
    out.specimens.push_back(std::move(specimen));
  }
}

// Whether the requirement of the example takes its statistic over results: then each `given` is a result of its own.
bool over_results(const check::Example& example, const check::Rules& rules) {
  if (example.requirement == none) {
    return false;
  }
  for (const check::Case& one : rules.requirements[example.requirement].cases) {
    for (const check::Alternative& alternative : one.alternatives) {
      for (const check::Assertion& assertion : alternative.assertions) {
        if (assertion.statistic.over != syntax::Over::specimens) {
          return true;
        }
      }
    }
  }
  return false;
}

// An example is tested on the day of its review: it cannot be too old.
constexpr std::int32_t example_day = 0;

Result new_result(const check::GivenResult& given, const check::Rules& rules) {
  Result result;
  result.measure = given.measure;
  result.conditions = conditions(given, rules);
  result.span = given.span;
  result.tested = example_day;
  result.declared = given.job_mix;
  for (const ConditionStated& stated : result.conditions) {
    if (rules.conditions[stated.condition].scale != check::Scale::category) {
      result.series = given.measure;
      result.series_condition = stated.condition;
    }
  }
  return result;
}

std::uint32_t lot_number(std::vector<std::string>& lots, const std::string& lot) {
  if (lot.empty()) {
    return 0;
  }
  const auto known = std::find(lots.begin(), lots.end(), lot);
  const auto number = static_cast<std::uint32_t>(known - lots.begin()) + 1;
  if (known == lots.end()) {
    lots.push_back(lot);
  }
  return number;
}

}  // namespace

// Several `given` of one measure under the same conditions are specimens of one result. Results of a measure that are
// taken sieve by sieve form a series, as they do in a submittal.
Evidence from_example(const check::Example& example, const check::Rules& rules) {
  Evidence out;
  out.units = rules.units;
  out.date = example_day;
  out.classes.resize(rules.categories.size());
  for (const check::GivenClass& one : example.classes) {
    out.classes[one.category] = {Value::Kind::word, {}, one.word, one.span};
  }
  const bool apart = over_results(example, rules);
  std::vector<std::string> lots;
  for (const check::GivenResult& given : example.results) {
    Result result = new_result(given, rules);
    result.lot = lot_number(lots, given.lot);
    if (given.job_mix && !given.values.empty()) {
      out.targets.push_back({given.measure, result.conditions, value(given.values.front())});
    }
    const auto same = std::find_if(out.results.begin(), out.results.end(), [&](const Result& other) {
      return !apart && other.measure == result.measure && other.declared == result.declared &&
             other.lot == result.lot && same_conditions(other.conditions, result.conditions);
    });
    if (same != out.results.end()) {
      add_specimens(given, rules, *same);
    } else {
      add_specimens(given, rules, result);
      out.results.push_back(std::move(result));
    }
  }
  return out;
}

}  // namespace plumbrule::evidence
