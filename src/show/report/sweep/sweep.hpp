#pragma once
// The summary of a sweep, as text and as JSON.

#include <string>

#include "apply/sweep/summary.hpp"

namespace plumbrule::report {

[[nodiscard]] std::string sweep_text(const sweep::Summary& summary, std::size_t width);
/// Everything that is counted, so that summaries of parts of an archive can be added up. `compact`: on one line.
[[nodiscard]] std::string sweep_json(const sweep::Summary& summary, bool compact = false);

}  // namespace plumbrule::report
