#pragma once
// Diagnostics as reports show them: with their places as texts, and each once.

#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "base/diagnose/diagnostic.hpp"

namespace plumbrule::diagnose {

/// An error, or a warning, as the reader of a report needs it.
struct Problem {
  std::string code, place, message, help;
  source::Span span;
};

/// Those of one severity.
[[nodiscard]] std::vector<Problem> problems_of(const Diagnostics& problems, Severity severity,
                                               const source::SourceMap& sources);

/// The same error is met once for each specification; it is reported once.
class Merged {
 public:
  void add(const Diagnostics& from);
  /// In the order of their places. Once.
  [[nodiscard]] Diagnostics take();

 private:
  Diagnostics all_;
  std::set<std::tuple<Code, source::FileId, std::uint32_t, std::uint32_t>> seen_;
};

}  // namespace plumbrule::diagnose
