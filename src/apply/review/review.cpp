#include "apply/review/review.hpp"

#include <utility>

#include "judge/evidence/written.hpp"

namespace plumbrule::review {

Reviewed review(const source::SourceMap& sources, const library::RulesInForce& rules,
                const evidence::SubmittalRecord& submittal) {
  Reviewed out;
  Found found;
  diagnose::Merged merged;
  audit::Inspection inspection;
  const assess::Asked asked = assess::asked_of(sources, rules.sets, evidence::read_date(rules.on));
  for (const library::RuleSet& set : rules.sets) {
    const auto assessment = assess::assess(asked, *submittal.tree, set, merged);
    if (!assessment) {
      out.problems = merged.take();
      return out;
    }
    found.identity = assessment->evidence().identity;
    audit::join(inspection, assessment->inspection());
    found.specifications.push_back({assess::head_of(set), assessment->outcome(), assessment->explanations()});
  }
  out.problems = merged.take();
  found.submittal = submittal.name;
  found.on = rules.on;
  found.audit = audit::audit_report(inspection, sources);
  found.problems = diagnose::problems_of(out.problems, diagnose::Severity::error, sources);
  found.warnings = diagnose::problems_of(out.problems, diagnose::Severity::warning, sources);
  found.sources = sources;
  out.report.emplace(std::move(found), library::origin_of(sources, rules, {submittal.tree->span.file}));
  return out;
}

}  // namespace plumbrule::review
