#pragma once
// The tokens of a rule file in order, each with the comments around it. Names, numbers, units and texts are where the
// grammar found them (the leaves of the branches); what lies between them are words and marks of the language.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "language/syntax/branch.hpp"

namespace plumbrule::syntax {

[[nodiscard]] constexpr bool is_blank(char byte) { return byte == ' ' || (byte >= '\t' && byte <= '\r'); }

enum class TokenKind : std::uint8_t {
  word,    // a word of the language
  mark,    // , : ( )
  name,    // a name of the user's
  number,  // with its sign
  sign,    // of a formula or comparison
  text,    // "..."
  other,   // a unit, a sieve, a clause number, a date
  end,     // behind the last token; it only carries comments
};

/// A comment on a line of its own.
struct Comment {
  std::string_view text;     // from `#` on, without blanks at its end
  bool blank_above = false;  // a blank line stands above it
  bool indented = false;
};

struct Token {
  TokenKind kind{};
  std::uint32_t begin = 0;
  std::string text;
  std::vector<Comment> above;  // between the token before and this one
  std::string_view beside;     // the comment behind it on its line
  bool blank_above = false;    // a blank line stands above it and below its comments
  bool new_line = false;       // it is the first on its line

  [[nodiscard]] bool is(std::string_view word) const { return kind == TokenKind::word && text == word; }
};

/// The last one is of kind `end`. Precondition: the branches were read without an error.
[[nodiscard]] std::vector<Token> tokens_of(std::string_view text, const std::vector<Branch>& branches);

}  // namespace plumbrule::syntax
