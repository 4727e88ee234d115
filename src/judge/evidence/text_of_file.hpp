#pragma once
// What every form of a submittal demands of its text before it is read. Inside the evidence stage only.

#include <cstddef>
#include <optional>
#include <string_view>

#include "base/diagnose/diagnostic.hpp"
#include "base/source/source.hpp"

namespace plumbrule::evidence {

/// A text that stands in its file behind `offset` bytes: marks of byte order are left out.
struct TextOfFile {
  std::string_view text;
  std::size_t offset = 0;
};

/// Nothing, and a diagnostic, for a file that is too large, not UTF-8, or holds NUL or other control characters; these
/// are reported with `code`.
[[nodiscard]] std::optional<TextOfFile> text_of_file(const source::SourceMap& sources, source::FileId file,
                                                     diagnose::Code code, diagnose::Diagnostics& diagnostics);

/// Reports the first control character (C0 but tab and line ends, DEL, C1); true if there is none.
bool without_control_characters(const TextOfFile& text, source::FileId file, diagnose::Code code,
                                diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::evidence
