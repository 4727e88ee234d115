#pragma once
// The report of `window`, as text or JSON over one model.

#include "apply/window/windows.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {

using window::Windows;

/// What every window is, whatever it says.
inline constexpr std::string_view estimate =
    "Between tested values straight lines are assumed; a value read from them is an estimate, to be confirmed by test.";

/// Over the clauses that stand beside the window: those that are decided at the job mix, and the others.
inline constexpr std::string_view judged_at_job_mix =
    "Clauses judged at the job mix only, with their verdict there; the window says nothing of them elsewhere";
inline constexpr std::string_view not_shown_beside =
    "Clauses not shown at the job mix and not tested at two values; the window says nothing of them";

[[nodiscard]] std::string window_text(const Windows& report, bool colour);
[[nodiscard]] std::string window_json(const Windows& report);
[[nodiscard]] std::string window_html(const Windows& report);
/// Where a clause stands in each window, and what each end that it makes is derived from. Nothing if it is in none.
[[nodiscard]] std::optional<std::string> window_explained(const Windows& report, const std::string& clause);

}  // namespace plumbrule::report
