#pragma once
// The canonical layout of a rule file. Only blanks and line ends change: every token, text and comment stays, in its
// order, so that the syntax tree stays the same. Laying out twice changes nothing.
//
// What is kept of the author's: a blank line between clauses or between items of one line, a comment on its own line
// or at the end of a line, and an example on one line (its first clause stands on the line of its head).

#include <optional>
#include <string>
#include <string_view>

#include "base/diagnose/diagnostic.hpp"
#include "base/source/source.hpp"

namespace plumbrule::syntax {

/// Phrases, lists and texts are broken to fit this many characters; a row of an example, table or grading may be as
/// long as `row_width`. A text is never broken, so a line may be longer.
inline constexpr std::size_t phrase_width = 100;
inline constexpr std::size_t row_width = 120;

/// The file laid out anew, or nothing if it has an error, which is reported. Precondition: the text is UTF-8 without a
/// byte order mark.
[[nodiscard]] std::optional<std::string> tidy(const source::SourceMap& sources, source::FileId file,
                                              diagnose::Diagnostics& diagnostics);

/// True if the two texts differ in nothing but blanks, tabs and line ends. Kept apart from tidy() so that a caller can
/// make sure of it before a file is written.
[[nodiscard]] bool same_but_for_blanks(std::string_view a, std::string_view b);

}  // namespace plumbrule::syntax
