#pragma once
// Where things end in a YAML text. yaml-cpp tells only where they begin; a wrong place is worse than none.

#include <cstddef>
#include <optional>
#include <string_view>

namespace plumbrule::evidence {

/// The first byte of a control character (C0 but tab and line ends, DEL, C1): YAML does not allow them unescaped.
[[nodiscard]] std::optional<std::size_t> first_control_character(std::string_view text);

/// The first byte at or behind `at` that is neither blank, line end nor comment; the length of the text if none is.
[[nodiscard]] std::size_t next_written(std::string_view text, std::size_t at);

/// The end of the word at `at`: up to a blank, a line end or one of ",[]{}".
[[nodiscard]] std::size_t word_end(std::string_view text, std::size_t at);

/// The end of the scalar that begins at `begin` and whose meaning is `value`: behind the closing quote; behind the last
/// character of a plain or block scalar, on whichever line. Nothing if it is a quote that is never closed.
[[nodiscard]] std::optional<std::size_t> scalar_end(std::string_view text, std::size_t begin, std::string_view value);

/// The first quote at or behind `from` that opens a value and is never closed.
[[nodiscard]] std::optional<std::size_t> unclosed_quote(std::string_view text, std::size_t from);

}  // namespace plumbrule::evidence
