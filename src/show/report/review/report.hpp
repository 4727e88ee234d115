#pragma once
// The report of a review: one model, rendered as text or JSON, so that all formats show the same facts.

#include <string>
#include <vector>

#include "judge/audit/audit.hpp"
#include "judge/explain/explanation.hpp"
#include "show/report/parts/origin.hpp"

namespace plumbrule::report {

/// The review against one specification.
struct SpecificationReport : explain::SpecificationHead {
  evaluate::Outcome outcome{};
  std::vector<explain::Explanation> findings;
};

/// An error of the submittal, or a warning about it, as the reader of the report needs it.
struct Problem {
  std::string code, place, message, help;
  source::Span span;
};

/// A further place of a finding of the audit.
struct Related {
  std::string place, text;
  source::Span span;
};

/// A finding of the audit of the readings.
struct AuditFinding {
  std::string code, place;
  std::uint32_t line = 0;
  std::string text;  // what stands there, on one line
  std::string found, expected, look;
  std::vector<Related> related;
  source::Span span;
};

/// What the audit found, once for the submittal, and how much it looked at.
struct AuditReport {
  std::vector<AuditFinding> findings;
  std::size_t recomputed = 0;  // results with readings
  std::size_t compared = 0;    // whose reported value was compared with the specimens
  std::size_t tested = 0;      // for an outlying replicate
  bool outliers = false;       // a specification asks for that
};

/// Who can do what must be done next: who tests and keeps the record, who chooses the mix, who decides for the owner.
enum class Hand : std::uint8_t { laboratory, designer, agency };

/// Something that must be done next.
struct Action {
  Hand hand{};
  std::string what;                  // "submit a result: sand equivalent, at least 2 specimens"
  std::string why;                   // empty where `what` says it
  std::vector<std::string> clauses;  // that ask for it; with the specification's name where there are several
  std::string place;                 // of the value in the submittal, if it is about a single one
};

struct Report {
  std::string submittal;  // its file
  std::string on;         // the day of the review, if one was given
  evidence::Identity identity;
  std::vector<Problem> problems;
  std::vector<Problem> warnings;  // change no outcome
  std::vector<SpecificationReport> specifications;
  AuditReport audit;
  std::vector<Action> actions;  // grouped by hand, in the order of doing within each
  Origin origin;
};

/// The caution that every report carries.
inline constexpr std::string_view caution =
    "The contract documents and local codes govern, and the engineer in responsible charge decides. Limits marked "
    "unverified or demonstration must be checked against the current document.";

/// What must be done next, from all that the report says otherwise: errors mended, failing clauses met or decided,
/// evidence submitted, odd readings looked at, limits confirmed. The same thing asked for by several clauses is one
/// action.
[[nodiscard]] std::vector<Action> next_actions(const Report& report);
/// "laboratory", "designer", "agency".
[[nodiscard]] std::string_view hand_text(Hand hand);
/// No clause that applies counts for the outcome.
[[nodiscard]] bool nothing_decides(const SpecificationReport& report);
/// "every clause that applies and decides is shown to be met"; of an incomplete one also that no clause applies.
[[nodiscard]] std::string_view outcome_meaning(const SpecificationReport& report);
/// The parts in a row.
[[nodiscard]] std::string joined(const std::vector<std::string>& parts, std::string_view between = ", ");
/// What qualifies a clause: "optional test", "for the engineer", "advice only", "limit unverified".
[[nodiscard]] std::vector<std::string> marks(const explain::Explanation& finding);
/// The same behind a verdict: " (optional test, limit unverified)", or nothing.
[[nodiscard]] std::string marks_text(const explain::Explanation& finding);
/// "trial.yaml:2:11: found ...; leave it if ...", on one line.
[[nodiscard]] std::string problem_text(const Problem& one);
/// "unverified: read in a copy of the page".
[[nodiscard]] std::string limit_standing(const explain::Explanation& finding);
/// "complies 4 | fails 3 | not shown 7 | does not apply 0".
[[nodiscard]] std::string counts(const std::vector<explain::Explanation>& findings);
/// What the audit looked at: "5 results recomputed from readings, 2 compared ...".
[[nodiscard]] std::string audit_scope(const AuditReport& report);

/// Places, lines and texts of what the audit found.
[[nodiscard]] AuditReport audit_report(const audit::Inspection& inspection, const source::SourceMap& sources);
/// The section of the text report.
[[nodiscard]] std::string audit_text(const AuditReport& report);
[[nodiscard]] std::string text(const Report& report, bool colour);
/// With a clause: only the findings about it.
[[nodiscard]] std::string json(const Report& report, const std::string& clause = {});
/// One self-contained page.
[[nodiscard]] std::string html(const Report& report);
/// For a letter or an issue.
[[nodiscard]] std::string markdown(const Report& report);
/// One clause with every step from reading to verdict.
[[nodiscard]] std::string explanation_text(const explain::Explanation& explanation, bool colour);

}  // namespace plumbrule::report
