#pragma once
// The user's text inside a message.

#include <string>
#include <string_view>

namespace plumbrule::diagnose {

/// The text in backticks, shortened to about `most` characters with "..." behind, control characters and bytes that
/// are not UTF-8 shown as \xNN. Safe for texts of any size and content.
[[nodiscard]] std::string quoted(std::string_view text, std::size_t most = 40);

/// A text of the user's for a terminal: control characters (C0, DEL, C1) and marks that turn the
/// direction of writing become a replacement mark, so that a submittal
/// cannot move the cursor or colour a verdict.
[[nodiscard]] std::string printable(std::string_view text);

/// A message whose quoted parts (between backticks) are shortened and escaped as `quoted` does.
[[nodiscard]] std::string short_quotes(std::string_view message, std::size_t most);

}  // namespace plumbrule::diagnose
