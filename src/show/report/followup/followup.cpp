#include "show/report/followup/followup.hpp"

#include <algorithm>

namespace plumbrule::report {

void add_differences(FollowUpReport& report, const followup::FollowUp& all, const source::SourceMap& sources) {
  for (const followup::ValueChange& one : all.values) {
    report.values.push_back({one.subject, one.what, one.before, one.after, one.difference,
                             sources.place_text(one.before_place), sources.place_text(one.after_place)});
  }
  for (const followup::ResultChange& one : all.results) {
    report.results.push_back({one.added, one.subject, one.value, sources.place_text(one.place)});
  }
  for (const followup::Look& one : all.looks) {
    report.looks.push_back({std::string(followup::look_code(one.kind)), one.found, one.look,
                            sources.place_text(one.before), sources.place_text(one.after)});
  }
  audit::Inspection one_by_one;
  for (const followup::AuditProgress& one : all.audit) {
    one_by_one.findings.push_back(one.finding);
  }
  const AuditReport audited = audit_report(one_by_one, sources);
  for (std::size_t at = 0; at < all.audit.size(); ++at) {
    report.audit.push_back({all.audit[at].progress, audited.findings[at]});
  }
}

ClauseFollowUp clause_follow_up(const followup::ClauseProgress& one, const std::vector<explain::Explanation>& before,
                                const std::vector<explain::Explanation>& after) {
  return {one.progress, one.counts, one.open, one.note, before[one.requirement], after[one.requirement]};
}

Tally tally(const SpecificationFollowUp& one) {
  Tally out;
  for (const ClauseFollowUp& clause : one.findings) {
    std::size_t& count = clause.progress == followup::Progress::closed       ? out.closed
                         : clause.progress == followup::Progress::still_open ? out.still_open
                         : clause.progress == followup::Progress::fresh      ? out.fresh
                                                                             : out.withdrawn;
    count += clause.counts ? 1U : 0U;
  }
  return out;
}

std::string tally_text(const SpecificationFollowUp& one) {
  const Tally counts = tally(one);
  const auto standing = static_cast<std::size_t>(
      std::count_if(one.findings.begin(), one.findings.end(), [](const ClauseFollowUp& clause) {
        return clause.progress == followup::Progress::withdrawn && clause.open && clause.counts;
      }));
  std::string out = "closed " + std::to_string(counts.closed) + " | still open " + std::to_string(counts.still_open) +
                    " | new " + std::to_string(counts.fresh) + " | withdrawn " + std::to_string(counts.withdrawn);
  if (standing > 0) {
    out += " (" + std::to_string(standing) + " not shown)";
  }
  return out;
}

std::string state_text(const explain::Explanation& one) {
  return std::string(explain::verdict_text(one.verdict)) + (one.why.empty() ? "" : ": " + one.why);
}

std::string change_text(const ValueFollowUp& one) {
  return one.before + " -> " + one.after + (one.difference.empty() ? "" : " (" + one.difference + ")");
}

}  // namespace plumbrule::report
