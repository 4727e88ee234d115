#pragma once
// Texts inside a case file, byte for byte. Three marks at the start of a line make every text writable: a line that
// starts with "=== " is written "\=== ", one that starts with a backslash gets another one before it, and a last line
// "\no end of line" says that the text stops before its line end.

#include <optional>
#include <string>
#include <string_view>

namespace plumbrule::cases {

/// What a heading of a case file starts with.
inline constexpr std::string_view section_mark = "=== ";

[[nodiscard]] std::string encode_text(std::string_view text);

/// Nothing when a line starts with a backslash that is none of the marks.
[[nodiscard]] std::optional<std::string> decode_text(std::string_view written);

}  // namespace plumbrule::cases
