#pragma once
// A case: one readable file that holds inputs, commands and what they print.
//
//   # about: one line that says what is shown                  (needed)
//   # section: 4.2, 4.3                                        (numbered sections of grammar/language.md)
//   # source: ISSA A143, table 2                               (where a check value comes from)
//   # any other comment
//   === file rules.plumb                  a file of the case; its text follows, as it is
//   === generate deep.yaml repeat 9 "["   a file made by a recipe (recipe.hpp), to store no hostile input
//   === note                              words for the reader, up to the next line that starts with "=== "
//   === run plumbrule review trial.yaml --against rules.plumb
//   what the command prints on standard output
//   === error
//   what it prints on standard error; left out when it prints nothing there
//   === status 1
//   # may be left out when the status is 0; blank and comment lines may follow
//
// Sections are carried out in order, and several runs may stand in one file. Texts are exact, byte for byte, with the
// few marks that exact_text.hpp describes; digests, the version and the caution are masked (masks.hpp).

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace plumbrule::cases {

/// What a command printed, or is expected to print, and its exit status.
struct Transcript {
  std::string output;
  std::string error;
  int status = 0;
  friend bool operator==(const Transcript&, const Transcript&) = default;
};

enum class Kind { file, generate, note, run };

struct Section {
  Kind kind = Kind::note;
  std::size_t line = 0;      // of the heading; 1 is the first
  std::string heading;       // as written, with its line end
  std::string body;          // as written; of a run: what follows its status line
  std::string name;          // file, generate: path below the case's folder
  std::string argument;      // generate: the recipe; run: the command
  std::string text;          // file: the decoded text
  Transcript expected;       // run
  bool states_zero = false;  // run: "=== status 0" is written out, and stays so
};

struct Case {
  std::string head;  // the comment lines before the first section, as written
  std::vector<std::string> cited;
  std::vector<Section> sections;
};

/// A case file that cannot be understood: where and why.
struct Malformed {
  std::size_t line = 0;
  std::string message;
};

[[nodiscard]] std::variant<Case, Malformed> parse_case(std::string_view text);

/// The file's text; parse_case(write_case(c)) gives c again, and only expected parts can differ from what was read.
[[nodiscard]] std::string write_case(const Case& written);

}  // namespace plumbrule::cases
