#pragma once
// Parts that every HTML report is made of: the page with its landmarks and print layout, tables, lists of facts,
// verdicts. A report gives its own parts to `page` and writes no markup itself.

#include <functional>
#include <string>
#include <vector>

#include <report_templates.hpp>

#include "show/report/parts/table.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {

/// A part of a page under a heading of its own, listed in the contents.
struct Part {
  std::string title;
  Markup body;
  /// Writes what follows the body, piece by piece by append_breakable, so that a long part is never held beside the
  /// page.
  std::function<void(std::string& page)> rest{};
};

/// A whole report. `kind` says what it is ("Review of a submittal"), `title` what it is about.
struct Page {
  std::string kind, title;
  Markup lead;
  std::vector<Part> parts;
};
/// One self-contained document: style inside, no script, nothing from the network; the caution at its end.
[[nodiscard]] std::string page(Page page);

/// Names and what they are. Those without a value are left out.
struct Fact {
  std::string name;
  Markup value;
};
[[nodiscard]] Fact fact(const std::string& name, std::string_view value);
[[nodiscard]] Markup facts(const std::vector<Fact>& all);

/// Rows as wide as the heads; the first cell of a row is its head. On a narrow screen each row becomes a block.
struct HtmlTable {
  std::string caption;
  std::vector<std::string> heads;
  std::vector<std::vector<Markup>> rows;  // a row of one cell is a heading
};
[[nodiscard]] Markup html_table(const HtmlTable& table);
/// The table without columns in which nothing stands.
[[nodiscard]] HtmlTable without_empty_columns(HtmlTable table);
/// A table of plain texts.
[[nodiscard]] Markup html_table(const std::string& caption, const TableView& table);

/// The word, with a colour and a border of its own.
[[nodiscard]] Markup verdict_mark(explain::Verdict verdict);
[[nodiscard]] Markup outcome_mark(evaluate::Outcome outcome);
/// The class of style sheets for it: "not-shown".
[[nodiscard]] std::string style_of(explain::Verdict verdict);

[[nodiscard]] Markup paragraph(std::string_view text);
/// Counts between bars, "closed 5 | new 0": lines break behind the bars alone.
[[nodiscard]] Markup counts_line(std::string_view counts);
[[nodiscard]] Markup place_mark(const std::string& place);
/// A heading of the third level with what belongs to it.
[[nodiscard]] Markup subpart(std::string_view title, const Markup& body);
/// Shown on demand, and always in print.
[[nodiscard]] Markup disclosure(std::string_view summary, const Markup& body);
[[nodiscard]] Markup list(const std::vector<Markup>& items, bool numbered = false);
/// Every file that entered the report with its digest, and the program.
[[nodiscard]] Part files(const Origin& origin);
/// Lines for name, date and signature, under a heading of their own.
[[nodiscard]] Part signature();

}  // namespace plumbrule::report
