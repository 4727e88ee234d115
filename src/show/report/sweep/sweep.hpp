#pragma once
// The summary of a sweep: what was counted over an archive, clause by clause.

#include <optional>
#include <string>
#include <vector>

#include "show/report/parts/origin.hpp"
#include "apply/sweep/tally.hpp"

namespace plumbrule::report {

struct SweptClause {
  std::string number, title;
};

struct SweptSpecification {
  std::string name, title, edition, status;
  std::vector<SweptClause> clauses;
};

struct SweepReport {
  std::vector<SweptSpecification> specifications;  // as in `tally`
  sweep::Tally tally;
  Origin origin;
};

[[nodiscard]] std::string sweep_text(const SweepReport& report, std::size_t width);
/// Everything that is counted, so that summaries of parts of an archive can be added up. `compact`: on one line.
[[nodiscard]] std::string sweep_json(const SweepReport& report, bool compact = false);

/// Reads a summary back: a JSON summary, or verdicts as NDJSON whose last line holds one. Nothing, and the reason, for
/// any other text, such as that of a sweep that was stopped half-way.
[[nodiscard]] std::optional<SweepReport> read_sweep(const std::string& text, std::string& reason);
/// Adds a part. Nothing is added, and the reason given, if it was held against other specifications or rule files, or
/// if a file of its archive was counted before, as its digest says.
[[nodiscard]] bool add_sweep(SweepReport& to, const SweepReport& part, std::string& reason);

}  // namespace plumbrule::report
