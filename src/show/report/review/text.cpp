#include <array>

#include "base/diagnose/quote.hpp"
#include "show/report/parts/text_parts.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {
namespace {

using diagnose::printable;
using evaluate::Outcome;
using explain::Explanation;
using explain::Verdict;

std::string paint(const std::string& text, std::string_view colour, bool wanted) {
  return wanted ? "\x1b[" + std::string(colour) + "m" + text + "\x1b[0m" : text;
}

std::string_view colour_of(Verdict verdict) {
  constexpr std::array<std::string_view, 4> colours{"34", "1;31", "33", "2"};
  return colours.at(static_cast<std::size_t>(verdict));
}

std::string verdict(const Explanation& one, bool colour) {
  return paint(std::string(explain::verdict_text(one.verdict)), colour_of(one.verdict), colour);
}

// For values that carry colour of ours.
std::string shaded_heading(const std::string& name, const std::string& value) {
  return name + std::string(name.size() < 14 ? 14 - name.size() : 1, ' ') + value + "\n";
}

std::string finding(const Explanation& one, bool colour) {
  std::string out =
      "  " + one.number + "  " + printable(one.title) + ": " + verdict(one, colour) + marks_text(one) + "\n";
  if (one.verdict == Verdict::complies) {
    return out + detail("value", one.why);
  }
  if (one.verdict == Verdict::does_not_apply) {
    return out + detail("why", one.why);
  }
  out += detail("demand", one.sentence);
  out += detail(one.verdict == Verdict::fails ? "value" : "why", one.why);
  for (const explain::Comparison& comparison : one.comparisons) {
    if (comparison.verdict == one.verdict) {
      out += detail("place", comparison.place);
    }
  }
  if (one.verdict == Verdict::fails) {
    out += detail("reason", one.because);
    out += detail("to mend", one.mend);
  }
  out += detail("submit", one.submit);
  for (const std::string& amendment : one.amended_by) {
    out += detail("amended by", amendment);
  }
  return out + detail("cited", one.cite) + detail("note", one.note);
}

std::string section(const SpecificationReport& report, bool colour) {
  std::string out = "\n" + printable(report.title) + "\n";
  out += heading("  edition", report.edition + (report.agency.empty() ? "" : ", " + report.agency));
  const std::string note = report.status_note.empty() ? "" : ": " + report.status_note;
  out += heading("  limits", std::string(explain::status_text(report.status)) + note);
  out += heading("  source", report.source);
  for (const std::string& one : report.amendments) {
    out += heading("  amended by", one);
  }
  for (const std::string& one : report.withdrawn) {
    out += heading("  withdrawn", one);
  }
  out += heading("  rules", report.file);
  const std::string_view shade = report.outcome == Outcome::no_exception_taken ? "34"
                                 : report.outcome == Outcome::incomplete       ? "33"
                                                                               : "1;31";
  out += shaded_heading("  outcome", paint(std::string(explain::outcome_text(report.outcome)), shade, colour) + ": " +
                                         std::string(outcome_meaning(report)));
  out += heading("  clauses", counts(report.findings));
  std::string current;
  for (const Explanation& one : report.findings) {
    if (one.section != current) {
      current = one.section;
      out += "\n " + printable(current) + "\n";
    }
    out += finding(one, colour);
  }
  return out;
}

}  // namespace

std::string text(const Report& report, bool colour) {
  std::string out = heading("Submittal", report.submittal);
  out += heading("Project", report.identity.project) + heading("Mix", report.identity.mix);
  out += heading("Laboratory", report.identity.laboratory) + heading("Prepared by", report.identity.prepared_by);
  out += heading("Date", report.identity.date) + heading("Note", report.identity.note);
  out += heading("Review day", report.on) + heading("Not reviewed", not_reviewed(report.origin));
  if (!report.problems.empty()) {
    out += heading("Errors", std::to_string(report.problems.size()) +
                                 " in the submittal (listed apart); what they touch is not shown");
  }
  for (const Problem& one : report.warnings) {
    out += heading("Warning", problem_text(one));
  }
  for (const SpecificationReport& one : report.specifications) {
    out += section(one, colour);
  }
  return out + audit_text(report.audit) + closing_text(report.origin);
}

std::string explanation_text(const Explanation& one, bool colour) {
  std::string out = one.number + "  " + printable(one.title) + ": " + verdict(one, colour) + marks_text(one) + "\n";
  out += heading("  demand", one.sentence);
  out += heading("  cited", one.cite);
  for (const std::string& amendment : one.amended_by) {
    out += heading("  amended by", amendment);
  }
  out += heading("  limits", limit_standing(one));
  out += heading("  source", one.source);
  out += one.verdict == Verdict::complies || one.verdict == Verdict::fails ? heading("  result", one.why)
                                                                           : heading("  why", one.why);
  out += heading("  note", one.note) + heading("  reason", one.because) + heading("  to mend", one.mend) +
         heading("  submit", one.submit);
  out += "  steps\n";
  for (const explain::Line& line : one.steps) {
    out += std::string(4 + 2 * static_cast<std::size_t>(line.depth), ' ') + printable(line.text);
    out += line.place.empty() ? "\n" : "   [" + printable(line.place) + "]\n";
  }
  return out;
}

}  // namespace plumbrule::report
