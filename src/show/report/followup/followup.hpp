#pragma once
// The report of `follow-up`: one model, as text, Markdown or JSON.

#include <string>
#include <vector>

#include "apply/followup/followup.hpp"
#include "show/report/parts/origin.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {

/// A clause that is open in one of the two submittals, or in both.
struct ClauseFollowUp {
  followup::Progress progress{};
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
  followup::Progress progress{};
  AuditFinding finding;
};

/// One of the two submittals.
struct FollowedSubmittal {
  std::string file;
  evidence::Identity identity;
  std::vector<Problem> problems;
  std::vector<Problem> warnings;
};

struct FollowUpReport {
  FollowedSubmittal before, after;
  std::string on;
  std::vector<SpecificationFollowUp> specifications;
  std::vector<ValueFollowUp> values;
  std::vector<ResultFollowUp> results;
  std::vector<LookFollowUp> looks;
  std::vector<AuditFollowUp> audit;
  Origin origin;
};

/// How many findings became what; advice is not counted.
struct Tally {
  std::size_t closed = 0, still_open = 0, fresh = 0, withdrawn = 0;
  [[nodiscard]] bool settled() const { return still_open + fresh + withdrawn == 0; }
};
[[nodiscard]] Tally tally(const SpecificationFollowUp& one);
[[nodiscard]] std::string tally_text(const SpecificationFollowUp& one);

/// What the looks are, whatever they say.
inline constexpr std::string_view looks_note =
    "A look changes no verdict and blames nobody: most have a plain explanation, which the submitter can give.";

/// Places and texts of what was compared. `all`: joined over the specifications.
void add_differences(FollowUpReport& report, const followup::FollowUp& all, const source::SourceMap& sources);
/// A clause with both of its explanations.
[[nodiscard]] ClauseFollowUp clause_follow_up(const followup::ClauseProgress& one,
                                              const std::vector<explain::Explanation>& before,
                                              const std::vector<explain::Explanation>& after);
/// Verdict and reason or value: "fails: 624 g/m2, 86 g/m2 outside the limit".
[[nodiscard]] std::string state_text(const explain::Explanation& one);
/// A value that changed: "775.4 g -> 778.4 g (+3 g)".
[[nodiscard]] std::string change_text(const ValueFollowUp& one);

[[nodiscard]] std::string follow_up_text(const FollowUpReport& report, bool colour);
[[nodiscard]] std::string follow_up_markdown(const FollowUpReport& report);
[[nodiscard]] std::string follow_up_json(const FollowUpReport& report);
[[nodiscard]] std::string follow_up_html(const FollowUpReport& report);

}  // namespace plumbrule::report
