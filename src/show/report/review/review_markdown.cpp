#include <algorithm>

#include "show/report/parts/markdown.hpp"
#include "show/report/parts/table.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {
namespace {

using explain::Comparison;
using explain::Explanation;
using explain::Verdict;

std::string heading(std::size_t level, std::string_view text) {
  return "\n" + std::string(level, '#') + " " + markdown_text(text) + "\n\n";
}

std::string fact(std::string_view name, std::string_view value) {
  return value.empty() ? "" : "- **" + std::string(name) + ":** " + markdown_text(value) + "\n";
}

std::string outcome(const SpecificationReport& one) {
  return "- **Outcome: " + std::string(explain::outcome_text(one.outcome)) + "**, " +
         std::string(outcome_meaning(one)) + "\n";
}

// Cells of a report are escaped like all else of it.
std::string table(const TableView& view) {
  const auto row = [](const std::vector<std::string>& cells) {
    std::string out = "|";
    for (const std::string& cell : cells) {
      out += " " + markdown_text(cell) + " |";
    }
    return out + "\n";
  };
  std::string out = row(view.heads) + "|";
  for (std::size_t at = 0; at < view.heads.size(); ++at) {
    out += " --- |";
  }
  out += "\n";
  for (const std::vector<std::string>& cells : view.rows) {
    out += row(cells);
  }
  return out;
}

std::string comparisons(const Explanation& finding) {
  TableView out{{"Test", "Value", "Limit", "Margin", "Verdict", "Place"}, {}};
  for (const Comparison& one : finding.comparisons) {
    const std::string& told = one.verdict == Verdict::not_shown ? one.why : one.margin;
    out.rows.push_back(
        {one.label, one.value, one.limit, told, std::string(explain::verdict_text(one.verdict)), one.place});
  }
  return out.rows.empty() ? "" : table(out) + "\n";
}

std::string derivation(const Explanation& finding) {
  std::string out;
  for (const explain::Line& line : finding.steps) {
    out += std::string(2 * static_cast<std::size_t>(line.depth), ' ') + "- " + markdown_text(line.text) +
           (line.place.empty() ? "" : " (" + markdown_text(line.place) + ")") + "\n";
  }
  return out.empty() ? out : "From reading to verdict:\n\n" + out + "\n";
}

std::string article(const Explanation& one) {
  const bool failed = one.verdict == Verdict::fails;
  const bool compared = one.verdict == Verdict::complies || (failed && one.reason == explain::Reason::none);
  const std::string qualified = joined(marks(one));
  std::string out = heading(4, one.number + " " + one.title + ": " + std::string(explain::verdict_text(one.verdict)) +
                                   (qualified.empty() ? "" : " (" + qualified + ")"));
  out += markdown_text(one.sentence) + "\n\n" + comparisons(one);
  const bool confirmed = one.status == check::Status::verified;
  const std::string told = fact("Why", compared ? "" : one.why) + fact("Reason", failed ? one.because : "") +
                           fact("To mend", one.mend) + fact("Submit", one.submit) +
                           fact("Amended by", joined(one.amended_by)) + fact("Cited", one.cite) +
                           fact("Limit", confirmed ? "" : limit_standing(one)) + fact("Note", one.note);
  return out + told + (told.empty() ? "" : "\n") + derivation(one);
}

std::string specification(const SpecificationReport& report) {
  const std::string note = report.status_note.empty() ? "" : ": " + report.status_note;
  std::string out = heading(2, report.title) + fact("Edition", report.edition) + fact("Agency", report.agency) +
                    fact("Limits", std::string(explain::status_text(report.status)) + note) +
                    fact("Source", report.source) + fact("Rules", report.file);
  for (const std::string& amendment : report.amendments) {
    out += fact("Amended by", amendment);
  }
  for (const std::string& clause : report.withdrawn) {
    out += fact("Withdrawn", clause);
  }
  out += outcome(report) + fact("Clauses", counts(report.findings));
  std::string section = "\n";  // no title of a section
  for (const Explanation& one : report.findings) {
    out += one.section == section ? "" : heading(3, one.section.empty() ? "Findings" : one.section);
    section = one.section;
    out += article(one);
  }
  return out;
}

std::string action(const Action& one) {
  const std::string clauses =
      one.clauses.empty() ? "" : (one.clauses.size() == 1 ? "clause " : "clauses ") + joined(one.clauses);
  const std::string remark = clauses + (clauses.empty() || one.why.empty() ? "" : "; ") + one.why;
  return "1. " + markdown_text(one.what) + (one.place.empty() ? "" : " (" + markdown_text(one.place) + ")") +
         (remark.empty() ? "" : " *" + markdown_text(remark) + "*") + "\n";
}

std::string next(const Report& report) {
  std::string out = heading(2, "What must be done next");
  if (report.actions.empty()) {
    return out + "Nothing is open.\n";
  }
  for (const Hand hand : {Hand::laboratory, Hand::designer, Hand::agency}) {
    std::string part;
    for (const Action& one : report.actions) {
      part += one.hand == hand ? action(one) : "";
    }
    out += part.empty() ? "" : "**By the " + std::string(hand_text(hand)) + "**\n\n" + part + "\n";
  }
  return out;
}

std::string problems(const std::string& title, const std::string& grade, const std::vector<Problem>& problems) {
  TableView out{{"Place", grade, "Help", "Code"}, {}};
  for (const Problem& one : problems) {
    out.rows.push_back({one.place, one.message, one.help, one.code});
  }
  return out.rows.empty() ? "" : heading(2, title) + table(out);
}

std::string audited(const Report& report) {
  std::string out = heading(2, "Audit of the readings");
  out += markdown_text(audit_scope(report.audit)) + "; no verdict depends on it.\n\n";
  TableView found{{"Place", "Found", "Written", "Expected", "Look", "See also", "Code"}, {}};
  for (const AuditFinding& one : report.audit.findings) {
    std::string related;
    for (const Related& other : one.related) {
      related += (related.empty() ? "" : "; ") + other.place + ": " + other.text;
    }
    found.rows.push_back({one.place, one.found, one.text, one.expected, one.look, related, one.code});
  }
  return out + (found.rows.empty() ? "Nothing was found.\n" : table(found));
}

}  // namespace

std::string markdown(const Report& report) {
  const evidence::Identity& who = report.identity;
  std::string out = "# Review of " + markdown_text(who.mix.empty() ? report.submittal : who.mix) + "\n\n" +
                    fact("Project", who.project) + fact("Mix", who.mix) + fact("Laboratory", who.laboratory) +
                    fact("Prepared by", who.prepared_by) + fact("Date", who.date) + fact("Note", who.note) +
                    fact("Submittal", report.submittal) + fact("Review day", report.on) +
                    fact("Not reviewed", not_reviewed(report.origin));
  out += next(report) + problems("Errors in the submittal", "Error", report.problems) +
         problems("Warnings about the submittal", "Warning", report.warnings);
  for (const SpecificationReport& one : report.specifications) {
    out += specification(one);
  }
  return out + audited(report) + closing_markdown(report.origin);
}

}  // namespace plumbrule::report
