#pragma once
// The summary of a sweep: what was counted over an archive, clause by clause. Summaries of parts of an archive are read
// back and added up to that of the whole.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "apply/sweep/tally.hpp"
#include "judge/assess/assessment.hpp"
#include "language/library/origin.hpp"

namespace plumbrule::sweep {

struct SweptClause {
  std::string number, title;
};

struct SweptSpecification {
  std::string name, title, edition, status;
  std::vector<SweptClause> clauses;
};

struct Summary {
  std::vector<SweptSpecification> specifications;  // as in `tally`
  Tally tally;
  library::Origin origin;
};

/// What a summary as JSON counts of each specification and of each clause, in its order.
inline constexpr std::array<evaluate::Outcome, 4> summary_outcomes{
    evaluate::Outcome::no_exception_taken, evaluate::Outcome::refer_to_engineer, evaluate::Outcome::revise_and_resubmit,
    evaluate::Outcome::incomplete};
inline constexpr std::array<const char*, 4> verdict_keys{"complies", "fails", "not_shown",
                                                         "does_not_apply"};  // in the order of evaluate::Verdict

/// Reads a summary back: a JSON summary, or verdicts as NDJSON whose last line holds one. Nothing, and the reason, for
/// any other text, such as that of a sweep that was stopped half-way, and for counts that do not agree with each other.
[[nodiscard]] std::optional<Summary> read_summary(const std::string& text, std::string& reason);
/// Adds a part. Nothing is added, and the reason given, if it was held against other specifications or rule files, or
/// if a file of its archive was counted before, as its digest says.
[[nodiscard]] bool add_part(Summary& to, const Summary& part, std::string& reason);

/// What the whole archive comes to: a record that cannot be read or has errors is never one that complies, nor is an
/// archive without a record.
[[nodiscard]] assess::Upshot upshot(const Summary& summary);

}  // namespace plumbrule::sweep
