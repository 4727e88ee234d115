#pragma once
// What differs between two specifications, as text, Markdown or JSON.

#include <optional>
#include <string>
#include <vector>

#include "apply/contrast/contrast.hpp"
#include "judge/evaluate/evaluate.hpp"
#include "show/report/parts/origin.hpp"
#include "show/report/parts/table.hpp"

namespace plumbrule::report {

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

struct ContrastReport {
  const check::Rules& before;
  const check::Rules& after;
  const contrast::Contrast& contrast;
  bool archive = false;  // whether past submittals were asked for
  std::vector<Filed> filed;
  Origin origin;
};

[[nodiscard]] std::string contrast_text(const ContrastReport& report, std::size_t width);
[[nodiscard]] std::string contrast_markdown(const ContrastReport& report);
[[nodiscard]] std::string contrast_html(const ContrastReport& report);
[[nodiscard]] std::string contrast_json(const ContrastReport& report);

/// What the formats for people share: the limits that differ, what else differs, what to say if no limit does, how many
/// of each kind, what is the same, past submittals that are judged otherwise or have errors, and how many there are.
[[nodiscard]] TableView contrast_table(const ContrastReport& report);
[[nodiscard]] TableView general_table(const ContrastReport& report);
[[nodiscard]] std::string nothing_differs(const ContrastReport& report);
[[nodiscard]] std::string contrast_counts(const ContrastReport& report);
[[nodiscard]] std::string contrast_unchanged(const ContrastReport& report);
[[nodiscard]] TableView filed_table(const ContrastReport& report);
[[nodiscard]] std::string filed_line(const ContrastReport& report);

}  // namespace plumbrule::report
