#include <array>

#include "show/report/followup/followup.hpp"
#include "show/report/parts/markdown.hpp"

namespace plumbrule::report {
namespace {

using followup::Progress;

constexpr std::array<Progress, 4> order{Progress::fresh, Progress::still_open, Progress::withdrawn, Progress::closed};

std::string item(const std::string& name, const std::string& value, const std::string& indent = "") {
  return value.empty() ? "" : indent + "- " + name + ": " + markdown_text(value) + "\n";
}

std::string row(const std::vector<std::string>& cells) {
  std::string out = "|";
  for (const std::string& cell : cells) {
    out += " " + markdown_text(cell) + " |";
  }
  return out + "\n";
}

std::string head(const std::vector<std::string>& cells) {
  std::string out = row(cells) + "|";
  for (std::size_t at = 0; at < cells.size(); ++at) {
    out += " --- |";
  }
  return out + "\n";
}

std::string clause(const ClauseFollowUp& one, check::Status limits) {
  std::string out = "- **" + markdown_text(one.after.number + " " + one.after.title) +
                    "**: " + std::string(followup::progress_text(one.progress)) + (one.counts ? "" : " (advice only)") +
                    "\n";
  out += item("before", state_text(one.before), "  ") + item("now", state_text(one.after), "  ");
  out += item("note", one.note, "  ") + item("amended by", joined(one.after.amended_by), "  ");
  out += one.after.status == limits ? "" : item("limits", limit_standing(one.after), "  ");
  return one.open ? out + item("demand", one.after.sentence, "  ") + item("submit", one.after.submit, "  ") : out;
}

std::string specification(const SpecificationFollowUp& one) {
  std::string out = "\n## " + markdown_text(one.title + ", edition " + one.edition) + "\n\n";
  const std::string note = one.status_note.empty() ? "" : ": " + one.status_note;
  out += item("limits", std::string(explain::status_text(one.status)) + note) + item("source", one.source);
  for (const std::string& amendment : one.amendments) {
    out += item("amended by", amendment);
  }
  for (const std::string& clause : one.withdrawn) {
    out += item("withdrawn", clause);
  }
  out += item("before", std::string(explain::outcome_text(one.before)));
  out += item("now", std::string(explain::outcome_text(one.after)));
  out += item("findings", tally_text(one)) + "\n";
  for (const Progress progress : order) {
    for (const ClauseFollowUp& finding : one.findings) {
      out += finding.progress == progress ? clause(finding, one.status) : "";
    }
  }
  return out;
}

std::string looks(const FollowUpReport& report) {
  std::string out = "\n## Worth a look\n\n";
  if (report.looks.empty()) {
    return out + "Nothing.\n";
  }
  out += std::string(looks_note) + "\n\n" + head({"What differs", "Look", "Before", "Now"});
  for (const LookFollowUp& one : report.looks) {
    out += row({one.found, one.look, one.before_place, one.after_place});
  }
  return out;
}

std::string changes(const FollowUpReport& report) {
  std::string out = "\n## Values changed\n\n";
  if (report.values.empty()) {
    out += "None.\n";
  } else {
    out += head({"Of", "What", "Before", "Now", "Difference", "Place before", "Place now"});
  }
  for (const ValueFollowUp& one : report.values) {
    out += row({one.subject, one.what, one.before, one.after, one.difference, one.before_place, one.after_place});
  }
  if (report.results.empty()) {
    return out;
  }
  out += "\n## Results added and not submitted any more\n\n" + head({"Change", "Result", "Value", "Place"});
  for (const ResultFollowUp& one : report.results) {
    out += row({one.added ? "added" : "not submitted any more", one.subject, one.value, one.place});
  }
  return out;
}

std::string audits(const FollowUpReport& report) {
  std::string out = "\n## Audit of the readings\n\nNo verdict depends on it.\n\n";
  if (report.audit.empty()) {
    return out + "Nothing found in either.\n";
  }
  for (const Progress progress : order) {
    for (const AuditFollowUp& one : report.audit) {
      out += one.progress == progress
                 ? item(std::string(followup::progress_text(progress)),
                        one.finding.place + ": " + one.finding.found + " [" + one.finding.code + "]")
                 : "";
    }
  }
  return out;
}

}  // namespace

std::string follow_up_markdown(const FollowUpReport& report) {
  const evidence::Identity& who = report.after.identity;
  std::string out = "# Follow-up of a resubmittal\n\n";
  out += item("before", report.before.file) + item("now", report.after.file) + item("project", who.project) +
         item("mix", who.mix) + item("laboratory", who.laboratory) + item("prepared by", who.prepared_by) +
         item("date before", report.before.identity.date) + item("date now", who.date) + item("review day", report.on);
  const std::size_t then = report.before.problems.size();
  const std::size_t now = report.after.problems.size();
  if (then + now > 0) {
    out += item("errors in the submittal", std::to_string(then) + " before, " + std::to_string(now) + " now");
  }
  for (const FollowedSubmittal* side : {&report.before, &report.after}) {
    for (const Problem& one : side->warnings) {
      out += item("warning", problem_text(one));
    }
  }
  for (const SpecificationFollowUp& one : report.specifications) {
    out += specification(one);
  }
  return out + looks(report) + changes(report) + audits(report) + closing_markdown(report.origin);
}

}  // namespace plumbrule::report
