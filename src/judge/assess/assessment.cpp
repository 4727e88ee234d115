#include "judge/assess/assessment.hpp"

#include <utility>

namespace plumbrule::assess {

Assessment::Assessment(const source::SourceMap& sources, const library::RuleSet& set, evidence::Evidence evidence,
                       bool faulty)
    : evidence_(std::move(evidence)),
      faulty_(faulty),
      review_(evaluate::evaluate(set.plan, evidence_)),
      context_{sources, set.rules, set.plan, evidence_, review_} {}

evaluate::Outcome Assessment::outcome() const { return evaluate::outcome(context_.plan, review_.findings, faulty_); }

std::vector<explain::Explanation> Assessment::explanations() const {
  std::vector<explain::Explanation> out;
  out.reserve(review_.findings.size());
  for (const evaluate::Finding& finding : review_.findings) {
    out.push_back(explain::explain(context_, finding));
  }
  return out;
}

Asked asked_of(const source::SourceMap& sources, std::span<const library::RuleSet> sets,
               std::optional<std::int32_t> on) {
  return {sources, names_of(sets), on};
}

std::unique_ptr<const Assessment> assess(const Asked& asked, const evidence::Node& document,
                                         const library::RuleSet& set, diagnose::Merged& problems) {
  diagnose::Diagnostics found;
  auto evidence = evidence::bind(document, set.rules, asked.names, found);
  problems.add(found);
  if (!evidence) {
    return nullptr;
  }
  if (asked.on) {
    evidence->date = *asked.on;
  }
  return std::make_unique<const Assessment>(asked.sources, set, std::move(*evidence), found.has_errors());
}

void Upshots::add(evaluate::Outcome outcome) {
  using evaluate::Outcome;
  any_ = true;
  fails_ = fails_ || outcome == Outcome::revise_and_resubmit || outcome == Outcome::refer_to_engineer;
  open_ = open_ || outcome == Outcome::incomplete;
}

evidence::KnownNames names_of(std::span<const library::RuleSet> sets) {
  evidence::KnownNames out;
  for (const library::RuleSet& set : sets) {
    for (const check::Measure& measure : set.rules.measures) {
      out.measures.push_back(measure.name);
      for (const check::Held& one : measure.held) {
        out.held.push_back(one.name);
      }
    }
    for (const check::Condition& condition : set.rules.conditions) {
      out.conditions.push_back(condition.name);
    }
    for (const check::Category& category : set.rules.categories) {
      out.categories.push_back(category.name);
    }
  }
  return out;
}

explain::SpecificationHead head_of(const library::RuleSet& set) {
  const check::Specification& own = *set.rules.specification;
  explain::SpecificationHead out{own.name,
                                 own.title,
                                 own.edition,
                                 own.agency,
                                 set.path,
                                 own.provenance.source,
                                 own.provenance.status,
                                 own.provenance.status_note,
                                 own.amendments,
                                 {}};
  for (const syntax::Withdrawn& one : set.rules.withdrawn) {
    out.withdrawn.push_back(one.number + " " + one.title + ": withdrawn by " + one.by +
                            (one.because.empty() ? "" : " (" + one.because + ")"));
  }
  return out;
}

}  // namespace plumbrule::assess
