#include "apply/contrast/conditions.hpp"

#include <algorithm>

#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

using check::ConditionValue;
using check::Rules;

std::string word_of(const Rules& rules, const ConditionValue& value) {
  const check::CategoryId category = rules.conditions[value.condition].category;
  return value.word == check::none || category == check::none ? "" : rules.categories[category].words[value.word];
}

// Sieves count in mm on both sides.
bool same_amounts(const Rules& before, const ConditionValue& left, const Rules& after, const ConditionValue& right) {
  const check::Condition& then = before.conditions[left.condition];
  const check::Condition& now = after.conditions[right.condition];
  if (then.scale != check::Scale::unit) {
    return left.value == right.value && left.within == right.within;
  }
  const auto same_amount = [&](const check::Decimal& one, const check::Decimal& other, check::UnitId of,
                               check::UnitId to) {
    const quantity::Unit& from = after.units.at(to);
    const quantity::Unit& into = before.units.at(of);
    return quantity::convertible(from, into) && one == quantity::convert(other, from, into);
  };
  return same_amount(left.value, right.value, then.unit, now.unit) &&
         same_amount(left.within, right.within, before.units.difference(then.unit), after.units.difference(now.unit));
}

bool same_condition(const Rules& before, const ConditionValue& left, const Rules& after, const ConditionValue& right) {
  const check::Condition& then = before.conditions[left.condition];
  const check::Condition& now = after.conditions[right.condition];
  return then.name == now.name && then.scale == now.scale && left.end == right.end &&
         word_of(before, left) == word_of(after, right) && same_amounts(before, left, after, right);
}

}  // namespace

bool same_conditions(const Rules& before, const check::Assertion& left, const Rules& after,
                     const check::Assertion& right) {
  return left.conditions.size() == right.conditions.size() &&
         std::all_of(left.conditions.begin(), left.conditions.end(), [&](const ConditionValue& one) {
           return std::any_of(right.conditions.begin(), right.conditions.end(),
                              [&](const ConditionValue& other) { return same_condition(before, one, after, other); });
         });
}

std::string under(const Rules& rules, const check::Assertion& assertion) {
  std::string out;
  for (const ConditionValue& value : assertion.conditions) {
    const check::Condition& condition = rules.conditions[value.condition];
    out += (out.empty() ? "under " : ", ") + explain::spaced(condition.name) + " " + value.written;
    if (!value.within.zero() && value.written.find(" within ") == std::string::npos) {
      out += " within " + value.within.stripped().text() + " " +
             rules.units.at(rules.units.difference(condition.unit)).text;
    }
  }
  return out.empty() ? "under no condition" : out;
}

}  // namespace plumbrule::contrast
