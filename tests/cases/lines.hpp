#pragma once
// Small helpers for text that is handled line by line.

#include <string_view>
#include <vector>

namespace plumbrule::cases {

/// The lines of a text, each with its line end; the last one may lack it.
[[nodiscard]] std::vector<std::string_view> split_lines(std::string_view text);

/// Without blanks, tabs and line ends at either side.
[[nodiscard]] std::string_view trimmed(std::string_view text);

}  // namespace plumbrule::cases
