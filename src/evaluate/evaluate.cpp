#include "evaluate/evaluate.hpp"

#include <algorithm>
#include <chrono>

#include "evaluate/bounds.hpp"
#include "evaluate/measuring.hpp"

namespace plumbrule::evaluate {
namespace {

struct Judged {
  Verdict verdict = Verdict::complies;
  Reason reason = Reason::none;
};

// language.md, section 10.2: of verdicts that must all hold.
void also(Judged& whole, const Judged& part) {
  const auto rank = [](Verdict verdict) {
    return verdict == Verdict::fails ? 2 : verdict == Verdict::not_shown ? 1 : 0;
  };
  if (rank(part.verdict) > rank(whole.verdict)) {
    whole = part;
  }
}

class Evaluator {
 public:
  Evaluator(const plan::Plan& plan, const Evidence& evidence, Review& review)
      : plan_(plan), evidence_(evidence), measuring_(plan, evidence, review.trace), review_(review) {}

  void requirement(std::uint32_t index);

 private:
  const plan::Plan& plan_;
  const Evidence& evidence_;
  Measuring measuring_;
  Review& review_;
  std::vector<Amount> values_;
  std::vector<Span> places_;                   // of the values
  check::Validity validity_;                   // of the requirement that is judged
  std::vector<std::uint32_t> matched_;         // results that the check is about
  std::vector<std::vector<Amount>> compared_;  // of the group, check by check: for the rule on consecutive sieves

