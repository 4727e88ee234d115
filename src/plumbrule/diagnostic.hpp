#pragma once
// What is wrong, as data: with a place for people and for editors, and how to mend it.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "plumbrule/export.hpp"

namespace plumbrule {

/// A position in a text. `line` and `column` as people count them, from 1, a column being a character (code point);
/// `byte` in UTF-8 from the start of the text; `utf16_line` and `utf16_unit` from 0, as editors count them.
struct Position {
  std::uint32_t line = 1, column = 1, byte = 0, utf16_line = 0, utf16_unit = 0;
};

/// From `begin` up to `end`, which does not belong to it.
struct Range {
  std::string file;
  Position begin, end;
};

struct Remark {
  std::string text;
  std::optional<Range> where;
};

struct Diagnostic {
  enum class Severity : std::uint8_t { error, warning, note };
  Severity severity = Severity::error;
  std::string code;            // stable: "unit.unknown"
  std::string message;         // what was found, and what the rule is
  std::string help;            // how to mend it; may be empty
  std::optional<Range> where;  // none: it is about no place
  std::vector<Remark> related;
};

/// Whether one of them is an error.
[[nodiscard]] PLUMBRULE_EXPORT bool has_errors(const std::vector<Diagnostic>& all);
/// With an excerpt of the text, as the command prints them; no colour.
[[nodiscard]] PLUMBRULE_EXPORT std::string json_of(const std::vector<Diagnostic>& all);

}  // namespace plumbrule
