#pragma once
// The verdicts of one record as a line of NDJSON or CSV.

#include <string>
#include <string_view>
#include <vector>

#include "apply/sweep/judgement.hpp"

namespace plumbrule::sweep {

enum class VerdictForm : std::uint8_t { none, ndjson, csv };

/// Precondition of all: valid UTF-8. The text as a JSON string, or as a CSV cell (RFC 4180).
void append_json(std::string& out, std::string_view text);
void append_csv(std::string& out, std::string_view text);

/// The heading row of CSV; empty for NDJSON.
[[nodiscard]] std::string verdict_heading(VerdictForm form);

/// Writes verdicts against one specification. Which clauses fail and are not shown stands in them; all others comply or
/// do not apply.
class VerdictWriter {
 public:
  VerdictWriter(const Against& against, VerdictForm form);
  /// `record`: "archive.ndjson:17". `errors`: how many the submittal has.
  void append(std::string& out, std::string_view record, std::string_view mix, const Judgement& judgement,
              std::size_t errors) const;
  /// A record that is no submittal.
  void append_unreadable(std::string& out, std::string_view record) const;

 private:
  VerdictForm form_;
  std::string specification_;  // its part of a line
  std::vector<std::string> numbers_;

  void append_clauses(std::string& out, const Judgement& judgement, Verdict verdict) const;
};

}  // namespace plumbrule::sweep
