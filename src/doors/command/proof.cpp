#include "doors/command/proof.hpp"

#include <algorithm>
#include <filesystem>

#include "doors/command/coverage.hpp"
#include "doors/command/log.hpp"
#include "doors/command/proof_forms.hpp"
#include "doors/command/rule_set.hpp"
#include "base/diagnose/quote.hpp"
#include "base/diagnose/render.hpp"
#include "judge/explain/wording.hpp"
#include "base/source/digest.hpp"

namespace plumbrule::command {
namespace {

using check::Example;
using evaluate::Verdict;

std::string_view expected_text(syntax::ExpectedVerdict verdict) {
  return verdict == syntax::ExpectedVerdict::refused ? "refused" : explain::verdict_text(static_cast<Verdict>(verdict));
}

void wrong_verdict(diagnose::Diagnostics& diagnostics, const Example& example, const std::string& found,
                   const std::string& why) {
  diagnostics.error(diagnose::Code::example_verdict, example.span,
                    "found that " + found + (why.empty() ? "" : " (" + why + ")") + ", expected " +
                        std::string(expected_text(*example.verdict)),
                    "mend the requirement, or the example");
}

void prove_requirement(const source::SourceMap& sources, const RuleSet& set, const Example& example,
                       const evidence::Evidence& evidence, Coverage& coverage, diagnose::Diagnostics& diagnostics) {
  const evaluate::Review review = evaluate::evaluate_one(set.plan, evidence, example.requirement);
  coverage.add(review);
  const Verdict found = review.findings.front().verdict;
  if (static_cast<int>(found) == static_cast<int>(*example.verdict)) {
    return;
  }
  const explain::Context context{sources, set.rules, set.plan, evidence, review};
  const explain::Explanation explanation = explain::explain(context, review.findings.front());
  const std::string subject = "clause " + explanation.number;
  wrong_verdict(diagnostics, example,
                subject + " " + (found == Verdict::not_shown ? "is " : "") + std::string(explain::verdict_text(found)),
                explanation.why);
}

void prove_measure(const RuleSet& set, const Example& example, const evidence::Evidence& evidence,
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

void prove_example(const source::SourceMap& sources, const RuleSet& set, const Example& example, Coverage& coverage,
                   diagnose::Diagnostics& diagnostics) {
  const evidence::Evidence evidence = evidence::from_example(example, set.rules);
  if (example.requirement != check::none) {
    prove_requirement(sources, set, example, evidence, coverage, diagnostics);
  } else {
    prove_measure(set, example, evidence, diagnostics);
  }
}

std::string subject(const RuleSet& set, const Example& example) {
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

Proved prove(source::SourceMap& sources, const std::string& path, const std::vector<std::string>& libraries) {
  Proved out;
  out.path = path;
  const auto set = prepare(sources, {path, {}, libraries}, {}, out.faults);
  out.digest = digest(sources, path);
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
    prove_example(sources, *set, example, coverage, one.wrong);
  }
  check::lint(set->rules, out.remarks);
  out.remarks.sort_by_place();
  out.branches = coverage.branches();
  out.missed = coverage.missed();
  return out;
}

std::string page(const std::vector<Proved>& all, const diagnose::Diagnostics& diagnostics,
                 const source::SourceMap& sources, const ProofOptions& options) {
  switch (options.format) {
    case Format::json:
      return proof_json(all, diagnostics, sources);
    case Format::sarif:
      return diagnose::render_sarif(diagnostics, sources, PLUMBRULE_VERSION);
    case Format::junit:
      return proof_junit(all, sources);
    default:
      return proof_text(all, options.remarks);
  }
}

// Sound rules without a requirement and without a measure are no proof of anything.
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

}  // namespace

Exit proof(const ProofOptions& options) {
  const Log log(options.log);
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  const auto files = rule_files(options.paths, diagnostics);
  if (diagnostics.has_errors()) {
    print_diagnostics(diagnostics, sources);
    return Exit::unusable;
  }
  std::vector<Proved> all;
  for (const std::string& path : files) {
    log.note("proving " + path);
    all.push_back(prove(sources, path, library_folders(options.libraries)));
    diagnostics.append(all.back().faults);
    for (const Proved::Case& one : all.back().cases) {
      diagnostics.append(one.wrong);
    }
    if (options.remarks || options.format != Format::text) {
      diagnostics.append(all.back().remarks);
    }
  }
  const bool nothing = !diagnostics.has_errors() && nothing_to_prove(all, diagnostics);
  if (options.format == Format::text) {
    print_diagnostics(diagnostics, sources);
  }
  if (!write_output(page(all, diagnostics, sources, options), options.out, sources)) {
    return Exit::unusable;
  }
  return nothing ? Exit::unusable : diagnostics.has_errors() ? Exit::rules_broken : Exit::complies;
}

}  // namespace plumbrule::command
