#include "show/report/contrast/contrast.hpp"

#include <algorithm>
#include <array>

#include "judge/explain/wording.hpp"
#include "show/report/recite/recite.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {
namespace {

using contrast::Change;
using contrast::ChangeKind;
using contrast::Demand;

std::string property(const ContrastReport& report, const Change& change) {
  const auto label = [](const Demand* demand, const check::Rules& rules) {
    return demand != nullptr && demand->assertion != nullptr ? explain::label(rules, *demand->assertion) : "";
  };
  const std::string left = label(change.before, report.before);
  const std::string right = label(change.after, report.after);
  const Demand* demand = change.before != nullptr ? change.before : change.after;
  return !left.empty() ? left : !right.empty() ? right : demand != nullptr ? demand->requirement->title : "";
}

std::string limit(const Demand* demand) {
  if (demand == nullptr) {
    return "-";
  }
  const std::string text =
      demand->assertion == nullptr ? "not required" : explain::limit_text(demand->assertion->limit);
  return demand->requirement->number + ": " + text + (demand->who.empty() ? "" : " (" + demand->who + ")");
}

std::string told(const Change& change, bool one_family) {
  std::string out(contrast::kind_text(change.kind, one_family));
  out += change.narrowed ? " for " + change.who : "";
  out += change.details.empty() ? "" : ": " + joined(change.details, "; ");
  const bool amended = change.after != nullptr && !change.after->requirement->amended_by.empty();
  return out + (amended ? " [" + joined(change.after->requirement->amended_by, ", ") + "]" : "");
}

TableView table(const ContrastReport& report) {
  TableView out;
  const bool one_family = report.contrast.one_family;
  out.heads = {"Property", one_family ? "Before" : "First", one_family ? "After" : "Second",
               one_family ? "Change" : "Difference"};
  for (const Change& change : report.contrast.changes) {
    if (change.kind != ChangeKind::same) {
      out.rows.push_back({property(report, change), limit(change.before), limit(change.after),
                          told(change, report.contrast.one_family)});
    }
  }
  return out;
}

TableView general(const ContrastReport& report) {
  TableView out;
  const bool one_family = report.contrast.one_family;
  out.heads = {"Beside the limits", one_family ? "Before" : "First", one_family ? "After" : "Second",
               one_family ? "Change" : "Difference"};
  for (const contrast::General& one : report.contrast.general) {
    out.rows.push_back(
        {one.what, one.before.empty() ? "-" : one.before, one.after.empty() ? "-" : one.after,
         std::string(contrast::kind_text(one.kind, one_family)) + (one.detail.empty() ? "" : ": " + one.detail)});
  }
  return out;
}

std::size_t count(const ContrastReport& report, ChangeKind kind) {
  return static_cast<std::size_t>(std::count_if(report.contrast.changes.begin(), report.contrast.changes.end(),
                                                [&](const Change& one) { return one.kind == kind; }));
}

constexpr std::array<ChangeKind, 8> kinds{ChangeKind::tightened, ChangeKind::relaxed,   ChangeKind::moved,
                                          ChangeKind::added,     ChangeKind::withdrawn, ChangeKind::conditions,
                                          ChangeKind::reworded,  ChangeKind::same};

std::string counts(const ContrastReport& report) {
  std::string out;
  for (const ChangeKind kind : kinds) {
    out += (out.empty() ? "" : " | ") + std::string(contrast::kind_text(kind, report.contrast.one_family)) + " " +
           std::to_string(count(report, kind));
  }
  return out;
}

std::string unchanged(const ContrastReport& report) {
  std::vector<std::string> numbers;
  for (const Change& change : report.contrast.changes) {
    const std::string text = change.kind == ChangeKind::same
                                 ? change.before->requirement->number + (change.narrowed ? " (" + change.who + ")" : "")
                                 : "";
    if (!text.empty() && std::find(numbers.begin(), numbers.end(), text) == numbers.end()) {
      numbers.push_back(text);
    }
  }
  return numbers.empty() ? "no limit" : "limits of clause " + joined(numbers, ", ");
}

// Each specification in one line: what it is and how sure its limits are.
std::string named(const check::Rules& rules) { return joined(specification_lines(rules), "; "); }

std::string outcome(const std::optional<evaluate::Outcome>& one) {
  return one ? std::string(explain::outcome_text(*one)) : "could not be read";
}

TableView past(const ContrastReport& report) {
  TableView out;
  out.heads = {"Submittal", "Before", "After", "Clauses that are judged otherwise, and errors"};
  for (const Filed& one : report.filed) {
    std::vector<std::string> clauses;
    for (const Filed::Clause& clause : one.clauses) {
      clauses.push_back((clause.before.empty() ? "no clause" : clause.before) + " -> " +
                        (clause.after.empty() ? "no clause" : clause.after));
    }
    for (const std::string& error : one.errors) {
      clauses.push_back("error: " + error);
    }
    out.rows.push_back({one.submittal, outcome(one.before), outcome(one.after), joined(clauses, "; ")});
  }
  return out;
}

bool differs(const Filed& one) {
  return one.before != one.after || !one.clauses.empty() || !one.errors.empty() || !one.before;
}

std::string past_line(const ContrastReport& report) {
  const auto changed = std::count_if(report.filed.begin(), report.filed.end(),
                                     [](const Filed& one) { return one.before && one.before != one.after; });
  const auto unread =
      std::count_if(report.filed.begin(), report.filed.end(), [](const Filed& one) { return !one.before; });
  const auto faulty = std::count_if(report.filed.begin(), report.filed.end(),
                                    [](const Filed& one) { return one.before && !one.errors.empty(); });
  return std::to_string(report.filed.size()) + (report.filed.size() == 1 ? " past submittal, " : " past submittals, ") +
         std::to_string(changed) + " with another outcome, " + std::to_string(faulty) + " with errors, " +
         std::to_string(unread) + " that could not be read";
}

ContrastReport only_differing(const ContrastReport& report) {
  ContrastReport out{report.before, report.after, report.contrast, report.archive, {}, {}};
  std::copy_if(report.filed.begin(), report.filed.end(), std::back_inserter(out.filed), differs);
  return out;
}

}  // namespace

