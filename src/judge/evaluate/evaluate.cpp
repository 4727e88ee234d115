#include "judge/evaluate/evaluate.hpp"

#include <algorithm>

#include "judge/evaluate/evaluator.hpp"

namespace plumbrule::evaluate {

// The values that the job mix declares are a sample of their own.
static constexpr std::uint32_t declared_sample = check::none - 1;

// Every result for the measure and conditions must comply: a favourable one cannot hide another.
Judged Evaluator::matched(const plan::Check& check, std::uint32_t index) {
  sample_ = check::none;
  if (check.over != syntax::Over::specimens) {
    return over_results(check, index);
  }
  Judged out;
  const std::vector<std::uint32_t> all = matched_;
  for (const std::uint32_t at : all) {
    const Result& candidate = evidence_.results[at];
    measuring_.step(StepKind::result, at).span = candidate.span;
    sample_ = candidate.declared ? declared_sample : candidate.series;
    const Judged one = result(check, index, candidate);
    also(out, one);
    Step& noted = measuring_.step(StepKind::result_verdict, at);
    noted.outcome = one.verdict;
    noted.reason = one.reason;
  }
  return out;
}

// Of the reasons why results do not count, the most telling one: a thing not stated before a thing that differs.
static int telling(Reason reason) {
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

Reason Evaluator::place(const plan::Check& check) {
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
  return why_none;
}

// A result that may be one of those that a check is about, but cannot be placed.
static bool may_count(Reason reason) { return telling(reason) >= telling(Reason::date_not_stated); }

Placed Evaluator::placed(std::uint32_t requirement, std::uint32_t check) {
  validity_ = plan_.requirements[requirement].validity;
  const Reason why_none = place(plan_.checks[check]);
  return {matched_, may_count(why_none)};
}

Judged Evaluator::check(std::uint32_t index) {
  const plan::Check& check = plan_.checks[index];
  measuring_.step(StepKind::check, index);
  const Reason why_none = place(check);
  Judged out = matched_.empty() ? Judged{Verdict::not_shown, why_none} : matched(check, index);
  // A favourable result beside one that cannot be placed does not show the clause.
  if (!matched_.empty() && may_count(why_none)) {
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
  std::uint32_t before = check::none;  // the sieve before; those without a band are left out
  for (std::uint32_t at = group.checks.begin; at < group.checks.end; ++at) {
    if (!plan_.checks[at].has_low) {
      continue;
    }
    const std::uint32_t coarser = before;
    before = at;
    if (coarser == check::none) {
      continue;
    }
    const auto& second = compared_[at - group.checks.begin];
    for (const auto& [sample, value] : compared_[coarser - group.checks.begin]) {
      const bool jumps = std::any_of(second.begin(), second.end(), [&, of = sample, amount = value](const auto& other) {
        return other.first == of && end_of(coarser, amount) * end_of(at, other.second) == -1;
      });
      if (jumps) {
        out = {Verdict::fails, Reason::end_to_end};
        Step& noted = measuring_.step(StepKind::end_to_end, coarser);
        noted.other = at;
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

Placed placed(const plan::Plan& plan, const Evidence& evidence, std::uint32_t requirement, std::uint32_t check) {
  Review review;
  return Evaluator(plan, evidence, review).placed(requirement, check);
}

MeasureValue measure_value(const plan::Plan& plan, const Evidence& evidence, std::uint32_t index) {
  std::vector<Step> trace;
  Measuring measuring(plan, evidence, trace);
  const Result& result = evidence.results.at(index);
  const Measured value = result.specimens.empty() ? measuring.reported(result) : measuring.specimen(result, 0);
  return {value.good() ? Verdict::complies : Verdict::not_shown, value.reason, value.amount, value.word};
}

namespace {

SpecimenValue with_refusal(const Measured& value, const std::vector<Step>& trace) {
  const bool refused = value.reason == Reason::refused && !trace.empty();
  return {value.reason, value.amount, refused ? trace.back().index : check::none};
}

}  // namespace

SpecimenValue specimen_value(const plan::Plan& plan, const Evidence& evidence, const Result& result,
                             std::uint32_t specimen) {
  std::vector<Step> trace;
  return with_refusal(Measuring(plan, evidence, trace).specimen(result, specimen), trace);
}

SpecimenValue reported_value(const plan::Plan& plan, const Evidence& evidence, const Result& result) {
  std::vector<Step> trace;
  return with_refusal(Measuring(plan, evidence, trace).reported(result), trace);
}

Outcome outcome(const plan::Plan& plan, const std::vector<Finding>& findings, bool faulty) {
  Together all;
  for (const Finding& finding : findings) {
    all.add(plan.requirements[finding.requirement], finding.verdict);
  }
  return all.outcome(faulty);
}

}  // namespace plumbrule::evaluate
