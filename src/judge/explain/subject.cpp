#include <algorithm>

#include "judge/explain/wording.hpp"

namespace plumbrule::explain {
namespace {

// A condition in its own unit, so that 1 h and 60 min are the same.
std::string condition_key(const check::Rules& rules, const check::ConditionValue& value) {
  const check::Condition& condition = rules.conditions[value.condition];
  const std::string at = value.word != check::none && condition.category != check::none
                             ? rules.categories[condition.category].words[value.word]
                             : value.value.stripped().text();
  const std::string unit = condition.scale == check::Scale::unit ? rules.units.at(condition.unit).text : "";
  return condition.name + " " + std::to_string(static_cast<int>(value.end)) + " " + at + " " + unit +
         (value.within.zero() ? "" : " within " + value.within.stripped().text());
}

}  // namespace

std::string subject_key(const check::Rules& rules, const check::Assertion& assertion) {
  std::vector<std::string> parts;
  parts.reserve(assertion.conditions.size());
  for (const check::ConditionValue& value : assertion.conditions) {
    parts.push_back(condition_key(rules, value));
  }
  std::sort(parts.begin(), parts.end());
  std::string out = rules.measures[assertion.measure].name;
  for (const std::string& part : parts) {
    out += "|" + part;
  }
  const bool from_job_mix = assertion.limit.tolerance && !assertion.limit.low && !assertion.limit.high;
  return out + (from_job_mix ? "|from the job mix" : "");
}

}  // namespace plumbrule::explain
