#pragma once
// The report of a review: one model, rendered as text or JSON, so that all formats show the same facts.

#include <string>
#include <vector>

#include "audit/audit.hpp"
#include "explain/explanation.hpp"
#include "report/origin.hpp"

namespace plumbrule::report {

/// The review against one specification.
struct SpecificationReport : explain::SpecificationHead {
  evaluate::Outcome outcome{};
  std::vector<explain::Explanation> findings;
};

/// An error of the submittal, as the reader of the report needs it.
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

struct Report {
  std::string submittal;  // its file
  std::string on;         // the day of the review, if one was given
  evidence::Identity identity;
  std::vector<Problem> problems;
  std::vector<SpecificationReport> specifications;
  AuditReport audit;
  Origin origin;
};

/// The caution that every report carries.
inline constexpr std::string_view caution =
    "The contract documents and local codes govern, and the engineer in responsible charge decides. Limits marked "
    "unverified or demonstration must be checked against the current document.";

/// Places, lines and texts of what the audit found.
[[nodiscard]] AuditReport audit_report(const audit::Inspection& inspection, const source::SourceMap& sources);
/// The section of the text report.
[[nodiscard]] std::string audit_text(const AuditReport& report);
[[nodiscard]] std::string text(const Report& report, bool colour);
/// With a clause: only the findings about it.
[[nodiscard]] std::string json(const Report& report, const std::string& clause = {});
/// One clause with every step from reading to verdict.
[[nodiscard]] std::string explanation_text(const explain::Explanation& explanation, bool colour);

}  // namespace plumbrule::report
