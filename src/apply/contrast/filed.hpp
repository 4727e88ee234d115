#pragma once
// Past submittals under two specifications: what would be judged otherwise.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "apply/contrast/contrast.hpp"
#include "base/source/files.hpp"
#include "judge/assess/assessment.hpp"
#include "language/library/origin.hpp"

namespace plumbrule::contrast {

/// A past submittal under both specifications.
struct Filed {
  struct Clause {
    std::string before, after;  // "512.3.1 complies", "512.3.1 fails (advise)"; one empty: there is no such clause
  };
  std::string submittal;
  std::optional<evaluate::Outcome> before, after;  // none: it could not be read
  std::vector<Clause> clauses;                     // whose verdict differs, or what hangs on it
  std::vector<std::string> errors;                 // why it could not be read, or what in it was not: "place: message"
};

/// The whole of what `contrast` reports. The rules and what differs must outlive it.
struct ContrastReport {
  const check::Rules& before;
  const check::Rules& after;
  const Contrast& contrast;
  bool archive = false;  // whether past submittals were asked for
  std::vector<Filed> filed;
  library::Origin origin;
};

/// A specification differs, or a past submittal is judged otherwise: fails. One cannot be read: incomplete.
[[nodiscard]] assess::Upshot upshot(const ContrastReport& report);

/// The submittals below a folder: the files that a review reads, and NDJSON with a record a line. An error if it holds
/// none, or cannot be read whole.
[[nodiscard]] std::vector<std::string> filed_in(const source::Files& files, const std::string& folder,
                                                diagnose::Diagnostics& diagnostics);

/// What was judged, what is wrong with it in the order of reading, and the files that were read.
struct FiledReview {
  std::vector<Filed> filed;
  std::vector<diagnose::Diagnostics> problems;
  std::vector<source::FileId> read;
};
/// `sets`: the two specifications. The files are added to `sources`.
[[nodiscard]] FiledReview judge_filed(const source::Files& files, source::SourceMap& sources,
                                      std::span<const library::RuleSet> sets, const Contrast& differences,
                                      const std::vector<std::string>& paths);

}  // namespace plumbrule::contrast
