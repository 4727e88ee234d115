#pragma once
// A compact difference of two texts, line by line.

#include <string>
#include <string_view>

namespace plumbrule::cases {

/// Lines only in `expected` start with "-", lines only in `actual` with "+", with two lines of context before and
/// after. At most `most_lines` lines; the rest is counted. Every line is indented by four blanks.
[[nodiscard]] std::string line_diff(std::string_view expected, std::string_view actual, std::size_t most_lines = 40);

}  // namespace plumbrule::cases
