#pragma once
// A specification as a table of limits.

#include <string>

#include "language/check/rules.hpp"
#include "show/report/parts/origin.hpp"
#include "show/report/parts/table.hpp"

namespace plumbrule::report {

/// Which unit system an extra column converts the limits into. Converted values are only for reading: the printed limit
/// is the limit.
enum class Units : std::uint8_t { printed, metric, customary };

[[nodiscard]] TableView limits_table(const check::Rules& rules, Units units);

/// Title, edition, amendments, source and status, one a line.
[[nodiscard]] std::vector<std::string> specification_lines(const check::Rules& rules);

/// The same as a page.
[[nodiscard]] std::string recite_html(const check::Rules& rules, Units units, const Origin& origin);

}  // namespace plumbrule::report
