#pragma once
// What yaml-cpp has to say, in words for the people who write submittals.

#include <cstdint>
#include <string_view>

#include "base/diagnose/code.hpp"

namespace plumbrule::evidence {

struct YamlFault {
  /// What the message should point at: where the parser stopped, the two characters before that, the bracket or the
  /// quote that was never closed, or the whole word where the parser stopped.
  enum class Points : std::uint8_t { here, two_before, open_bracket, open_quote, word };

  std::string_view begins;  // of the library's message
  diagnose::Code code = diagnose::Code::submittal_yaml;
  Points points = Points::here;
  std::string_view message;
  std::string_view help;
};

/// Never fails: an unknown message gives a general one.
[[nodiscard]] const YamlFault& yaml_fault(std::string_view library_message);

/// For a tab where the indentation of a line should be; the library stumbles over it only later in the line.
[[nodiscard]] const YamlFault& tab_fault();

/// For a list or entries whose bracket, '[' or '{', the end of the text leaves open.
[[nodiscard]] const YamlFault& unclosed_fault(char bracket);

/// For a quote that the end of the text closes, which the library lets pass.
[[nodiscard]] const YamlFault& quote_fault();

}  // namespace plumbrule::evidence
