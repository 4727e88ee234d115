#pragma once
// The report of `follow-up`, as text, Markdown, HTML or JSON.

#include <string>
#include <vector>

#include "apply/followup/report.hpp"
#include "show/report/parts/origin.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {

using followup::AuditFollowUp;
using followup::ClauseFollowUp;
using followup::FollowedSubmittal;
using followup::FollowUpReport;
using followup::LookFollowUp;
using followup::ResultFollowUp;
using followup::SpecificationFollowUp;
using followup::Tally;
using followup::ValueFollowUp;

[[nodiscard]] std::string tally_text(const SpecificationFollowUp& one);

/// What the looks are, whatever they say.
inline constexpr std::string_view looks_note =
    "A look changes no verdict and blames nobody: most have a plain explanation, which the submitter can give.";

/// Verdict and reason or value: "fails: 624 g/m2, 86 g/m2 outside the limit".
[[nodiscard]] std::string state_text(const explain::Explanation& one);
/// A value that changed: "775.4 g -> 778.4 g (+3 g)".
[[nodiscard]] std::string change_text(const ValueFollowUp& one);

[[nodiscard]] std::string follow_up_text(const FollowUpReport& report, bool colour);
[[nodiscard]] std::string follow_up_markdown(const FollowUpReport& report);
[[nodiscard]] std::string follow_up_json(const FollowUpReport& report);
[[nodiscard]] std::string follow_up_html(const FollowUpReport& report);

}  // namespace plumbrule::report
