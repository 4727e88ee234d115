#include "show/report/review/junit.hpp"

#include <algorithm>

#include "show/report/parts/junit_form.hpp"

namespace plumbrule::report {
namespace {

using evaluate::Outcome;
using explain::Explanation;
using explain::Verdict;

void say(std::vector<std::string>& lines, const std::string& name, const std::string& value) {
  if (!value.empty()) {
    lines.push_back(name + ": " + value);
  }
}

// Why a clause does not take part in the outcome, as the beginning of a message; empty if it does.
std::string left_out(const Explanation& one) {
  const bool optional = one.optional && one.verdict == Verdict::not_shown;
  return optional ? "optional test, " : one.severity == check::Severity::advise ? "advice only, " : "";
}

std::vector<std::string> details(const Explanation& one) {
  std::vector<std::string> out;
  say(out, "standing", joined(marks(one)));
  say(out, "demand", one.sentence);
  for (const explain::Comparison& comparison : one.comparisons) {
    if (comparison.verdict == one.verdict && !comparison.place.empty()) {
      say(out, "place", comparison.place);
    }
  }
  if (one.verdict == Verdict::fails) {
    say(out, "reason", one.because);
    say(out, "to mend", one.mend);
  }
  say(out, "submit", one.submit);
  for (const std::string& amendment : one.amended_by) {
    say(out, "amended by", amendment);
  }
  say(out, "cited", one.cite);
  say(out, "limits", limit_standing(one));
  say(out, "note", one.note);
  return out;
}

JunitCase clause(const Explanation& one, const std::string& specification) {
  JunitCase out{one.number + " " + one.title, specification, CaseState::passed, {}, {}, {}};
  const std::string verdict(explain::verdict_text(one.verdict));
  out.type = verdict;
  out.message = verdict + (one.why.empty() ? "" : ": " + one.why);
  switch (one.verdict) {
    case Verdict::complies:
      say(out.lines, "value", one.why);
      break;
    case Verdict::fails:
    case Verdict::not_shown:
      out.message = left_out(one) + out.message;
      out.state = !left_out(one).empty()          ? CaseState::skipped
                  : one.verdict == Verdict::fails ? CaseState::failure
                                                  : CaseState::error;
      out.lines = details(one);
      break;
    case Verdict::does_not_apply:
      out.state = CaseState::skipped;
      break;
  }
  return out;
}

bool unmet(const JunitCase& one) { return one.state == CaseState::failure || one.state == CaseState::error; }

JunitSuite specification(const SpecificationReport& one) {
  JunitSuite out;
  out.name = one.name + " " + one.edition;
  const std::string outcome(explain::outcome_text(one.outcome));
  out.properties = {{"title", one.title},
                    {"edition", one.edition},
                    {"agency", one.agency},
                    {"rules", one.file},
                    {"limits", std::string(explain::status_text(one.status))},
                    {"outcome", outcome}};
  for (const std::string& amendment : one.amendments) {
    out.properties.emplace_back("amended by", amendment);
  }
  for (const Explanation& finding : one.findings) {
    out.cases.push_back(clause(finding, one.name));
  }
  // Where no clause complies, or the submittal has errors, the outcome is no pass though each clause for itself may be.
  if (one.outcome != Outcome::no_exception_taken && std::none_of(out.cases.begin(), out.cases.end(), unmet)) {
    out.cases.push_back(
        {"outcome", one.name, CaseState::error, "outcome", outcome + ": " + std::string(outcome_meaning(one)), {}});
  }
  return out;
}

JunitSuite submittal(const Report& report) {
  JunitSuite out;
  out.name = "submittal " + report.submittal;
  out.properties.emplace_back("program", "plumbrule " + report.origin.version);
  const evidence::Identity& who = report.identity;
  for (const auto& [name, value] :
       std::initializer_list<std::pair<std::string, std::string>>{{"project", who.project},
                                                                  {"mix", who.mix},
                                                                  {"laboratory", who.laboratory},
                                                                  {"prepared by", who.prepared_by},
                                                                  {"date", who.date},
                                                                  {"note", who.note},
                                                                  {"review day", report.on}}) {
    if (!value.empty()) {
      out.properties.emplace_back(name, value);
    }
  }
  for (const UsedFile& file : report.origin.files) {
    out.properties.emplace_back(file.kind + " " + file.path, "sha256:" + file.digest);
  }
  for (const SetAside& one : report.origin.aside) {
    out.cases.push_back({"not reviewed: " + one.what,
                         "submittal",
                         one.open ? CaseState::error : CaseState::skipped,
                         "not in force",
                         one.why,
                         {}});
  }
  for (const Problem& one : report.problems) {
    out.cases.push_back({one.place + " " + one.code, "submittal", CaseState::error, one.code, one.message, {}});
    say(out.cases.back().lines, "to mend", one.help);
  }
  if (report.problems.empty()) {
    out.cases.push_back({"read without errors", "submittal", CaseState::passed, {}, {}, {}});
  }
  for (const Problem& one : report.warnings) {
    out.lines.push_back("warning: " + problem_text(one) + " [" + one.code + "]");
  }
  for (const AuditFinding& one : report.audit.findings) {
    out.lines.push_back("audit: " + one.place + ": " + one.found + " [" + one.code + "]");
  }
  out.lines.emplace_back(caution);
  return out;
}

}  // namespace

std::string junit(const Report& report) {
  std::vector<JunitSuite> suites{submittal(report)};
  for (const SpecificationReport& one : report.specifications) {
    suites.push_back(specification(one));
  }
  return junit_xml(suites);
}

}  // namespace plumbrule::report
