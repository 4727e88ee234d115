#include <algorithm>

#include "show/report/matrix/matrix.hpp"
#include "show/report/parts/html.hpp"
#include "show/report/parts/page_parts.hpp"
#include "show/report/review/pictures.hpp"

namespace plumbrule::report {
namespace {

// So many columns can be read side by side on a sheet of paper.
constexpr std::size_t columns_a_table = 5;

// More than that is no glance any more.
constexpr std::size_t columns_a_picture = 12;
constexpr std::size_t tests_at_a_glance = 96;

Markup cell(const Cell& one) {
  if (!one.asked) {
    return escaped("not asked for");
  }
  Markup out = verdict_mark(one.this_way);
  std::string text = standing_text(one);
  text += (text.empty() ? " " : ", ") + one.limit + " (" + one.clause + ")";
  text += one.verdict == explain::Verdict::not_shown && !one.why.empty() ? ": " + one.why : "";
  out += escaped(text);
  return out;
}

Markup tests(const Matrix& matrix, std::size_t begin, std::size_t end) {
  HtmlTable out{"Specifications " + std::to_string(begin + 1) + " to " + std::to_string(end) + " of " +
                    std::to_string(matrix.columns.size()),
                {"Test"},
                {}};
  for (std::size_t at = begin; at < end; ++at) {
    out.heads.push_back(matrix.columns[at].label);
  }
  for (const TestRow& kind : matrix.kinds) {
    if (has_row(kind, begin, end)) {
      std::vector<Markup>& row = out.rows.emplace_back();
      row.push_back(escaped(kind.label));
      for (std::size_t at = begin; at < end; ++at) {
        row.push_back(cell(kind.cells[at]));
      }
    }
  }
  return html_table(out);
}

// The tables of the tests say the same as the picture.
Markup glance(const Matrix& matrix) {
  Markup out;
  for (const picture::Picture& one : pictures_of(matrix)) {
    out += fill<templates::figure>(hole<"drawing">(drawn(one)),
                                   hole<"caption">(one.title + "; under Tests the same in words"),
                                   hole<"table">(Markup()));
  }
  return fill<templates::figures>(hole<"figures">(out));
}

Part ranking(const Matrix& matrix) {
  HtmlTable out{
      std::string(column_order), {"Specification", "Edition", "Limits", "Outcome", "Clauses", "Least headroom"}, {}};
  for (const Column& column : matrix.columns) {
    const SpecificationReport& one = *column.specification;
    out.rows.push_back({escaped(column.label), escaped(one.edition), escaped(explain::status_text(one.status)),
                        outcome_mark(one.outcome), counts_line(counts(one.findings)), escaped(room_text(column))});
  }
  return {"Specifications", html_table(out)};
}

}  // namespace

std::string matrix_html(const Report& report) {
  const Matrix found = matrix(report);
  const std::string mix = report.identity.mix.empty() ? report.submittal : report.identity.mix;
  Page out{"One submittal against several specifications",
           mix + " against " + std::to_string(found.columns.size()) + " specifications",
           {},
           {}};
  const std::string errors = report.problems.empty() ? "" : errors_text(report);
  out.lead = facts({fact("Project", report.identity.project), fact("Mix", report.identity.mix),
                    fact("Laboratory", report.identity.laboratory), fact("Prepared by", report.identity.prepared_by),
                    fact("Date", report.identity.date), fact("Note", report.identity.note),
                    fact("Submittal", report.submittal), fact("Review day", report.on),
                    fact("Not reviewed", not_reviewed(report.origin)), fact("Errors", errors)});
  out.lead += problem_table("Warnings about the submittal", report.warnings, "Warning");
  out.parts.push_back(ranking(found));
  if (found.columns.size() <= columns_a_picture && found.kinds.size() <= tests_at_a_glance) {
    out.parts.push_back({"At a glance", glance(found)});
  }
  Markup body = paragraph(headroom_meaning);
  body += found.columns.size() > columns_a_table ? paragraph(rows_meaning) : Markup();
  body += any_other_way(found) ? paragraph(other_way_meaning) : Markup();
  for (std::size_t at = 0; at < found.columns.size(); at += columns_a_table) {
    body += tests(found, at, std::min(at + columns_a_table, found.columns.size()));
  }
  out.parts.push_back({"Tests", body});
  Markup apart;
  for (const Uncompared& one : uncompared(found)) {
    std::vector<Markup> all;
    std::transform(one.tests.begin(), one.tests.end(), std::back_inserter(all),
                   [](const std::string& test) { return escaped(test); });
    apart += subpart(one.why, fill<templates::columns>(hole<"items">(list(all))));
  }
  if (!apart.empty()) {
    out.parts.push_back({"Not compared", apart});
  }
  out.parts.push_back(files(report.origin));
  return page(std::move(out));
}

}  // namespace plumbrule::report
