#include "base/diagnose/quote.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {
namespace {

using diagnose::printable;

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string audit_detail(const std::string& name, const std::string& value) {
  return value.empty() ? "" : "      " + name + ": " + printable(value) + "\n";
}

std::string finding(const AuditFinding& one) {
  std::string out = "  " + printable(one.place) + ": " + printable(one.found) + " [" + one.code + "]\n";
  out += audit_detail("written", one.text.empty() ? "" : "`" + one.text + "`") +
         audit_detail("expected", one.expected) + audit_detail("look", one.look);
  for (const Related& other : one.related) {
    out += audit_detail("see", other.place + ": " + other.text);
  }
  return out;
}

}  // namespace

// Honest about how much was looked at.
std::string audit_scope(const AuditReport& report) {
  return counted(report.recomputed, "result", "results") + " recomputed from readings, " +
         std::to_string(report.compared) + " compared with a reported value, " +
         (report.outliers ? std::to_string(report.tested) + " tested for an outlying specimen"
                          : "none tested for an outlying specimen, as no specification asks for it");
}

std::string audit_text(const AuditReport& report) {
  if (report.findings.empty()) {
    return "\nAudit of the readings: nothing found (" + audit_scope(report) + ")\n";
  }
  std::string out = "\nAudit of the readings: " + counted(report.findings.size(), "finding", "findings") +
                    "; no verdict depends on them\n  (" + audit_scope(report) + ")\n";
  for (const AuditFinding& one : report.findings) {
    out += finding(one);
  }
  return out;
}

}  // namespace plumbrule::report
