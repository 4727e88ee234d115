#pragma once
// What comes out: facts, and pages made from them.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "plumbrule/diagnostic.hpp"

namespace plumbrule {

/// What an answer comes to; the number is the exit status of the command.
enum class Status : std::uint8_t {
  complies = 0,      // of a review: every clause that applies and decides is shown to be met
  fails = 1,         // at least one clause fails; of a comparison: something differs
  incomplete = 2,    // evidence is missing or cannot be used
  rules_broken = 3,  // a rule file is broken, or an example of it is wrong
  unusable = 4,      // what was handed in cannot be read, or the question fits nothing
};

enum class Form : std::uint8_t {
  text,         // all of it, for people
  brief,        // a line a clause, and what must be done next
  markdown,     // for a letter
  html,         // one page that needs no network
  json,         // for programs
  sarif,        // findings beside their places (OASIS SARIF 2.1.0)
  junit,        // for integration servers
  matrix_text,  // of a review: tests by specifications
  matrix_markdown,
  matrix_html,
  matrix_json,
  rules,  // of an envelope: a rule file
};

struct Layout {
  bool colour = false;      // of text, with the escapes of a terminal
  std::size_t width = 100;  // characters a line, where a form breaks lines
  std::string clause;       // of text and json of a review, and text of windows: only this clause, with every step
};

/// A verdict on one clause, in words.
struct ClauseVerdict {
  std::string number, title;
  std::string verdict;      // "complies", "fails", "not shown", "does not apply"
  std::string reason_code;  // stable; "none" where the value alone says it
  std::string why;          // one sentence
  std::string requirement;  // the whole of it in words
};

/// The review against one specification.
struct SpecificationVerdict {
  std::string name, title, edition, outcome;
  std::vector<ClauseVerdict> clauses;
};

/// The answer to one question. Holds all that its forms need; may be copied, kept, and used by several threads.
class PLUMBRULE_EXPORT Report {
 public:
  /// Never `complies` where `has_errors(diagnostics())`, or where there is nothing to render.
  [[nodiscard]] Status status() const;
  /// Everything that was found wrong, in the order in which it was read.
  [[nodiscard]] const std::vector<Diagnostic>& diagnostics() const;
  /// Nothing if the question could not be answered, there is no such form of this answer, or no such clause.
  [[nodiscard]] std::optional<std::string> render(Form form, const Layout& layout = {}) const;
  /// Of a review; empty of other answers.
  [[nodiscard]] const std::vector<SpecificationVerdict>& specifications() const;

  class Body;
  explicit Report(std::shared_ptr<const Body> body);

 private:
  std::shared_ptr<const Body> body_;
};

}  // namespace plumbrule
