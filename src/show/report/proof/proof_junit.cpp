#include "base/source/version.hpp"

#include "show/report/parts/junit_form.hpp"
#include "show/report/proof/proof.hpp"

namespace plumbrule::report {
namespace {

std::string finding_line(const diagnose::Diagnostic& one, const source::SourceMap& sources) {
  const std::string place = sources.place_text(one.primary.span);
  return (place.empty() ? "" : place + ": ") + one.message + " [" + std::string(diagnose::text(one.code)) + "]" +
         (one.help.empty() ? "" : "; to mend: " + one.help);
}

// Passed without errors; the first error is the message.
JunitCase proved_case(JunitCase out, const diagnose::Diagnostics& found, CaseState state,
                      const source::SourceMap& sources) {
  for (const diagnose::Diagnostic& one : found.all()) {
    if (one.severity == diagnose::Severity::error && out.state == CaseState::passed) {
      out.state = state;
      out.type = diagnose::text(one.code);
      out.message = one.message;
    }
    out.lines.push_back(finding_line(one, sources));
  }
  return out;
}

JunitSuite suite(const Proved& proved, const source::SourceMap& sources) {
  JunitSuite out;
  out.name = proved.path;
  out.properties.emplace_back("program", "plumbrule " + std::string(source::version()));
  if (!proved.digest.empty()) {
    out.properties.emplace_back("digest", proved.digest);
  }
  out.cases.push_back(
      proved_case({"rules", proved.path, CaseState::passed, {}, {}, {}}, proved.faults, CaseState::error, sources));
  for (const Proved::Case& one : proved.cases) {
    out.cases.push_back(proved_case({one.subject + " " + one.title, proved.path, CaseState::passed, {}, {}, {}},
                                    one.wrong, CaseState::failure, sources));
  }
  if (proved.usable && proved.cases.empty()) {
    out.cases.push_back(
        {"examples", proved.path, CaseState::skipped, {}, "there is no example: nothing is proved", {}});
  }
  if (proved.branches > 0) {
    out.properties.emplace_back("branches", std::to_string(proved.branches));
    out.properties.emplace_back("branches reached", std::to_string(proved.branches - proved.missed.size()));
  }
  for (const std::string& one : proved.missed) {
    out.lines.push_back("no example: " + one);
  }
  for (const diagnose::Diagnostic& one : proved.remarks.all()) {
    out.lines.push_back("remark: " + finding_line(one, sources));
  }
  return out;
}

}  // namespace

std::string proof_junit(const std::vector<Proved>& all, const source::SourceMap& sources) {
  std::vector<JunitSuite> suites;
  suites.reserve(all.size());
  for (const Proved& one : all) {
    suites.push_back(suite(one, sources));
  }
  return junit_xml(suites);
}

}  // namespace plumbrule::report
