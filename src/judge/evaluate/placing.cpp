#include <algorithm>
#include <chrono>

#include "judge/evaluate/evaluator.hpp"

namespace plumbrule::evaluate {

Judged Evaluator::applies(plan::Range tests, StepKind kind) {
  Judged out;
  for (std::uint32_t at = tests.begin; at < tests.end; ++at) {
    const plan::ClassTest& test = plan_.tests[at];
    const Value& stated = evidence_.classes[test.category];
    Step& noted = measuring_.step(kind, at);
    noted.span = stated.span;
    noted.other = stated.word;
    Judged one;
    if (stated.kind != Value::Kind::word) {
      one = {Verdict::not_shown, Reason::class_not_stated};
    } else if ((test.words >> stated.word & 1U) == 0) {
      one = {Verdict::does_not_apply, Reason::class_excluded};
    }
    noted.outcome = one.verdict;
    noted.reason = one.reason;
    // A class that excludes settles it, whatever else is not stated.
    if (one.verdict == Verdict::does_not_apply || out.verdict == Verdict::complies) {
      out = out.verdict == Verdict::does_not_apply ? out : one;
    }
  }
  return out;
}

bool meets(const plan::ConditionMatch& wanted, const evidence::Value& stated) {
  if (wanted.word != check::none) {
    return stated.word == wanted.word;
  }
  const Decimal& value = stated.amount.value;
  switch (wanted.end) {
    case syntax::ConditionEnd::at_most:
      return value <= wanted.value + wanted.within;
    case syntax::ConditionEnd::at_least:
      return value >= wanted.value - wanted.within;
    default:
      return value >= wanted.value - wanted.within && value <= wanted.value + wanted.within;
  }
}

Reason Evaluator::conditions(const plan::Check& check, const std::vector<evidence::ConditionStated>& all) const {
  Reason out = Reason::none;
  for (const plan::ConditionMatch& wanted : plan::part(plan_.conditions, check.conditions)) {
    const auto stated =
        std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.condition == wanted.condition; });
    if (stated == all.end() || !stated->value.usable()) {
      out = stated == all.end() ? Reason::condition_not_stated : Reason::unusable_value;
    } else if (!meets(wanted, stated->value)) {
      return Reason::other_conditions;
    }
  }
  return out;
}

// Whether a result is young enough. Months are counted by the calendar: 31 January and one month is the last day of
// February.
Reason age(const check::Validity& validity, std::int32_t tested_on, std::int32_t reviewed) {
  if (validity.count == 0) {
    return Reason::none;
  }
  // A test dated after the review cannot have been seen by it: one of the dates is wrong.
  if (tested_on == evidence::no_date || reviewed == evidence::no_date || tested_on > reviewed) {
    return Reason::date_not_stated;
  }
  namespace chrono = std::chrono;
  const chrono::sys_days tested{chrono::days(tested_on)};
  chrono::sys_days last = tested + chrono::days(validity.count);
  if (!validity.days) {
    chrono::year_month_day day = chrono::year_month_day(tested) + chrono::months(validity.count);
    last = day.ok() ? chrono::sys_days(day) : chrono::sys_days(day.year() / day.month() / chrono::last);
  }
  return last < chrono::sys_days(chrono::days(reviewed)) ? Reason::too_old : Reason::none;
}

// Why the result is not one that the check is about; Reason::none: it is.
Reason Evaluator::mismatch(const plan::Check& check, const Result& result) const {
  if (result.declared && (check.has_tolerance || check.over != syntax::Over::specimens)) {
    return Reason::no_result;  // what the job mix declares is no test: not judged by its tolerance, nor counted among
                               // results
  }
  Reason out = conditions(check, result.conditions);
  if (out == Reason::other_conditions) {
    return out;
  }
  if (result.design == evidence::Design::other) {
    return Reason::other_design;  // whatever else it does not state
  }
  out = out == Reason::none && result.design == evidence::Design::unknown ? Reason::design_not_stated : out;
  return out == Reason::none ? age(validity_, result.tested, evidence_.date) : out;
}

const evidence::Target* Evaluator::target(const plan::Check& check) const {
  for (const evidence::Target& one : evidence_.targets) {
    const bool usable = one.value.kind == Value::Kind::quantity && one.value.amount.bound == Bound::exact;
    if (one.measure == check.measure && usable && conditions(check, one.conditions) == Reason::none) {
      return &one;
    }
  }
  return nullptr;
}

}  // namespace plumbrule::evaluate
