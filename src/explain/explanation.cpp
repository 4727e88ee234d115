#include "explain/explanation.hpp"

#include <algorithm>

#include "explain/numbers.hpp"
#include "explain/steps.hpp"

namespace plumbrule::explain {
namespace {

using evaluate::Step;
using evaluate::StepKind;

int rank(Verdict verdict) { return verdict == Verdict::fails ? 2 : verdict == Verdict::not_shown ? 1 : 0; }

// Of two compared values the one that decides: the worse verdict, then the smaller margin.
bool worse(const Context& context, const check::Assertion& assertion, const Step& one, const Step& other) {
  if (rank(one.outcome) != rank(other.outcome)) {
    return rank(one.outcome) > rank(other.outcome);
  }
  const bool numbers = !context.rules.measures[assertion.measure].type.is_word() && one.amount.value.finite() &&
                       other.amount.value.finite();
  return numbers &&
         standing(context, assertion, one.amount).distance < standing(context, assertion, other.amount).distance;
}

// The comparisons of a finding: for each check, the compared value that decided it.
std::vector<Comparison> comparisons(const Context& context, const evaluate::Finding& finding) {
  std::vector<Comparison> out;
  std::optional<Step> deciding;
  const check::Assertion* current = nullptr;
  std::string refused;
  std::optional<quantity::Decimal> target;
  Specimens specimens(context);
  for (const Step& step : plan::part(context.review.trace, finding.steps)) {
    specimens.see(step);
    if (step.kind == StepKind::check) {
      specimens.begin(step.index);
      deciding.reset();
      refused.clear();
      target.reset();
      current = &assertion_of(context, finding, step.index);
    } else if (step.kind == StepKind::refusal && current != nullptr) {
      refused = "refused, because " + context.rules.measures[current->measure].refusals[step.index].because;
    } else if (step.kind == StepKind::target) {
      target = step.amount.value;
    } else if (step.kind == StepKind::compared && current != nullptr) {
      deciding = deciding && !worse(context, *current, step, *deciding) ? deciding : step;
    } else if (step.kind == StepKind::check_verdict) {
      const check::Assertion& assertion = assertion_of(context, finding, step.index);
      const check::Measure& measure = context.rules.measures[assertion.measure];
      Comparison one;
      one.subject = subject_key(context.rules, assertion);
      one.label = label(context.rules, assertion);
      one.limit = limit_text(assertion.limit);
      one.verdict = step.outcome;
      one.reason = step.reason;
      one.why = step.reason == Reason::refused && !refused.empty() ? refused : reason_text(step.reason);
      one.numbers = numbers(context, assertion, target);
      one.numbers.specimens = specimens.take();
      // A value that some other result has does not explain why one is missing or cannot be placed.
      if (step.outcome == Verdict::not_shown && step.reason != Reason::only_a_bound &&
          step.reason != Reason::no_target) {
        deciding.reset();
      }
      if (deciding) {
        one.place = context.sources.place_text(deciding->span);
        if (measure.type.is_word()) {
          one.value = show(context, measure.type, deciding->amount, deciding->other);
        } else if (deciding->amount.value.finite()) {
          const Standing at = standing(context, assertion, deciding->amount, target);
          one.value = at.value;
          one.margin = at.margin;
          one.distance = at.distance;
          one.headroom = at.headroom;
          if (deciding->amount.bound == quantity::Bound::exact) {
            one.numbers.value = deciding->amount.value;
          }
        }
      }
      out.push_back(std::move(one));
    }
  }
  return out;
}

// A grading that conforms: not every sieve, only how many and the one with the least room.
std::string conforming(const std::vector<Comparison>& all) {
  const auto nearest = std::min_element(all.begin(), all.end(), [](const Comparison& left, const Comparison& right) {
    return left.distance < right.distance;
  });
  return "all " + std::to_string(all.size()) + " sieves inside; nearest to its limit " + nearest->label + ": " +
         nearest->value + " against " + nearest->limit + ", " + nearest->margin;
}

std::string joined(const std::vector<Comparison>& all, Verdict verdict) {
  std::string out;
  for (const Comparison& one : all) {
    if (one.verdict != verdict) {
      continue;
    }
    out += out.empty() ? "" : "; ";
    out += (all.size() > 1 ? one.label + ": " : "") + one.value + " against " + one.limit;
    out += one.margin.empty() ? "" : ", " + one.margin;
  }
  return out;
}

std::string missing(const std::vector<Comparison>& all) {
  std::string out;
  for (const Comparison& one : all) {
    if (one.verdict == Verdict::not_shown) {
      out += out.empty() ? "" : "; ";
      out += all.size() > 1 ? one.label + ": " : "";
      out += one.value.empty() ? "" : one.value + " against " + one.limit + ": ";
      out += one.why;
    }
  }
  return out;
}

std::string class_reason(const Context& context, const evaluate::Finding& finding) {
  for (const Step& step : plan::part(context.review.trace, finding.steps)) {
    const bool tested = step.kind == StepKind::class_tested || step.kind == StepKind::case_tested;
    if (tested && step.reason == finding.reason) {
      const check::Test& test = test_of(context, finding, step.index);
      const check::Category& category = context.rules.categories[test.category];
      const std::string stated = step.reason == Reason::class_not_stated
                                     ? "the submittal does not state it"
                                     : "the submittal states " + spaced(category.words[step.other]);
      return (step.kind == StepKind::case_tested ? "it has an exception for " : "it is for ") + spaced(category.name) +
             " " + words(category, test.words) + "; " + stated;
    }
  }
  return reason_text(finding.reason);
}

// The two sieves, the coarser first, with what passes them.
std::string end_to_end(const Context& context, const evaluate::Finding& finding) {
  std::string out = reason_text(finding.reason);
  for (const Step& step : plan::part(context.review.trace, finding.steps)) {
    if (step.kind == StepKind::end_to_end) {
      out += ": " + conditions(context.rules, assertion_of(context, finding, step.index)) + " at one end, " +
             conditions(context.rules, assertion_of(context, finding, step.other)) + " at the other";
    }
  }
  return out;
}

std::string why(const Context& context, const evaluate::Finding& finding, const std::vector<Comparison>& all) {
  if (finding.reason == Reason::class_excluded || finding.reason == Reason::class_not_stated ||
      finding.reason == Reason::exempted) {
    return class_reason(context, finding);
  }
  if (finding.verdict == Verdict::not_shown) {
    return missing(all);
  }
  const auto complies = [](const Comparison& one) { return one.verdict == Verdict::complies; };
  const bool grading =
      finding.verdict == Verdict::complies && all.size() > 3 && std::all_of(all.begin(), all.end(), complies);
  if (finding.reason == Reason::end_to_end) {
    return end_to_end(context, finding);
  }
  return grading ? conforming(all) : joined(all, finding.verdict);
}

std::string submit(const Context& context, const evaluate::Finding& finding) {
  if (finding.verdict != Verdict::not_shown) {
    return {};
  }
  if (finding.reason == Reason::class_not_stated) {
    for (const Step& step : plan::part(context.review.trace, finding.steps)) {
      if (step.reason == Reason::class_not_stated) {
        const check::Test& test = test_of(context, finding, step.index);
        return "state `" + context.rules.categories[test.category].name + "` under `classes`";
      }
    }
  }
  std::string out;
  for (const Step& step : plan::part(context.review.trace, finding.steps)) {
    if (step.kind == StepKind::check_verdict && step.outcome == Verdict::not_shown) {
      const std::string one = submit_text(context, assertion_of(context, finding, step.index), step.reason);
      out += out.empty() ? one : "; or " + one;
      if (alternatives_of(context, finding) == 1) {
        break;  // of a grading, the first sieve says enough; the findings list the others
      }
    }
  }
  return out;
}

}  // namespace

Explanation explain(const Context& context, const evaluate::Finding& finding) {
  const check::Requirement& requirement = context.rules.requirements[finding.requirement];
  Explanation out;
  out.number = requirement.number;
  out.title = requirement.title;
  if (requirement.section != check::none) {
    const check::Section& section = context.rules.sections[requirement.section];
    out.section = section.number + " " + section.title;
  }
  out.verdict = finding.verdict;
  out.reason = finding.reason;
  out.severity = requirement.severity;
  out.optional = requirement.optional;
  out.status = requirement.provenance.status;
  out.status_note = requirement.provenance.status_note;
  out.source = requirement.provenance.source;
  out.sentence = sentence(context.rules, requirement);
  out.cite = requirement.cite;
  out.amended_by = requirement.amended_by;
  for (const Step& step : plan::part(context.review.trace, finding.steps)) {
    if (step.kind == StepKind::case_chosen) {
      out.cite = requirement.cases[step.index - context.plan.requirements[finding.requirement].cases.begin].cite;
    }
  }
  out.because = requirement.because;
  out.mend = finding.verdict == Verdict::fails ? requirement.mend : "";
  out.note = requirement.provenance.note;
  out.comparisons = comparisons(context, finding);
  out.why = why(context, finding, out.comparisons);
  out.submit = submit(context, finding);
  out.steps = derivation(context, finding);
  return out;
}

}  // namespace plumbrule::explain
