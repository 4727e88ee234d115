#include "evidence/evidence.hpp"

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

}  // namespace

// Several `given` of one measure under the same conditions are specimens of one result. Results of a measure that are
// taken sieve by sieve form a series, as they do in a submittal.
Evidence from_example(const check::Example& example, const check::Rules& rules) {
  Evidence out;
  out.units = rules.units;
  out.classes.resize(rules.categories.size());
  for (const check::GivenClass& one : example.classes) {
    out.classes[one.category] = {Value::Kind::word, {}, one.word, one.span};
  }
  for (const check::GivenResult& given : example.results) {
    Result result;
    result.measure = given.measure;
    result.conditions = conditions(given, rules);
    result.span = given.span;
    const auto same = std::find_if(out.results.begin(), out.results.end(), [&](const Result& other) {
      return other.measure == result.measure && same_conditions(other.conditions, result.conditions);
    });
    if (same != out.results.end()) {
      add_specimens(given, rules, *same);
      continue;
    }
    for (const ConditionStated& stated : result.conditions) {
      if (rules.conditions[stated.condition].scale != check::Scale::category) {
        result.series = given.measure;
        result.series_condition = stated.condition;
      }
    }
    add_specimens(given, rules, result);
    out.results.push_back(std::move(result));
  }
  return out;
}

}  // namespace plumbrule::evidence
