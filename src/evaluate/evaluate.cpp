#include "evaluate/evaluate.hpp"

#include <algorithm>

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

  Judged applies(const plan::Requirement& requirement);
  Judged group(std::uint32_t index);
  Judged check(std::uint32_t index);
  Judged result(const plan::Check& check, std::uint32_t check_index, const Result& result);
  Judged words(const plan::Check& check, std::uint32_t check_index, const Result& result);
  Judged word(const plan::Check& check, std::uint32_t check_index, const Measured& value);
  Judged reported(const plan::Check& check, std::uint32_t check_index, const Result& result);
  Reason collect(const plan::Check& check, const Result& result);
  Amount convert(const plan::Check& check, const Measured& value);
  Judged compare(const plan::Check& check, std::uint32_t check_index, const Amount& value, const Span& span);
  Judged each(const plan::Check& check, std::uint32_t check_index);
  [[nodiscard]] Reason mismatch(const plan::Check& check, const Result& result) const;
};

Judged Evaluator::applies(const plan::Requirement& requirement) {
  Judged out;
  for (std::uint32_t at = requirement.tests.begin; at < requirement.tests.end; ++at) {
    const plan::ClassTest& test = plan_.tests[at];
    const Value& stated = evidence_.classes[test.category];
    Step& noted = measuring_.step(StepKind::class_tested, at);
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

// Why the result is not one that the check is about; Reason::none: it is.
Reason Evaluator::mismatch(const plan::Check& check, const Result& result) const {
  Reason out = Reason::none;
  for (const plan::ConditionMatch& wanted : plan::part(plan_.conditions, check.conditions)) {
    const auto stated = std::find_if(result.conditions.begin(), result.conditions.end(),
                                     [&](const auto& one) { return one.condition == wanted.condition; });
    if (stated == result.conditions.end() || !stated->value.usable()) {
      out = Reason::condition_not_stated;
    } else if (wanted.word != check::none ? stated->value.word != wanted.word
                                          : !(stated->value.amount.value == wanted.value)) {
      return Reason::other_conditions;
    }
  }
  if (out == Reason::none && result.design != evidence::Design::job_mix) {
    out = result.design == evidence::Design::other ? Reason::other_design : Reason::design_not_stated;
  }
  return out;
}

Amount Evaluator::convert(const plan::Check& check, const Measured& value) {
  Amount out = value.amount;
  if (out.unit != check.value_unit) {
    out.value = quantity::convert(out.value, evidence_.units.at(out.unit), evidence_.units.at(check.value_unit));
    out.unit = check.value_unit;
    Step& noted = measuring_.step(StepKind::converted);
    noted.amount = out;
  }
  return out;
}

Judged Evaluator::compare(const plan::Check& check, std::uint32_t check_index, const Amount& value, const Span& span) {
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
  }
  Step& noted = measuring_.step(StepKind::compared, check_index);
  noted.amount = value;
  noted.outcome = out.verdict;
  noted.reason = out.reason;
  noted.span = span;
  return out;
}

// The values of all specimens in values_, or why one has none.
Reason Evaluator::collect(const plan::Check& check, const Result& result) {
  values_.clear();
  Reason out = Reason::none;
  for (std::uint32_t at = 0; at < result.specimens.size(); ++at) {
    const Measured value = measuring_.specimen(result, at);
    if (value.good()) {
      values_.push_back(convert(check, value));
    } else if (out == Reason::none) {
      out = value.reason;
    }
  }
  return out;
}

Judged Evaluator::each(const plan::Check& check, std::uint32_t check_index) {
  Judged out;
  for (const Amount& value : values_) {
    also(out, compare(check, check_index, value, {}));
  }
  return out;
}

Judged Evaluator::reported(const plan::Check& check, std::uint32_t check_index, const Result& result) {
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
  return compare(check, check_index, amount, value.span);
}

Judged Evaluator::word(const plan::Check& check, std::uint32_t check_index, const Measured& value) {
  if (!value.good()) {
    return {Verdict::not_shown, value.reason};
  }
  const Verdict verdict = (check.words >> value.word & 1U) != 0 ? Verdict::complies : Verdict::fails;
  Step& noted = measuring_.step(StepKind::compared, check_index);
  noted.outcome = verdict;
  noted.other = value.word;
  noted.span = value.span;
  return {verdict, Reason::none};
}

Judged Evaluator::words(const plan::Check& check, std::uint32_t check_index, const Result& result) {
  Judged out;
  if (result.specimens.empty()) {
    also(out, word(check, check_index, measuring_.reported(result)));
    if (check.specimens > std::max(result.replicates, 1U)) {
      also(out, {Verdict::not_shown, Reason::too_few_specimens});
    }
    return out;
  }
  for (std::uint32_t at = 0; at < result.specimens.size(); ++at) {
    also(out, word(check, check_index, measuring_.specimen(result, at)));
  }
  if (result.specimens.size() < check.specimens) {
    also(out, {Verdict::not_shown, Reason::too_few_specimens});
  }
  return out;
}

Judged Evaluator::result(const plan::Check& check, std::uint32_t check_index, const Result& result) {
  if (check.words != 0) {
    return words(check, check_index, result);
  }
  if (result.specimens.empty()) {
    return reported(check, check_index, result);
  }
  const Reason reason = collect(check, result);
  if (reason != Reason::none) {
    return {Verdict::not_shown, reason};
  }
  if (values_.size() < check.specimens) {
    return {Verdict::not_shown, Reason::too_few_specimens};
  }
  if (check.statistic == syntax::StatisticKind::each) {
    return each(check, check_index);
  }
  Amount value = combine(check.statistic, values_);
  value.unit = check.unit;
  if (values_.size() > 1) {
    Step& noted = measuring_.step(StepKind::combined, static_cast<std::uint32_t>(check.statistic));
    noted.amount = value;
    noted.other = static_cast<std::uint32_t>(values_.size());
  }
  return compare(check, check_index, value, result.span);
}

// Every result for the measure and conditions must comply: a favourable one cannot hide another.
Judged Evaluator::check(std::uint32_t index) {
  const plan::Check& check = plan_.checks[index];
  measuring_.step(StepKind::check, index);
  Judged out;
  Reason why_none = Reason::no_result;
  bool found = false;
  for (std::uint32_t at = 0; at < evidence_.results.size(); ++at) {
    const Result& candidate = evidence_.results[at];
    if (candidate.measure != check.measure) {
      continue;
    }
    if (const Reason reason = mismatch(check, candidate); reason != Reason::none) {
      // The most telling reason: a condition or design that is not stated before one that differs.
      const auto rank = [](Reason one) {
        return one == Reason::design_not_stated      ? 4
               : one == Reason::condition_not_stated ? 3
               : one == Reason::other_design         ? 2
               : one == Reason::other_conditions     ? 1
                                                     : 0;
      };
      why_none = rank(reason) > rank(why_none) ? reason : why_none;
      continue;
    }
    found = true;
    measuring_.step(StepKind::result, at).span = candidate.span;
    const Judged one = result(check, index, candidate);
    also(out, one);
    Step& noted = measuring_.step(StepKind::result_verdict, at);
    noted.outcome = one.verdict;
    noted.reason = one.reason;
  }
  if (!found) {
    out = {Verdict::not_shown, why_none};
  }
  Step& noted = measuring_.step(StepKind::check_verdict, index);
  noted.outcome = out.verdict;
  noted.reason = out.reason;
  return out;
}

Judged Evaluator::group(std::uint32_t index) {
  const plan::Group& group = plan_.groups[index];
  measuring_.step(StepKind::group, index);
  Judged out;
  if (group.checks.size() == 0) {
    out = {Verdict::not_shown, Reason::no_result};
  }
  for (std::uint32_t at = group.checks.begin; at < group.checks.end; ++at) {
    also(out, check(at));
  }
  Step& noted = measuring_.step(StepKind::group_verdict, index);
  noted.outcome = out.verdict;
  noted.reason = out.reason;
  return out;
}

void Evaluator::requirement(std::uint32_t index) {
  const plan::Requirement& requirement = plan_.requirements[index];
  const auto begin = static_cast<std::uint32_t>(review_.trace.size());
  Judged out = applies(requirement);
  if (out.verdict == Verdict::complies) {
    // language.md, section 10.3: of alternatives, one that complies is enough.
    out = {Verdict::fails, Reason::none};
    Judged open;
    for (std::uint32_t at = requirement.groups.begin; at < requirement.groups.end; ++at) {
      const Judged one = group(at);
      if (one.verdict == Verdict::complies) {
        out = one;
      } else if (one.verdict == Verdict::not_shown && open.verdict != Verdict::not_shown) {
        open = one;
      }
    }
    const bool undecided = out.verdict != Verdict::complies && open.verdict == Verdict::not_shown;
    out = undecided || requirement.groups.size() == 0 ? Judged{Verdict::not_shown, open.reason} : out;
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
