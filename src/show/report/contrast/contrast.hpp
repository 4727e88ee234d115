#pragma once
// What differs between two specifications, as text, Markdown or JSON.

#include <optional>
#include <string>
#include <vector>

#include "apply/contrast/filed.hpp"
#include "show/report/parts/origin.hpp"
#include "show/report/parts/table.hpp"

namespace plumbrule::report {

using contrast::ContrastReport;
using contrast::Filed;

[[nodiscard]] std::string contrast_text(const ContrastReport& report, std::size_t width);
[[nodiscard]] std::string contrast_markdown(const ContrastReport& report);
[[nodiscard]] std::string contrast_html(const ContrastReport& report);
[[nodiscard]] std::string contrast_json(const ContrastReport& report);

/// What the formats for people share: the limits that differ, what else differs, what to say if no limit does, how many
/// of each kind, what is the same, past submittals that are judged otherwise or have errors, and how many there are.
[[nodiscard]] TableView contrast_table(const ContrastReport& report);
[[nodiscard]] TableView general_table(const ContrastReport& report);
[[nodiscard]] std::string nothing_differs(const ContrastReport& report);
[[nodiscard]] std::string contrast_counts(const ContrastReport& report);
[[nodiscard]] std::string contrast_unchanged(const ContrastReport& report);
[[nodiscard]] TableView filed_table(const ContrastReport& report);
[[nodiscard]] std::string filed_line(const ContrastReport& report);

}  // namespace plumbrule::report
