#pragma once
// Errors are values. A diagnostic says what was found, what the rule is and how to mend it, and points at the text.
// Wording (held by tests/unit/diagnose): lower case start, no final stop, the user's text in backticks.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnose/code.hpp"
#include "base/source/source.hpp"

namespace plumbrule::diagnose {

enum class Severity : std::uint8_t { error, warning, note };

struct Label {
  source::Span span;
  std::string text;  // may be empty
};

struct Diagnostic {
  Code code{};
  Severity severity = Severity::error;
  std::string message;
  Label primary;
  std::vector<Label> secondary;
  std::string help;  // how to mend it; may be empty
};

/// What a stage reports. Order of reporting is kept; sort_by_place() puts them in reading order.
class Diagnostics {
 public:
  Diagnostic& error(Code code, const source::Span& span, const std::string& message, const std::string& help = {});
  void add(Diagnostic diagnostic) { all_.push_back(std::move(diagnostic)); }
  Diagnostic& warning(Code code, const source::Span& span, const std::string& message, const std::string& help = {});
  [[nodiscard]] bool has_errors() const;
  [[nodiscard]] const std::vector<Diagnostic>& all() const { return all_; }
  [[nodiscard]] bool empty() const { return all_.empty(); }
  void append(const Diagnostics& other);
  void sort_by_place();

 private:
  std::vector<Diagnostic> all_;
};

}  // namespace plumbrule::diagnose
