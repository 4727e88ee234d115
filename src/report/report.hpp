#pragma once
// The report of a review: one model, rendered as text or JSON, so that all formats show the same facts.

#include <string>
#include <vector>

#include "explain/explanation.hpp"

namespace plumbrule::report {

/// The review against one specification.
struct SpecificationReport {
  std::string name, title, edition, agency, file, source;
  check::Status status{};
  std::string status_note;
  std::vector<std::string> amendments;  // in force, in order
  std::vector<std::string> withdrawn;   // clauses that they took out
  evaluate::Outcome outcome{};
  std::vector<explain::Explanation> findings;
};

/// An error of the submittal, as the reader of the report needs it.
struct Problem {
  std::string code, place, message, help;
};

struct Report {
  std::string submittal;  // its file
  std::string on;         // the day of the review, if one was given
  evidence::Identity identity;
  std::vector<Problem> problems;
  std::vector<SpecificationReport> specifications;
};

/// The caution that every report carries.
inline constexpr std::string_view caution =
    "The contract documents and local codes govern, and the engineer in responsible charge decides. Limits marked "
    "unverified or demonstration must be checked against the current document.";

[[nodiscard]] std::string text(const Report& report, bool colour);
/// With a clause: only the findings about it.
[[nodiscard]] std::string json(const Report& report, const std::string& clause = {});
/// One clause with every step from reading to verdict.
[[nodiscard]] std::string explanation_text(const explain::Explanation& explanation, bool colour);

}  // namespace plumbrule::report
