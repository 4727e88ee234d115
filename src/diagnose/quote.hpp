#pragma once
// The user's text inside a message.

#include <string>
#include <string_view>

namespace plumbrule::diagnose {

/// The text in backticks, shortened to about `most` characters with "..." behind, control characters and bytes that
/// are not UTF-8 shown as \xNN. Safe for texts of any size and content.
[[nodiscard]] std::string quoted(std::string_view text, std::size_t most = 40);

/// A text of the user's for a terminal: control characters (C0, DEL, C1) become a replacement mark, so that a submittal
/// cannot move the cursor or colour a verdict.
[[nodiscard]] std::string printable(std::string_view text);

}  // namespace plumbrule::diagnose
