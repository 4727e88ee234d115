#include <array>

#include "base/diagnose/quote.hpp"
#include "show/report/followup/followup.hpp"
#include "show/report/parts/text_parts.hpp"

namespace plumbrule::report {
namespace {

using diagnose::printable;
using followup::Progress;

constexpr std::array<Progress, 4> order{Progress::fresh, Progress::still_open, Progress::withdrawn, Progress::closed};

// A value that the two share is said once.
std::string both(const std::string& before, const std::string& after) {
  return before == after ? after
                         : (before.empty() ? "not stated" : before) + " -> " + (after.empty() ? "not stated" : after);
}

std::string paint(Progress progress, bool wanted) {
  constexpr std::array<std::string_view, 4> colours{"34", "33", "1;31", "33"};
  const std::string text(followup::progress_text(progress));
  return wanted ? "\x1b[" + std::string(colours.at(static_cast<std::size_t>(progress))) + "m" + text + "\x1b[0m" : text;
}

std::string clause(const ClauseFollowUp& one, check::Status limits, bool colour) {
  std::string out = "  " + one.after.number + "  " + printable(one.after.title) + ": " + paint(one.progress, colour) +
                    (one.counts ? "" : " (advice only)") + "\n";
  out += detail("before", state_text(one.before)) + detail("now", state_text(one.after)) + detail("note", one.note);
  if (one.open) {
    out += detail("demand", one.after.sentence);
    out += one.after.verdict == explain::Verdict::fails ? detail("to mend", one.after.mend) : "";
    out += detail("submit", one.after.submit);
  }
  out += one.after.status == limits ? "" : detail("limits", limit_standing(one.after));
  for (const std::string& amendment : one.after.amended_by) {
    out += detail("amended by", amendment);
  }
  return out;
}

std::string specification(const SpecificationFollowUp& one, bool colour) {
  std::string out = "\n" + printable(one.title) + "\n";
  out += heading("  edition", one.edition + (one.agency.empty() ? "" : ", " + one.agency));
  const std::string note = one.status_note.empty() ? "" : ": " + one.status_note;
  out += heading("  limits", std::string(explain::status_text(one.status)) + note);
  out += heading("  source", one.source);
  for (const std::string& amendment : one.amendments) {
    out += heading("  amended by", amendment);
  }
  for (const std::string& clause : one.withdrawn) {
    out += heading("  withdrawn", clause);
  }
  out += heading("  rules", one.file);
  out += heading("  before", std::string(explain::outcome_text(one.before)));
  out += heading("  now", std::string(explain::outcome_text(one.after)));
  out += heading("  findings", tally_text(one));
  for (const Progress progress : order) {
    for (const ClauseFollowUp& finding : one.findings) {
      out += finding.progress == progress ? clause(finding, one.status, colour) : "";
    }
  }
  return out;
}

std::string places(const std::string& before, const std::string& after) {
  return detail("before", before) + detail("now", after);
}

std::string looks(const FollowUpReport& report) {
  if (report.looks.empty()) {
    return "\nWorth a look: nothing\n";
  }
  std::string out = "\nWorth a look: " + std::to_string(report.looks.size()) + "\n  " + std::string(looks_note) + "\n";
  for (const LookFollowUp& one : report.looks) {
    out += "  " + printable(one.found) + " [" + one.code + "]\n" + detail("look", one.look) +
           places(one.before_place, one.after_place);
  }
  return out;
}

std::string values(const FollowUpReport& report) {
  if (report.values.empty()) {
    return "\nValues changed: none\n";
  }
  std::string out = "\nValues changed: " + std::to_string(report.values.size()) + "\n";
  for (const ValueFollowUp& one : report.values) {
    out += "  " + printable(one.subject) + ", " + printable(one.what) + ": " + printable(change_text(one)) + "\n" +
           places(one.before_place, one.after_place);
  }
  return out;
}

std::string results(const FollowUpReport& report) {
  std::string out;
  for (const bool added : {true, false}) {
    std::string list;
    for (const ResultFollowUp& one : report.results) {
      list += one.added == added
                  ? "  " + printable(one.subject) + ": " + printable(one.value) + " [" + printable(one.place) + "]\n"
                  : "";
    }
    out += list.empty() ? "" : (added ? "\nResults added\n" : "\nResults not submitted any more\n") + list;
  }
  return out;
}

std::string audits(const FollowUpReport& report) {
  if (report.audit.empty()) {
    return "\nAudit of the readings: nothing found in either\n";
  }
  std::string out = "\nAudit of the readings: no verdict depends on it\n";
  for (const Progress progress : order) {
    for (const AuditFollowUp& one : report.audit) {
      out += one.progress == progress
                 ? "  " + std::string(followup::progress_text(progress)) + ": " + printable(one.finding.place) + ": " +
                       printable(one.finding.found) + " [" + one.finding.code + "]\n"
                 : "";
    }
  }
  return out;
}

}  // namespace

std::string follow_up_text(const FollowUpReport& report, bool colour) {
  const evidence::Identity& from = report.before.identity;
  const evidence::Identity& to = report.after.identity;
  std::string out = heading("Before", report.before.file) + heading("Now", report.after.file);
  out += heading("Project", both(from.project, to.project)) + heading("Mix", both(from.mix, to.mix));
  out += heading("Laboratory", both(from.laboratory, to.laboratory)) +
         heading("Prepared by", both(from.prepared_by, to.prepared_by)) + heading("Date", both(from.date, to.date));
  out += heading("Review day", report.on) + heading("Not reviewed", not_reviewed(report.origin));
  const std::size_t then = report.before.problems.size();
  const std::size_t now = report.after.problems.size();
  if (then + now > 0) {
    out += heading("Errors", std::to_string(then) + " in the submittal before, " + std::to_string(now) +
                                 " in the one now (listed apart)");
  }
  for (const FollowedSubmittal* side : {&report.before, &report.after}) {
    for (const Problem& one : side->warnings) {
      out += heading("Warning", problem_text(one));
    }
  }
  for (const SpecificationFollowUp& one : report.specifications) {
    out += specification(one, colour);
  }
  return out + looks(report) + values(report) + results(report) + audits(report) + closing_text(report.origin);
}

}  // namespace plumbrule::report
