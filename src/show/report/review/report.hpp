#pragma once
// The report of a review, in its forms; all show the same facts.

#include <string>
#include <vector>

#include "apply/review/report.hpp"
#include "show/report/parts/origin.hpp"

namespace plumbrule::report {

using audit::AuditFinding;
using audit::AuditReport;
using audit::Related;
using diagnose::Problem;
using review::Action;
using review::Hand;
using review::hand_text;
using review::nothing_decides;
using review::Report;
using review::SpecificationReport;

/// The caution that every report carries.
inline constexpr std::string_view caution =
    "The contract documents and local codes govern, and the engineer in responsible charge decides. Limits marked "
    "unverified or demonstration must be checked against the current document.";

/// "every clause that applies and decides is shown to be met"; of an incomplete one also that no clause applies.
[[nodiscard]] std::string_view outcome_meaning(const SpecificationReport& report);
/// The parts in a row.
[[nodiscard]] std::string joined(const std::vector<std::string>& parts, std::string_view between = ", ");
/// What qualifies a clause: "optional test", "for the engineer", "advice only", "limit unverified".
[[nodiscard]] std::vector<std::string> marks(const explain::Explanation& finding);
/// The same behind a verdict: " (optional test, limit unverified)", or nothing.
[[nodiscard]] std::string marks_text(const explain::Explanation& finding);
/// "trial.yaml:2:11: found ...; leave it if ...", on one line.
[[nodiscard]] std::string problem_text(const Problem& one);
/// "unverified: read in a copy of the page".
[[nodiscard]] std::string limit_standing(const explain::Explanation& finding);
/// "complies 4 | fails 3 | not shown 7 | does not apply 0".
[[nodiscard]] std::string counts(const std::vector<explain::Explanation>& findings);
/// What the audit looked at: "5 results recomputed from readings, 2 compared ...".
[[nodiscard]] std::string audit_scope(const AuditReport& report);

/// The section of the text report.
[[nodiscard]] std::string audit_text(const AuditReport& report);
[[nodiscard]] std::string text(const Report& report, bool colour);
/// With a clause: only the findings about it.
[[nodiscard]] std::string json(const Report& report, const std::string& clause = {});
/// One self-contained page.
[[nodiscard]] std::string html(const Report& report);
/// For a letter or an issue.
[[nodiscard]] std::string markdown(const Report& report);
/// One clause with every step from reading to verdict.
[[nodiscard]] std::string explanation_text(const explain::Explanation& explanation, bool colour);

}  // namespace plumbrule::report
