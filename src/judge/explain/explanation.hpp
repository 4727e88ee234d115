#pragma once
// From trace to words. Nothing here decides; every number shown was computed by the evaluator, except the rounded
// form of a compared value and its margin, which follow from the rule's place and limit.

#include <string>
#include <vector>

#include "judge/evaluate/evaluate.hpp"

namespace plumbrule::explain {

using evaluate::Reason;
using evaluate::Verdict;

/// Everything that an explanation draws on. All parts must outlive it.
struct Context {
  const source::SourceMap& sources;
  const check::Rules& rules;
  const plan::Plan& plan;
  const evidence::Evidence& evidence;
  const evaluate::Review& review;
};

/// One step of a derivation. `depth` is its indentation.
struct Line {
  int depth = 0;
  std::string text;
  std::string place;  // "trial.yaml:12:20", empty for computed steps
};

/// A comparison as numbers, all in the unit of the limit, for pictures; empty for words. Printed nowhere else: what
/// people read stands in Comparison.
struct Numbers {
  std::string unit;
  std::optional<quantity::Decimal> low, high;                      // the limit as printed
  std::optional<quantity::Decimal> tolerance_low, tolerance_high;  // about what the job mix states
  std::optional<quantity::Decimal> value;                          // compared, every digit; none if it is only a bound
  std::vector<quantity::Decimal> specimens;                        // of all results that were looked at
  std::string statistic;                                           // "mean"; empty for the plain result
  bool spread = false;                     // the statistic is a distance between specimens, not one of their values
  std::optional<quantity::Decimal> sieve;  // opening in mm, if it is about a sieve
  std::string sieve_name;                  // as the rule says it
};

/// One comparison of a finding: a demand has one, a grading one for each sieve, an alternative its own.
struct Comparison {
  std::string subject;  // subject_key: the same for the same test in all specifications
  std::string label;    // "wet-track abrasion loss, soak 1 h"
  std::string limit;    // "at most 538 g/m2"
  std::string value;    // "536.27 g/m2", "solid_spin", empty if there is none
  std::string margin;   // "1.73 g/m2 inside the limit (0.3 %)", empty if it cannot be told
  Verdict verdict{};
  Reason reason{};
  std::string why;                            // the reason in words, for a comparison that is not shown
  std::string place;                          // of the value
  source::Span span;                          // the same
  std::optional<quantity::Decimal> headroom;  // in percent of the limit, negative outside; none if it cannot be told
  quantity::Decimal distance;                 // inside the limit if positive, in its unit; 0 for words and bounds
  Numbers numbers;
};

struct Explanation {
  std::string number, title, section;
  Verdict verdict{};
  Reason reason{};
  check::Severity severity{};
  bool optional = false;
  check::Status status{};
  std::string status_note, source;
  std::string sentence;  // the whole requirement in words
  std::string cite, because, mend, note;
  std::string why;                      // one sentence: why this verdict
  std::string submit;                   // for not shown: what to submit
  std::vector<std::string> amended_by;  // titles of the amendments that made the clause what it is
  std::vector<Comparison> comparisons;
  std::vector<Line> steps;
  source::Span where;  // what decides it in the submittal; unknown if nothing there does
  source::Span rule;   // the requirement
};

[[nodiscard]] Explanation explain(const Context& context, const evaluate::Finding& finding);

/// What identifies a specification, for every report about it.
struct SpecificationHead {
  std::string name, title, edition, agency, file, source;
  check::Status status{};
  std::string status_note;
  std::vector<std::string> amendments;  // in force, in order
  std::vector<std::string> withdrawn;   // clauses that they took out, by which amendment and why
};

/// "complies", "fails", "not shown", "does not apply".
[[nodiscard]] std::string_view verdict_text(Verdict verdict);
/// Generic wording of submittal review.
[[nodiscard]] std::string_view outcome_text(evaluate::Outcome outcome);
[[nodiscard]] std::string_view status_text(check::Status status);
[[nodiscard]] std::string_view severity_text(check::Severity severity);
/// A stable word for programs: "no_result", "only_a_bound" ...
[[nodiscard]] std::string_view reason_code(Reason reason);

}  // namespace plumbrule::explain
