#include "judge/explain/explanation.hpp"

#include <algorithm>

#include "judge/explain/numbers.hpp"
#include "judge/explain/steps.hpp"

namespace plumbrule::explain {
namespace {

using evaluate::Step;
using evaluate::StepKind;

// What a check noted on its way to its verdict.
struct Course {
  const check::Assertion* assertion = nullptr;
  std::optional<Step> deciding;  // the compared value
  std::optional<Step> refused;   // the first refusal
  std::optional<quantity::Decimal> target;
  std::vector<Step> open;  // what led to no value, and what lacks one
};

// Where a reason is found that keeps a check from being shown; unknown if nothing in the submittal carries it.
source::Span open_place(const Context& context, const Course& course, Reason reason) {
  for (const Step& step : course.open) {
    if (step.reason == reason) {
      return step.kind == StepKind::result_verdict ? context.evidence.results[step.index].span : step.span;
    }
  }
  return {};
}

void put_place(const Context& context, const source::Span& span, Comparison& out) {
  out.place = span.known() ? context.sources.place_text(span) : "";
  out.span = span;
}

void put_value(const Context& context, const Course& course, Comparison& out) {
  const check::Measure& measure = context.rules.measures[course.assertion->measure];
  const quantity::Amount& amount = course.deciding->amount;
  if (measure.type.is_word()) {
    out.value = show(context, measure.type, amount, course.deciding->other);
  } else if (amount.value.finite()) {
    const Standing at = standing(context, *course.assertion, amount, course.target);
    out.value = at.value;
    out.margin = at.margin;
    out.distance = at.distance;
    out.headroom = at.headroom;
    if (amount.bound == quantity::Bound::exact) {
      out.numbers.value = amount.value;
    }
  }
}

Comparison comparison(const Context& context, const Course& course, const Step& verdict) {
  const check::Assertion& assertion = *course.assertion;
  Comparison out;
  out.subject = subject_key(context.rules, assertion);
  out.label = label(context.rules, assertion);
  out.limit = limit_text(assertion.limit);
  out.verdict = verdict.outcome;
  out.reason = verdict.reason;
  out.why =
      verdict.reason == Reason::refused && course.refused
          ? "refused, because " + context.rules.measures[assertion.measure].refusals[course.refused->index].because
          : reason_text(verdict.reason);
  out.numbers = numbers(context, assertion, course.target);
  // A value that some other result has does not explain why one is missing or cannot be placed.
  const bool open = verdict.outcome == Verdict::not_shown && verdict.reason != Reason::only_a_bound &&
                    verdict.reason != Reason::no_target;
  if (open) {
    put_place(context, open_place(context, course, verdict.reason), out);
  } else if (course.deciding) {
    put_place(context, course.deciding->span, out);
    put_value(context, course, out);
  }
  return out;
}

// The comparisons of a finding: for each check, the compared value that decided it.
std::vector<Comparison> comparisons(const Context& context, const evaluate::Finding& finding) {
  std::vector<Comparison> out;
  Course course;
  Specimens specimens(context);
  for (const Step& step : plan::part(context.review.trace, finding.steps)) {
    specimens.see(step);
    if (step.kind == StepKind::check) {
      specimens.begin(step.index);
      course = {&assertion_of(context, finding, step.index), {}, {}, {}, {}};
    } else if (course.assertion == nullptr) {
      continue;  // what chose the case
    } else if (step.kind == StepKind::check_verdict) {
      out.push_back(comparison(context, course, step));
      out.back().numbers.specimens = specimens.take();
    } else if (step.kind == StepKind::target) {
      course.target = step.amount.value;
    } else if (step.kind == StepKind::compared) {
      const bool kept = course.deciding && !decides_before(context.rules, *course.assertion, step, *course.deciding);
      course.deciding = kept ? course.deciding : step;
    } else if (step.kind == StepKind::refusal && !course.refused) {
      course.refused = step;
    }
    const bool led_nowhere =
        step.reason != Reason::none && (step.span.known() || step.kind == StepKind::result_verdict);
    if (led_nowhere) {
      course.open.push_back(step);
    }
  }
  return out;
}

// A grading that conforms: not every sieve, only how many and the one that is nearest its limit, by what is printed of
// it. Not one with a limit of one value: whatever meets it lies at it.
std::string conforming(const std::vector<Comparison>& all) {
  const auto nearest = std::min_element(all.begin(), all.end(), [](const Comparison& left, const Comparison& right) {
    return left.headroom && (!right.headroom || left.distance < right.distance);
  });
  const std::string out = "all " + std::to_string(all.size()) + " sieves inside";
  return nearest->headroom ? out + "; nearest its limit " + nearest->label + ": " + nearest->value + " against " +
                                 nearest->limit + ", " + nearest->margin
                           : out;
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

// The value that made the verdict, or else the last thing that was considered and led nowhere.
source::Span where(const Context& context, const evaluate::Finding& finding, const std::vector<Comparison>& all) {
  for (const Comparison& one : all) {
    if (one.verdict == finding.verdict && one.span.known()) {
      return one.span;
    }
  }
  source::Span out;
  for (const Step& step : plan::part(context.review.trace, finding.steps)) {
    out = step.span.known() ? step.span : out;
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
  out.where = where(context, finding, out.comparisons);
  out.rule = requirement.span;
  return out;
}

}  // namespace plumbrule::explain
