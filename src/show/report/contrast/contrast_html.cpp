#include "show/report/contrast/contrast.hpp"
#include "show/report/parts/html.hpp"
#include "show/report/recite/recite.hpp"

namespace plumbrule::report {
namespace {

Markup named(const check::Rules& rules) {
  std::vector<Markup> items;
  for (const std::string& line : specification_lines(rules)) {
    items.push_back(escaped(line));
  }
  return list(items);
}

}  // namespace

std::string contrast_html(const ContrastReport& report) {
  const bool one_family = report.contrast.one_family;
  Page out{"Two specifications held against each other",
           report.before.specification->title +
               (one_family && report.before.specification->title == report.after.specification->title
                    ? ""
                    : " / " + report.after.specification->title),
           {},
           {}};
  out.lead = facts({{one_family ? "Before" : "First", named(report.before)},
                    {one_family ? "After" : "Second", named(report.after)},
                    Fact{"Limits", counts_line(contrast_counts(report))}});
  const TableView changes = contrast_table(report);
  Markup body = changes.rows.empty() ? paragraph(nothing_differs(report)) : html_table("Limits that differ", changes);
  const TableView others = general_table(report);
  body += others.rows.empty() ? Markup() : html_table("What differs beside the limits", others);
  body += paragraph("The same: " + contrast_unchanged(report) + ".");
  out.parts.push_back({"What differs", body});
  if (report.archive) {
    const TableView filed = filed_table(report);
    Markup past = paragraph(filed_line(report) + ".");
    past +=
        filed.rows.empty() ? Markup() : html_table("Past submittals that are judged otherwise, or have errors", filed);
    out.parts.push_back({"Past submittals", past});
  }
  out.parts.push_back(files(report.origin));
  return page(std::move(out));
}

}  // namespace plumbrule::report
