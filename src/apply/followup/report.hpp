#pragma once
// The whole of what `follow-up` reports: one model for all forms.

#include <optional>
#include <string>
#include <vector>

#include "apply/followup/followup.hpp"
#include "judge/assess/assessment.hpp"
#include "judge/audit/report.hpp"
#include "judge/evidence/records.hpp"
#include "language/library/in_force.hpp"

namespace plumbrule::followup {

/// A clause that is open in one of the two submittals, or in both.
struct ClauseFollowUp {
  Progress progress{};
  bool counts = false, open = false;
  std::string note;
  explain::Explanation before, after;
};

struct SpecificationFollowUp : explain::SpecificationHead {
  evaluate::Outcome before{}, after{};
  std::size_t clauses = 0;  // all, also those that are open in neither
  std::vector<ClauseFollowUp> findings;
};

struct ValueFollowUp {
  std::string subject, what, before, after, difference, before_place, after_place;
};

struct ResultFollowUp {
  bool added = false;
  std::string subject, value, place;
};

struct LookFollowUp {
  std::string code, found, look, before_place, after_place;
};

struct AuditFollowUp {
  Progress progress{};
  audit::AuditFinding finding;
};

/// One of the two submittals.
struct FollowedSubmittal {
  std::string file;
  evidence::Identity identity;
  std::vector<diagnose::Problem> problems;
  std::vector<diagnose::Problem> warnings;
};

struct FollowUpReport {
  FollowedSubmittal before, after;
  std::string on;
  std::vector<SpecificationFollowUp> specifications;
  std::vector<ValueFollowUp> values;
  std::vector<ResultFollowUp> results;
  std::vector<LookFollowUp> looks;
  std::vector<AuditFollowUp> audit;
  library::Origin origin;
};

/// How many findings became what; advice is not counted.
struct Tally {
  std::size_t closed = 0, still_open = 0, fresh = 0, withdrawn = 0;
  [[nodiscard]] bool settled() const { return still_open + fresh + withdrawn == 0; }
};
[[nodiscard]] Tally tally(const SpecificationFollowUp& one);

/// No report if one of the two is no submittal. What is wrong with each of them stands beside it.
struct Followed {
  std::optional<FollowUpReport> report;
  diagnose::Diagnostics problems_before, problems_after;
};
[[nodiscard]] Followed follow_up(const source::SourceMap& sources, const library::RulesInForce& rules,
                                 const evidence::SubmittalRecord& before, const evidence::SubmittalRecord& after);

/// That of the review of `after`; it complies only if every finding of `before` is closed.
[[nodiscard]] assess::Upshot upshot(const FollowUpReport& report);

}  // namespace plumbrule::followup
