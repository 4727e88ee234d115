#include "show/report/matrix/matrix.hpp"

#include <algorithm>
#include <array>

#include "base/diagnose/quote.hpp"
#include "show/report/parts/markdown.hpp"
#include "show/report/parts/table.hpp"

namespace plumbrule::report {
namespace {

using explain::Verdict;
using quantity::Decimal;

std::string cell_text(const Cell& cell) {
  if (!cell.asked) {
    return "-";
  }
  return std::string(explain::verdict_text(cell.this_way)) + standing_text(cell) + ", " + cell.limit + " (" +
         cell.clause + ")";
}

// The columns from `begin` up to `end`.
TableView kinds_table(const Matrix& matrix, std::size_t begin, std::size_t end) {
  TableView out;
  out.heads = {"Test"};
  for (std::size_t at = begin; at < end; ++at) {
    out.heads.push_back(matrix.columns[at].label);
  }
  for (const TestRow& kind : matrix.kinds) {
    if (!has_row(kind, begin, end)) {
      continue;
    }
    std::vector<std::string> row{kind.label};
    for (std::size_t at = begin; at < end; ++at) {
      row.push_back(cell_text(kind.cells[at]));
    }
    out.rows.push_back(std::move(row));
  }
  return out;
}

TableView columns_table(const Matrix& matrix) {
  TableView out;
  out.heads = {"Specification", "Edition", "Limits", "Outcome", "Clauses", "Least headroom"};
  for (const Column& column : matrix.columns) {
    const SpecificationReport& one = *column.specification;
    std::string counts;
    for (const Verdict verdict : {Verdict::complies, Verdict::fails, Verdict::not_shown, Verdict::does_not_apply}) {
      const std::size_t count = column.counts[static_cast<std::size_t>(verdict)];
      counts += count == 0 ? ""
                           : (counts.empty() ? "" : ", ") + std::string(explain::verdict_text(verdict)) + " " +
                                 std::to_string(count);
    }
    const std::string room = room_text(column);
    out.rows.push_back({column.label, one.edition, std::string(explain::status_text(one.status)),
                        std::string(explain::outcome_text(one.outcome)), counts, room});
  }
  return out;
}

constexpr std::size_t columns_a_page = 5;

// Below the title of the Markdown table.
std::string remarks(const Report& report) {
  std::string out = report.problems.empty() ? "" : "- Errors: " + errors_text(report) + "\n";
  for (const Problem& one : report.warnings) {
    out += "- Warning: " + markdown_cell(problem_text(one)) + "\n";
  }
  return out.empty() ? out : out + "\n";
}

std::string heading(const Report& report) {
  std::string out = "Submittal     " + diagnose::printable(report.submittal) + "\n";
  out += report.identity.mix.empty() ? "" : "Mix           " + diagnose::printable(report.identity.mix) + "\n";
  out += report.problems.empty() ? "" : "Errors        " + errors_text(report) + "\n";
  for (const Problem& one : report.warnings) {
    out += "Warning       " + diagnose::printable(problem_text(one)) + "\n";
  }
  return out;
}

// What the signs and the words of the tables mean.
std::string legend(const Matrix& matrix, std::size_t columns_a_table) {
  std::string out = matrix.columns.size() > 1 ? std::string(column_order) + ".\n" : "";
  out += std::string(headroom_meaning) + " `-`: not asked for.\n";
  out += matrix.columns.size() > columns_a_table ? std::string(rows_meaning) + "\n" : "";
  out += any_other_way(matrix) ? std::string(other_way_meaning) + "\n" : "";
  return out;
}

}  // namespace

bool any_other_way(const Matrix& matrix) {
  return std::any_of(matrix.kinds.begin(), matrix.kinds.end(), [](const TestRow& kind) {
    return std::any_of(kind.cells.begin(), kind.cells.end(), [](const Cell& one) { return one.other_way; });
  });
}

std::string way_text(const Cell& cell) { return cell.other_way ? ", but met another way" : ""; }

std::string standing_text(const Cell& cell) {
  const bool told = cell.headroom && (cell.verdict == Verdict::complies || cell.verdict == Verdict::fails);
  return cell.other_way ? way_text(cell) : told ? " " + headroom_text(cell.headroom) : "";
}

std::string room_text(const Column& column) {
  return column.headroom            ? headroom_text(column.headroom) + ": " + column.governing
         : column.governing.empty() ? ""
                                    : "fails: " + column.governing;
}

std::string errors_text(const Report& report) {
  return std::to_string(report.problems.size()) + " in the submittal (listed apart); what they touch is not shown";
}

std::string headroom_text(const std::optional<Decimal>& value) {
  if (!value) {
    return {};
  }
  // Near the limit a whole percent would hide on which side of it the value lies.
  const bool near = *value < Decimal{1} && *value > Decimal{-1};
  return quantity::round_to(*value, near ? Decimal::of("0.01") : Decimal{1}, quantity::Ties::to_even).text() + " %";
}

bool has_row(const TestRow& kind, std::size_t begin, std::size_t end) {
  const auto asked = [](const Cell& cell) { return cell.asked; };
  const auto applies = [](const Cell& cell) { return cell.asked && cell.verdict != Verdict::does_not_apply; };
  const auto at = [&](std::size_t column) { return kind.cells.begin() + static_cast<std::ptrdiff_t>(column); };
  return std::any_of(at(begin), at(end), asked) && std::any_of(kind.cells.begin(), kind.cells.end(), applies);
}

std::vector<Uncompared> uncompared(const Matrix& matrix) {
  Uncompared alone{"Asked for by one specification only", {}};
  Uncompared unshown{"Not shown, so not compared", {}};
  for (const TestRow& kind : matrix.kinds) {
    const auto asked = std::count_if(kind.cells.begin(), kind.cells.end(), [](const Cell& one) { return one.asked; });
    if (asked == 1 && matrix.columns.size() > 1) {
      alone.tests.push_back(kind.label);
    }
    const auto open = std::find_if(kind.cells.begin(), kind.cells.end(),
                                   [](const Cell& cell) { return cell.asked && cell.verdict == Verdict::not_shown; });
    if (open != kind.cells.end()) {
      unshown.tests.push_back(kind.label + " (" + open->why + ")");
    }
  }
  for (const Column& column : matrix.columns) {
    for (const explain::Explanation& finding : column.specification->findings) {
      if (finding.verdict == Verdict::not_shown && finding.comparisons.empty()) {
        unshown.tests.push_back(column.specification->name + " " + finding.number + " " + finding.title + " (" +
                                finding.why + ")");
      }
    }
  }
  std::vector<Uncompared> out;
  for (Uncompared* one : {&alone, &unshown}) {
    if (!one->tests.empty()) {
      out.push_back(std::move(*one));
    }
  }
  return out;
}

std::string matrix_text(const Report& report, std::size_t width) {
  const Matrix found = matrix(report);
  std::string out = heading(report) + "\n" + text_table(columns_table(found), width);
  for (std::size_t at = 0; at < found.columns.size(); at += columns_a_page) {
    const std::size_t end = std::min(at + columns_a_page, found.columns.size());
    out += "\n" + text_table(kinds_table(found, at, end), width);
  }
  out += "\n" + legend(found, columns_a_page);
  for (const Uncompared& one : uncompared(found)) {
    out += one.why + ":\n";
    for (const std::string& test : one.tests) {
      out += folded_line(test, 4, width).substr(2);  // further lines stand further in
    }
  }
  return out + closing_text(report.origin);
}

std::string matrix_markdown(const Report& report) {
  const Matrix found = matrix(report);
  std::string apart;
  for (const Uncompared& one : uncompared(found)) {
    apart += "\n" + one.why + ":\n\n";
    for (const std::string& test : one.tests) {
      apart += "- " + markdown_text(test) + "\n";
    }
  }
  return "# " + markdown_cell(report.submittal) + " against " + std::to_string(found.columns.size()) +
         " specifications\n\n" + remarks(report) + markdown_table(columns_table(found)) + "\n" +
         markdown_table(kinds_table(found, 0, found.columns.size())) + "\n" + legend(found, found.columns.size()) +
         apart + "\n" + closing_markdown(report.origin);
}

}  // namespace plumbrule::report
