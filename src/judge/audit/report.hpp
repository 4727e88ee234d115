#pragma once
// What the audit found, as a reader of a report needs it: with places, lines and texts.

#include <string>
#include <vector>

#include "judge/audit/audit.hpp"

namespace plumbrule::audit {

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

/// Places, lines and texts of what the audit found.
[[nodiscard]] AuditReport audit_report(const Inspection& inspection, const source::SourceMap& sources);

}  // namespace plumbrule::audit
