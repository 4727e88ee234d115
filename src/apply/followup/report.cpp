#include "apply/followup/report.hpp"

#include <algorithm>
#include <utility>

#include "judge/evidence/written.hpp"

namespace plumbrule::followup {
namespace {

// Places and texts of what was compared. `all`: joined over the specifications.
void add_differences(FollowUpReport& report, const FollowUp& all, const source::SourceMap& sources) {
  for (const ValueChange& one : all.values) {
    report.values.push_back({one.subject, one.what, one.before, one.after, one.difference,
                             sources.place_text(one.before_place), sources.place_text(one.after_place)});
  }
  for (const ResultChange& one : all.results) {
    report.results.push_back({one.added, one.subject, one.value, sources.place_text(one.place)});
  }
  for (const Look& one : all.looks) {
    report.looks.push_back({std::string(look_code(one.kind)), one.found, one.look, sources.place_text(one.before),
                            sources.place_text(one.after)});
  }
  audit::Inspection one_by_one;
  for (const AuditProgress& one : all.audit) {
    one_by_one.findings.push_back(one.finding);
  }
  const audit::AuditReport audited = audit::audit_report(one_by_one, sources);
  for (std::size_t at = 0; at < all.audit.size(); ++at) {
    report.audit.push_back({all.audit[at].progress, audited.findings[at]});
  }
}

// A clause with both of its explanations.
ClauseFollowUp clause_follow_up(const ClauseProgress& one, const std::vector<explain::Explanation>& before,
                                const std::vector<explain::Explanation>& after) {
  return {one.progress, one.counts, one.open, one.note, before[one.requirement], after[one.requirement]};
}

// One of the two submittals, and the errors that several specifications meet in it.
struct SideProblems {
  diagnose::Merged merged;
  FollowedSubmittal& shown;

  // Errors belong to the report.
  diagnose::Diagnostics take(const source::SourceMap& sources) {
    diagnose::Diagnostics out = merged.take();
    shown.problems = diagnose::problems_of(out, diagnose::Severity::error, sources);
    shown.warnings = diagnose::problems_of(out, diagnose::Severity::warning, sources);
    return out;
  }
};

// What became of the clauses of one specification; what else changed goes to `all`.
SpecificationFollowUp compare_under(const library::RuleSet& set, const assess::Assessment& before,
                                    const assess::Assessment& after, FollowUp& all) {
  const audit::Inspection earlier = before.inspection();
  const audit::Inspection later = after.inspection();
  const FollowUp found = compare({before.context(), earlier.findings}, {after.context(), later.findings});
  SpecificationFollowUp out{assess::head_of(set), before.outcome(), after.outcome(), after.findings().size(), {}};
  const auto explained_before = before.explanations();
  const auto explained_after = after.explanations();
  for (const ClauseProgress& clause : found.clauses) {
    out.findings.push_back(clause_follow_up(clause, explained_before, explained_after));
  }
  join(all, found);
  return out;
}

}  // namespace

Followed follow_up(const source::SourceMap& sources, const library::RulesInForce& rules,
                   const evidence::SubmittalRecord& before, const evidence::SubmittalRecord& after) {
  FollowUpReport report;
  SideProblems earlier{{}, report.before};
  SideProblems later{{}, report.after};
  report.before.file = before.name;
  report.after.file = after.name;
  FollowUp all;
  bool usable = true;
  const assess::Asked asked = assess::asked_of(sources, rules.sets, evidence::read_date(rules.on));
  for (const library::RuleSet& set : rules.sets) {
    const auto then = assess::assess(asked, *before.tree, set, earlier.merged);
    const auto now = assess::assess(asked, *after.tree, set, later.merged);
    if (!then || !now) {
      usable = false;
      break;
    }
    report.before.identity = then->evidence().identity;
    report.after.identity = now->evidence().identity;
    report.specifications.push_back(compare_under(set, *then, *now, all));
  }
  Followed out;
  out.problems_before = earlier.take(sources);
  out.problems_after = later.take(sources);
  if (usable) {
    add_differences(report, all, sources);
    report.on = rules.on;
    report.origin = library::origin_of(sources, rules, {before.tree->span.file, after.tree->span.file});
    out.report = std::move(report);
  }
  return out;
}

Tally tally(const SpecificationFollowUp& one) {
  Tally out;
  for (const ClauseFollowUp& clause : one.findings) {
    std::size_t& count = clause.progress == Progress::closed       ? out.closed
                         : clause.progress == Progress::still_open ? out.still_open
                         : clause.progress == Progress::fresh      ? out.fresh
                                                                   : out.withdrawn;
    count += clause.counts ? 1U : 0U;
  }
  return out;
}

assess::Upshot upshot(const FollowUpReport& report) {
  assess::Upshots out;
  out.add_open(library::leaves_open(report.origin));
  for (const SpecificationFollowUp& specification : report.specifications) {
    out.add(specification.after);
  }
  const bool settled = std::all_of(report.specifications.begin(), report.specifications.end(),
                                   [](const SpecificationFollowUp& one) { return tally(one).settled(); });
  return out.upshot() == assess::Upshot::complies && !settled ? assess::Upshot::fails : out.upshot();
}

}  // namespace plumbrule::followup