TableView contrast_table(const ContrastReport& report) { return table(report); }
TableView general_table(const ContrastReport& report) { return general(report); }
std::string nothing_differs(const ContrastReport& report) {
  return report.contrast.general.empty() ? "Nothing differs." : "No limit differs.";
}
std::string contrast_counts(const ContrastReport& report) { return counts(report); }
std::string contrast_unchanged(const ContrastReport& report) { return unchanged(report); }
TableView filed_table(const ContrastReport& report) { return past(only_differing(report)); }
std::string filed_line(const ContrastReport& report) { return past_line(report); }

std::string contrast_text(const ContrastReport& report, std::size_t width) {
  std::string out = std::string(report.contrast.one_family ? "Before  " : "First   ") + named(report.before) +
                    (report.contrast.one_family ? "\nAfter   " : "\nSecond  ") + named(report.after) + "\n";
  out += "Limits  " + counts(report) + "\n\n";
  const TableView changes = table(report);
  out += changes.rows.empty() ? nothing_differs(report) + "\n" : text_table(changes, width);
  const TableView others = general(report);
  out += others.rows.empty() ? "" : "\n" + text_table(others, width);
  out += "\nThe same: " + unchanged(report) + "\n";
  if (report.archive) {
    const ContrastReport shown = only_differing(report);
    out += "\nArchive: " + filed_line(report) + "\n";
    out += shown.filed.empty() ? "" : "\n" + text_table(past(shown), width);
  }
  return out + closing_text(report.origin);
}

std::string contrast_markdown(const ContrastReport& report) {
  const bool one_family = report.contrast.one_family;
  std::string out = "# " + markdown_cell(report.before.specification->title) + " / " +
                    markdown_cell(report.after.specification->title) + "\n\n";
  out += (one_family ? "- before: " : "- first: ") + markdown_cell(named(report.before)) +
         (one_family ? "\n- after: " : "\n- second: ") + markdown_cell(named(report.after)) + "\n";
  out += "- limits: " + markdown_cell(counts(report)) + "\n\n";
  const TableView changes = table(report);
  out += changes.rows.empty() ? nothing_differs(report) + "\n" : markdown_table(changes);
  const TableView others = general(report);
  out += others.rows.empty() ? "" : "\n" + markdown_table(others);
  out += "\nThe same: " + markdown_cell(unchanged(report)) + "\n";
  if (report.archive) {
    const TableView filed = filed_table(report);
    out += "\nArchive: " + filed_line(report) + "\n" + (filed.rows.empty() ? "" : "\n" + markdown_table(filed));
  }
  return out + closing_markdown(report.origin);
}

}  // namespace plumbrule::report
