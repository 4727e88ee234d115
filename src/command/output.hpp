#pragma once
// What commands print, and their exit statuses.

#include <string>

#include "diagnose/diagnostic.hpp"

namespace plumbrule::command {

/// DESIGN: 0 complies, 1 something fails, 2 evidence incomplete, 3 rule files broken, 4 unusable input or usage.
enum class Exit : int { complies = 0, fails = 1, incomplete = 2, rules_broken = 3, unusable = 4 };

/// Colour on standard output / error: only on a terminal, and not if NO_COLOR is set to anything.
[[nodiscard]] bool colour_output();
[[nodiscard]] bool colour_errors();

void print_diagnostics(const diagnose::Diagnostics& diagnostics, const source::SourceMap& sources);
void print_error(const std::string& message);

/// Writes to standard output, or whole to a file through a temporary one beside it. False, with the reason printed, if
/// it could not be written.
[[nodiscard]] bool write_output(const std::string& text, const std::string& path);

}  // namespace plumbrule::command