  Judged applies(plan::Range tests, StepKind kind);
  Judged demands(plan::Range groups);
  Judged group(std::uint32_t index);
  Judged consecutive(const plan::Group& group);
  Judged check(std::uint32_t index);
  Judged matched(const plan::Check& check, std::uint32_t index);
  Judged over_results(const plan::Check& check, std::uint32_t index);
  Judged over_results(const plan::Check& check, std::uint32_t index, std::uint32_t lot);
  Measured result_value(const plan::Check& check, const Result& result);
  Judged result(const plan::Check& check, std::uint32_t index, const Result& result);
  Judged words(const plan::Check& check, std::uint32_t index, const Result& result);
  Judged word(const plan::Check& check, std::uint32_t index, const Measured& value);
  Judged reported(const plan::Check& check, std::uint32_t index, const Result& result);
  Reason collect(const plan::Check& check, const Result& result);
  Amount convert(const plan::Check& check, const Measured& value);
  Amount statistic(const plan::Check& check);
  Judged compare(const plan::Check& check, std::uint32_t index, const Amount& value, const Span& span);
  Judged tolerance(const plan::Check& check, const Amount& value);
  Judged each(const plan::Check& check, std::uint32_t index);
  [[nodiscard]] const evidence::Target* target(const plan::Check& check) const;
  [[nodiscard]] bool meets(const plan::ConditionMatch& wanted, const Value& stated) const;
  [[nodiscard]] Reason conditions(const plan::Check& check, const std::vector<evidence::ConditionStated>& stated) const;
  [[nodiscard]] Reason age(const Result& result) const;
  [[nodiscard]] Reason mismatch(const plan::Check& check, const Result& result) const;
};

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

bool Evaluator::meets(const plan::ConditionMatch& wanted, const Value& stated) const {
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
Reason Evaluator::age(const Result& result) const {
  if (validity_.count == 0) {
    return Reason::none;
  }
  if (result.tested == evidence::no_date || evidence_.date == evidence::no_date) {
    return Reason::date_not_stated;
  }
  namespace chrono = std::chrono;
  const chrono::sys_days tested{chrono::days(result.tested)};
  chrono::sys_days last = tested + chrono::days(validity_.count);
  if (!validity_.days) {
    chrono::year_month_day day = chrono::year_month_day(tested) + chrono::months(validity_.count);
    last = day.ok() ? chrono::sys_days(day) : chrono::sys_days(day.year() / day.month() / chrono::last);
  }
  return last < chrono::sys_days(chrono::days(evidence_.date)) ? Reason::too_old : Reason::none;
}

// Why the result is not one that the check is about; Reason::none: it is.
Reason Evaluator::mismatch(const plan::Check& check, const Result& result) const {
  if (check.has_tolerance && result.declared) {
    return Reason::no_result;  // the job mix is not judged by its own tolerance
  }
  Reason out = conditions(check, result.conditions);
  if (out == Reason::none && result.design != evidence::Design::job_mix) {
    out = result.design == evidence::Design::other ? Reason::other_design : Reason::design_not_stated;
  }
  return out == Reason::none ? age(result) : out;
}

Amount Evaluator::convert(const plan::Check& check, const Measured& value) {
  Amount out = value.amount;
  if (check.is_staged) {
    const quantity::UnitId unit = plan_.measures[check.measure].type.unit;
    out.value = quantity::convert(out.value, evidence_.units.at(out.unit), evidence_.units.at(unit));
    out.value = quantity::round_to(out.value, *check.staged.place, check.staged.ties);
    out.unit = unit;
    measuring_.step(StepKind::rounded).amount = out;
  }
  if (out.unit != check.value_unit) {
    out.value = quantity::convert(out.value, evidence_.units.at(out.unit), evidence_.units.at(check.value_unit));
    out.unit = check.value_unit;
    measuring_.step(StepKind::converted).amount = out;
  }
  return out;
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

// From the job mix, up and down: thresholds around its value, in the unit of the specimens.
Judged Evaluator::tolerance(const plan::Check& check, const Amount& value) {
  const evidence::Target* const aim = target(check);
  if (aim == nullptr) {
    return {Verdict::not_shown, Reason::no_target};
  }
  Amount middle = aim->value.amount;
  middle.value = quantity::convert(middle.value, evidence_.units.at(middle.unit), evidence_.units.at(check.value_unit));
  middle.unit = check.value_unit;
  Step& noted = measuring_.step(StepKind::target);
  noted.amount = middle;
  noted.span = aim->value.span;
  quantity::Threshold low{middle.value - check.tolerance, true};
  quantity::Threshold high{middle.value + check.tolerance, true};
  if (const auto& rule = check.tolerance_rounding; rule.place) {
    low = quantity::fold_at_least(low.value, *rule.place, rule.ties);
    high = quantity::fold_at_most(high.value, *rule.place, rule.ties);
  }
  Judged out{compare_low(value, low), Reason::none};
  also(out, {compare_high(value, high), Reason::none});
  out.reason = out.verdict == Verdict::not_shown ? Reason::only_a_bound : Reason::none;
  return out;
}

Judged Evaluator::compare(const plan::Check& check, std::uint32_t index, const Amount& value, const Span& span) {
  Judged out;
  if (!value.value.finite()) {
    out = {Verdict::not_shown, Reason::not_computable};
  } else {
    const auto judge = [](Verdict verdict) {
      return Judged{verdict, verdict == Verdict::not_shown ? Reason::only_a_bound : Reason::none};
    };
    if (check.has_low) {
      also(out, judge(compare_low(value, check.low)));
    }
    if (check.has_high) {
      also(out, judge(compare_high(value, check.high)));
    }
    if (check.has_tolerance) {
      also(out, tolerance(check, value));
    }
  }
  if (!compared_.empty()) {
    compared_.back().push_back(value);
  }
  Step& noted = measuring_.step(StepKind::compared, index);
  noted.amount = value;
  noted.outcome = out.verdict;
  noted.reason = out.reason;
  noted.span = span;
  return out;
}

// The values of all specimens in values_, or why one has none.
Reason Evaluator::collect(const plan::Check& check, const Result& result) {
  values_.clear();
  places_.clear();
  Reason out = Reason::none;
  for (std::uint32_t at = 0; at < result.specimens.size(); ++at) {
    const Measured value = measuring_.specimen(result, at);
    if (value.good()) {
      values_.push_back(convert(check, value));
      places_.push_back(value.span);
    } else if (out == Reason::none) {
      out = value.reason;
    }
  }
  return out;
}

Judged Evaluator::each(const plan::Check& check, std::uint32_t index) {
  Judged out;
  const std::vector<Amount> values = values_;
  for (std::size_t at = 0; at < values.size(); ++at) {
    also(out, compare(check, index, values[at], places_[at]));
  }
  return out;
}

// The statistic of values_, in the unit of the limit.
Amount Evaluator::statistic(const plan::Check& check) {
  Amount value = combine(check.statistic, values_);
  value.unit = check.unit;
  if (values_.size() > 1) {
    Step& noted = measuring_.step(StepKind::combined, static_cast<std::uint32_t>(check.statistic));
    noted.amount = value;
    noted.other = static_cast<std::uint32_t>(values_.size());
  }
  return value;
}

Judged Evaluator::reported(const plan::Check& check, std::uint32_t index, const Result& result) {
  const Measured value = measuring_.reported(result);
  if (!value.good()) {
    return {Verdict::not_shown, value.reason};
  }
  const bool spread =
      check.statistic == syntax::StatisticKind::range || check.statistic == syntax::StatisticKind::standard_deviation;
  const bool of_specimens = check.statistic == syntax::StatisticKind::each ||
                            check.statistic == syntax::StatisticKind::least ||
                            check.statistic == syntax::StatisticKind::greatest;
  const Amount amount = spread ? value.amount : convert(check, value);
  if (spread || (of_specimens && result.replicates != 1)) {
    return {Verdict::not_shown, Reason::specimens_needed};
  }
  if (check.specimens > 1 && result.replicates == 0) {
    return {Verdict::not_shown, Reason::replicates_not_stated};
  }
  if (check.specimens > std::max(result.replicates, 1U)) {
    return {Verdict::not_shown, Reason::too_few_specimens};
  }
  return compare(check, index, amount, value.span);
}

Judged Evaluator::word(const plan::Check& check, std::uint32_t index, const Measured& value) {
  if (!value.good()) {
    return {Verdict::not_shown, value.reason};
  }
  const Verdict verdict = (check.words >> value.word & 1U) != 0 ? Verdict::complies : Verdict::fails;
  Step& noted = measuring_.step(StepKind::compared, index);
  noted.outcome = verdict;
  noted.other = value.word;
  noted.span = value.span;
  return {verdict, Reason::none};
}

Judged Evaluator::words(const plan::Check& check, std::uint32_t index, const Result& result) {
  Judged out;
  if (result.specimens.empty()) {
    also(out, word(check, index, measuring_.reported(result)));
    if (check.specimens > std::max(result.replicates, 1U)) {
      also(out, {Verdict::not_shown, Reason::too_few_specimens});
    }
    return out;
  }
  for (std::uint32_t at = 0; at < result.specimens.size(); ++at) {
    also(out, word(check, index, measuring_.specimen(result, at)));
  }
  if (result.specimens.size() < check.specimens) {
    also(out, {Verdict::not_shown, Reason::too_few_specimens});
  }
  return out;
}

Judged Evaluator::result(const plan::Check& check, std::uint32_t index, const Result& result) {
  if (check.words != 0) {
    return words(check, index, result);
  }
  if (result.specimens.empty()) {
    return reported(check, index, result);
  }
  const Reason reason = collect(check, result);
  if (reason != Reason::none) {
    return {Verdict::not_shown, reason};
  }
  if (values_.size() < check.specimens) {
    return {Verdict::not_shown, Reason::too_few_specimens};
  }
  if (check.statistic == syntax::StatisticKind::each) {
    return each(check, index);
  }
  return compare(check, index, statistic(check), result.span);
}

// One value for a result, where the statistic is taken over results: the mean of its specimens, or as reported.
Measured Evaluator::result_value(const plan::Check& check, const Result& result) {
  Measured out;
  out.span = result.span;
  if (result.specimens.empty()) {
    out = measuring_.reported(result);
    out.amount = out.good() ? convert(check, out) : out.amount;
    return out;
  }
  const std::vector<Amount> kept = values_;
  const std::vector<Span> kept_places = places_;
  out.reason = collect(check, result);
  if (out.good()) {
    out.amount = combine(syntax::StatisticKind::mean, values_);
    out.amount.unit = check.value_unit;
  }
  values_ = kept;
  places_ = kept_places;
  return out;
}

Judged Evaluator::over_results(const plan::Check& check, std::uint32_t index, std::uint32_t lot) {
  values_.clear();
  places_.clear();
  Reason missing = Reason::none;
  for (const std::uint32_t at : matched_) {
    const Result& one = evidence_.results[at];
    if (lot != check::none && one.lot != lot) {
      continue;
    }
    measuring_.step(StepKind::result, at).span = one.span;
    const Measured value = result_value(check, one);
    missing = missing == Reason::none ? value.reason : missing;
    values_.push_back(value.amount);
    places_.push_back(one.span);
  }
  if (missing != Reason::none) {
    return {Verdict::not_shown, missing};
  }
  if (values_.size() < check.specimens) {
    return {Verdict::not_shown, Reason::too_few_specimens};
  }
  return check.statistic == syntax::StatisticKind::each ? each(check, index)
                                                        : compare(check, index, statistic(check), {});
}

Judged Evaluator::over_results(const plan::Check& check, std::uint32_t index) {
  if (check.over == syntax::Over::results) {
    return over_results(check, index, check::none);
  }
  Judged out;
  std::vector<std::uint32_t> lots;
  for (const std::uint32_t at : matched_) {
    const std::uint32_t lot = evidence_.results[at].lot;
    if (lot == 0) {
      also(out, {Verdict::not_shown, Reason::condition_not_stated});
    } else if (std::find(lots.begin(), lots.end(), lot) == lots.end()) {
      lots.push_back(lot);
      also(out, over_results(check, index, lot));
    }
  }
  return out;
}

// Every result for the measure and conditions must comply: a favourable one cannot hide another.
Judged Evaluator::matched(const plan::Check& check, std::uint32_t index) {
  if (check.over != syntax::Over::specimens) {
    return over_results(check, index);
  }
  Judged out;
  const std::vector<std::uint32_t> all = matched_;
  for (const std::uint32_t at : all) {
    const Result& candidate = evidence_.results[at];
    measuring_.step(StepKind::result, at).span = candidate.span;
    const Judged one = result(check, index, candidate);
    also(out, one);
    Step& noted = measuring_.step(StepKind::result_verdict, at);
    noted.outcome = one.verdict;
    noted.reason = one.reason;
  }
  return out;
}

// Of the reasons why results do not count, the most telling one: a thing not stated before a thing that differs.
int telling(Reason reason) {
  switch (reason) {
    case Reason::unusable_value:
      return 7;
    case Reason::design_not_stated:
      return 6;
    case Reason::condition_not_stated:
      return 5;
    case Reason::date_not_stated:
      return 4;
    case Reason::too_old:
      return 3;
    case Reason::other_design:
      return 2;
    case Reason::other_conditions:
      return 1;
    default:
      return 0;
  }
}

Judged Evaluator::check(std::uint32_t index) {
  const plan::Check& check = plan_.checks[index];
  measuring_.step(StepKind::check, index);
  Reason why_none = Reason::no_result;
  matched_.clear();
  for (std::uint32_t at = 0; at < evidence_.results.size(); ++at) {
    if (evidence_.results[at].measure != check.measure) {
      continue;
    }
    const Reason reason = mismatch(check, evidence_.results[at]);
    if (reason == Reason::none) {
      matched_.push_back(at);
    } else {
      why_none = telling(reason) > telling(why_none) ? reason : why_none;
    }
  }
  Judged out = matched_.empty() ? Judged{Verdict::not_shown, why_none} : matched(check, index);
  // A result that may be one of them, but cannot be placed: a favourable one beside it does not show the clause.
  if (!matched_.empty() && telling(why_none) >= telling(Reason::date_not_stated)) {
    also(out, {Verdict::not_shown, why_none});
  }
  Step& noted = measuring_.step(StepKind::check_verdict, index);
  noted.outcome = out.verdict;
  noted.reason = out.reason;
  return out;
}

// Percent passing must not go from one end of the band to the other on two consecutive sieves. The part of the band
// that counts as its end is the specification's.
Judged Evaluator::consecutive(const plan::Group& group) {
  const auto end_of = [&](std::uint32_t check, const Amount& value) {
    const plan::Check& one = plan_.checks[check];
    const Decimal width = one.printed_high - one.printed_low;
    if (!one.has_low || !one.has_high || width.zero() || value.bound != Bound::exact) {
      return 0;
    }
    const Decimal above = value.value - one.printed_low;
    return above >= width * (Decimal{1} - group.ends) ? 1 : above <= width * group.ends ? -1 : 0;
  };
  Judged out;
  for (std::uint32_t at = group.checks.begin; at + 1 < group.checks.end; ++at) {
    const auto& first = compared_[at - group.checks.begin];
    const auto& second = compared_[at + 1 - group.checks.begin];
    for (std::size_t sample = 0; sample < std::min(first.size(), second.size()); ++sample) {
      if (end_of(at, first[sample]) * end_of(at + 1, second[sample]) == -1) {
        out = {Verdict::fails, Reason::end_to_end};
        Step& noted = measuring_.step(StepKind::end_to_end, at);
        noted.outcome = out.verdict;
        noted.reason = out.reason;
      }
    }
  }
  return out;
}

Judged Evaluator::group(std::uint32_t index) {
  const plan::Group& group = plan_.groups[index];
  measuring_.step(StepKind::group, index);
  Judged out;
  if (group.checks.size() == 0) {
    out = {Verdict::not_shown, Reason::no_result};
  }
  compared_.clear();
  for (std::uint32_t at = group.checks.begin; at < group.checks.end; ++at) {
    if (group.has_ends) {
      compared_.emplace_back();
    }
    also(out, check(at));
  }
  if (group.has_ends) {
    also(out, consecutive(group));
    compared_.clear();
  }
  Step& noted = measuring_.step(StepKind::group_verdict, index);
  noted.outcome = out.verdict;
  noted.reason = out.reason;
  return out;
}

// language.md, section 10.3: of alternatives, one that complies is enough.
Judged Evaluator::demands(plan::Range groups) {
  Judged out{Verdict::fails, Reason::none};
  Judged open;
  for (std::uint32_t at = groups.begin; at < groups.end; ++at) {
    const Judged one = group(at);
    if (one.verdict == Verdict::complies) {
      out = one;
    } else if (one.verdict == Verdict::not_shown && open.verdict != Verdict::not_shown) {
      open = one;
    } else if (one.verdict == Verdict::fails && out.verdict == Verdict::fails) {
      out.reason = one.reason;
    }
  }
  const bool undecided = out.verdict != Verdict::complies && open.verdict == Verdict::not_shown;
  return undecided ? open : out;
}

void Evaluator::requirement(std::uint32_t index) {
  const plan::Requirement& requirement = plan_.requirements[index];
  validity_ = requirement.validity;
  const auto begin = static_cast<std::uint32_t>(review_.trace.size());
  Judged out = applies(requirement.tests, StepKind::class_tested);
  if (out.verdict == Verdict::complies) {
    out = {Verdict::not_shown, Reason::no_result};
    for (std::uint32_t at = requirement.cases.begin; at < requirement.cases.end; ++at) {
      const Judged one = applies(plan_.cases[at].tests, StepKind::case_tested);
      if (one.verdict == Verdict::does_not_apply) {
        continue;
      }
      out = one;
      if (one.verdict == Verdict::complies) {
        measuring_.step(StepKind::case_chosen, at);
        out = plan_.cases[at].groups.size() == 0 ? Judged{Verdict::does_not_apply, Reason::exempted}
                                                 : demands(plan_.cases[at].groups);
      }
      break;
    }
  }
  review_.findings.push_back(
      {index, out.verdict, out.reason, {begin, static_cast<std::uint32_t>(review_.trace.size())}});
}

}  // namespace

Review evaluate(const plan::Plan& plan, const Evidence& evidence) {
  Review review;
  review.findings.reserve(plan.requirements.size());
  Evaluator evaluator(plan, evidence, review);
  for (std::uint32_t at = 0; at < plan.requirements.size(); ++at) {
    evaluator.requirement(at);
  }
  return review;
}

Review evaluate_one(const plan::Plan& plan, const Evidence& evidence, std::uint32_t requirement) {
  Review review;
  Evaluator(plan, evidence, review).requirement(requirement);
  return review;
}

MeasureValue measure_value(const plan::Plan& plan, const Evidence& evidence, std::uint32_t index) {
  std::vector<Step> trace;
  Measuring measuring(plan, evidence, trace);
  const Result& result = evidence.results.at(index);
  const Measured value = result.specimens.empty() ? measuring.reported(result) : measuring.specimen(result, 0);
  return {value.good() ? Verdict::complies : Verdict::not_shown, value.reason, value.amount, value.word};
}

Outcome outcome(const plan::Plan& plan, const std::vector<Finding>& findings) {
  bool rejected = false;
  bool referred = false;
  bool open = false;
  bool anything = false;
  for (const Finding& finding : findings) {
    const plan::Requirement& requirement = plan.requirements[finding.requirement];
    if (requirement.severity == check::Severity::advise) {
      continue;
    }
    const bool fails = finding.verdict == Verdict::fails;
    rejected = rejected || (fails && requirement.severity == check::Severity::reject);
    referred = referred || (fails && requirement.severity == check::Severity::refer);
    open = open || (finding.verdict == Verdict::not_shown && !requirement.optional);
    anything = anything || finding.verdict == Verdict::complies;
  }
  if (rejected) {
    return Outcome::revise_and_resubmit;
  }
  if (referred) {
    return Outcome::refer_to_engineer;
  }
  return open || !anything ? Outcome::incomplete : Outcome::no_exception_taken;
}

}  // namespace plumbrule::evaluate
