#pragma once
// What commands print, and their exit statuses.

#include <cstdint>
#include <string>
#include <vector>

#include "base/diagnose/diagnostic.hpp"

namespace plumbrule::command {

/// DESIGN: 0 complies, 1 something fails, 2 evidence incomplete, 3 rule files broken, 4 unusable input or usage.
enum class Exit : int { complies = 0, fails = 1, incomplete = 2, rules_broken = 3, unusable = 4 };

/// Colour on standard output / error: only on a terminal, and not if NO_COLOR is set to anything.
[[nodiscard]] bool colour_output();
[[nodiscard]] bool colour_errors();

/// How much a text report says. `by_output`: the short form on a terminal, all of it in a file or a pipe, so that what
/// is kept does not depend on a window.
enum class Detail : std::uint8_t { by_output, brief, full };
/// Whether the short form is wanted. `to_file`: the report goes to a file of its own.
[[nodiscard]] bool brief(Detail detail, bool to_file);
/// Characters a line: those of the terminal on standard output, from 40 to 120; 100 elsewhere.
[[nodiscard]] std::size_t output_width();

void print_diagnostics(const diagnose::Diagnostics& diagnostics, const source::SourceMap& sources);
void print_error(const std::string& message);

/// Writes to standard output, or whole to a file through a temporary one beside it. False, with the reason printed, if
/// it could not be written.
[[nodiscard]] bool write_output(const std::string& text, const std::string& path);
/// The same, but not over a file that was read for it.
[[nodiscard]] bool write_output(const std::string& text, const std::string& path, const source::SourceMap& read);

/// False, with the reason printed, if one of the files that were read is the file that is to be written, by whatever
/// name.
[[nodiscard]] bool spares(const std::string& path, const std::vector<std::string>& read);
[[nodiscard]] std::vector<std::string> files_of(const source::SourceMap& sources);

}  // namespace plumbrule::command
