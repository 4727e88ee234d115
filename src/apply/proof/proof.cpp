#include "apply/proof/proof.hpp"

#include <algorithm>
#include <numeric>

#include "apply/proof/coverage.hpp"
#include "base/source/digest.hpp"
#include "judge/explain/explanation.hpp"
#include "judge/explain/wording.hpp"
#include "language/library/rule_set.hpp"

namespace plumbrule::proof {
namespace {

using check::Example;
using evaluate::Verdict;

// The verdict that an example expects; nothing where the measure is to refuse the reading.
std::optional<Verdict> verdict_of(syntax::ExpectedVerdict expected) {
  switch (expected) {
    case syntax::ExpectedVerdict::complies:
      return Verdict::complies;
    case syntax::ExpectedVerdict::fails:
      return Verdict::fails;
    case syntax::ExpectedVerdict::not_shown:
      return Verdict::not_shown;
    case syntax::ExpectedVerdict::does_not_apply:
      return Verdict::does_not_apply;
    case syntax::ExpectedVerdict::refused:
      break;
  }
  return std::nullopt;
}

std::string_view expected_text(syntax::ExpectedVerdict expected) {
  const auto verdict = verdict_of(expected);
  return verdict ? explain::verdict_text(*verdict) : "refused";
}

void wrong_verdict(diagnose::Diagnostics& diagnostics, const Example& example, const std::string& found,
                   const std::string& why) {
  diagnostics.error(diagnose::Code::example_verdict, example.span,
                    "found that " + found + (why.empty() ? "" : " (" + why + ")") + ", expected " +
                        std::string(expected_text(*example.verdict)),
                    "mend the requirement, or the example");
}

void prove_requirement(const source::SourceMap& sources, const library::RuleSet& set, const Example& example,
                       const evidence::Evidence& evidence, Coverage& coverage, diagnose::Diagnostics& diagnostics) {
  const evaluate::Review review = evaluate::evaluate_one(set.plan, evidence, example.requirement);
  coverage.add(review);
  const Verdict found = review.findings.front().verdict;
  if (verdict_of(*example.verdict) == found) {
    return;
  }
  const explain::Context context{sources, set.rules, set.plan, evidence, review};
  const explain::Explanation explanation = explain::explain(context, review.findings.front());
  const std::string subject = "clause " + explanation.number;
  wrong_verdict(diagnostics, example,
                subject + " " + (found == Verdict::not_shown ? "is " : "") + std::string(explain::verdict_text(found)),
                explanation.why);
}

void prove_measure(const library::RuleSet& set, const Example& example, const evidence::Evidence& evidence,
                   diagnose::Diagnostics& diagnostics) {
  const auto last = std::find_if(evidence.results.rbegin(), evidence.results.rend(),
                                 [&](const auto& result) { return result.measure == example.measure; });
  if (last == evidence.results.rend()) {
    diagnostics.error(diagnose::Code::example_value, example.span,
                      "found nothing given for the measure of this example", "add a `given` clause for it");
    return;
  }
  if (last->specimens.size() > 1) {
    diagnostics.error(diagnose::Code::example_value, example.span, "found several specimens in an example of a measure",
                      "give one; a statistic over specimens belongs to a requirement");
    return;
  }
  const auto index = static_cast<std::uint32_t>(evidence.results.rend() - last - 1);
  const evaluate::MeasureValue value = evaluate::measure_value(set.plan, evidence, index);
  if (example.verdict) {
    if (value.reason != evaluate::Reason::refused) {
      wrong_verdict(diagnostics, example, "the reading is not refused", {});
    }
    return;
  }
  if (value.outcome != Verdict::complies) {
    diagnostics.error(
        diagnose::Code::example_value, example.span,
        "found no value, because " + explain::reason_text(value.reason) + "; expected " + example.value->value.text());
    return;
  }
  const quantity::Decimal converted = quantity::convert(value.amount.value, evidence.units.at(value.amount.unit),
                                                        evidence.units.at(example.value->unit));
  // An example prints a value with the digits of its source; it is compared at the last of them.
  const quantity::Decimal rounded =
      quantity::round_to(converted, example.value->value.last_place(), quantity::Ties::to_even);
  if (!(rounded == example.value->value)) {
    diagnostics.error(diagnose::Code::example_value, example.span,
                      "found " + explain::show(converted) + ", expected " + example.value->value.text());
  }
}

void prove_example(const source::SourceMap& sources, const library::RuleSet& set, const Example& example,
                   Coverage& coverage, diagnose::Diagnostics& diagnostics) {
  const evidence::Evidence evidence = evidence::from_example(example, set.rules);
  if (example.requirement != check::none) {
    prove_requirement(sources, set, example, evidence, coverage, diagnostics);
  } else {
    prove_measure(set, example, evidence, diagnostics);
  }
}

std::string subject(const library::RuleSet& set, const Example& example) {
  return example.requirement == check::none ? set.rules.measures[example.measure].name
                                            : set.rules.requirements[example.requirement].number;
}

std::string digest(const source::SourceMap& sources, const std::string& path) {
  for (source::FileId file = 0; file < sources.size(); ++file) {
    if (sources.name(file) == path) {
      return "sha256:" + source::sha256(sources.text(file));
    }
  }
  return {};
}

}  // namespace

std::size_t Proved::wrong() const {
  return std::accumulate(cases.begin(), cases.end(), std::size_t{0},
                         [](std::size_t sum, const Case& one) { return sum + one.wrong.all().size(); });
}

Proved prove(check::Shelf& shelf, const std::string& path, const std::vector<std::string>& libraries) {
  Proved out;
  out.path = path;
  const auto set = library::prepare(shelf, {path, {}, libraries}, {}, out.faults);
  out.digest = digest(shelf.sources(), path);
  if (!set) {
    return out;
  }
  out.faults.append(set->mismatches);
  out.usable = true;
  out.specification = set->rules.specification.has_value();
  out.requirements = set->rules.requirements.size();
  out.measures = set->rules.measures.size();
  Coverage coverage(*set);
  for (const Example& example : set->rules.examples) {
    Proved::Case& one = out.cases.emplace_back(Proved::Case{subject(*set, example), example.title, {}});
    prove_example(shelf.sources(), *set, example, coverage, one.wrong);
  }
  check::lint(set->rules, out.remarks);
  out.remarks.sort_by_place();
  out.branches = coverage.branches();
  out.missed = coverage.missed();
  return out;
}

bool nothing_to_prove(std::vector<Proved>& all, diagnose::Diagnostics& diagnostics) {
  if (!std::all_of(all.begin(), all.end(),
                   [](const Proved& one) { return one.usable && one.requirements == 0 && one.measures == 0; })) {
    return false;
  }
  diagnose::Diagnostics said;
  said.error(diagnose::Code::clause_missing, {}, "found neither a requirement nor a measure; there is nothing to prove",
             "name a rule file that has one");
  all.front().faults.append(said);
  diagnostics.append(said);
  return true;
}

}  // namespace plumbrule::proof
