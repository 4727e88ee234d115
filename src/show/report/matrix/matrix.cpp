#include "show/report/matrix/matrix.hpp"

#include <algorithm>
#include <array>

#include "base/diagnose/quote.hpp"
#include "show/report/parts/markdown.hpp"
#include "show/report/parts/table.hpp"

namespace plumbrule::report {
namespace {

using explain::Comparison;
using explain::Verdict;
using quantity::Decimal;

int badness(Verdict verdict) {
  constexpr std::array<int, 4> ranks{1, 3, 2, 0};  // complies, fails, not shown, does not apply
  return ranks.at(static_cast<std::size_t>(verdict));
}

bool less_room(const std::optional<Decimal>& one, const std::optional<Decimal>& other) {
  return one && (!other || *one < *other);
}

bool worse(const Cell& one, const Cell& other) {
  return badness(one.verdict) != badness(other.verdict) ? badness(one.verdict) > badness(other.verdict)
                                                        : less_room(one.headroom, other.headroom);
}

class MatrixMaker {
 public:
  explicit MatrixMaker(const Report& report) : report_(report) {}

  Matrix run() {
    for (const SpecificationReport& one : report_.specifications) {
      out_.columns.push_back(column(one));
    }
    for (Column& column : out_.columns) {
      const auto namesakes = std::count_if(out_.columns.begin(), out_.columns.end(), [&](const Column& other) {
        return other.specification->name == column.specification->name;
      });
      if (namesakes > 1) {
        column.label = column.specification->edition + " " + column.label;
      }
    }
    std::stable_sort(out_.columns.begin(), out_.columns.end(), [](const Column& left, const Column& right) {
      const auto outcome = [](const Column& one) {
        return !decided(one)                                                         ? 3
               : one.specification->outcome == evaluate::Outcome::incomplete         ? 1
               : one.specification->outcome == evaluate::Outcome::no_exception_taken ? 0
                                                                                     : 2;
      };
      if (outcome(left) != outcome(right)) {
        return outcome(left) < outcome(right);
      }
      // One without a headroom has none that could be compared, and stands behind.
      return left.headroom && (!right.headroom || *right.headroom < *left.headroom);
    });
    for (std::size_t at = 0; at < out_.columns.size(); ++at) {
      for (const explain::Explanation& finding : out_.columns[at].specification->findings) {
        for (const Comparison& comparison : finding.comparisons) {
          add(at, finding, comparison);
        }
      }
    }
    return std::move(out_);
  }

 private:
  const Report& report_;
  Matrix out_;

  // Whether any clause was decided. Where nothing was, the outcome is no better than one that fails.
  static bool decided(const Column& one) {
    return one.counts[static_cast<std::size_t>(Verdict::complies)] > 0 ||
           one.counts[static_cast<std::size_t>(Verdict::fails)] > 0;
  }

  static Column column(const SpecificationReport& one) {
    Column out;
    out.specification = &one;
    out.label = one.name;
    for (const std::string& amendment : one.amendments) {
      out.label += " + " + amendment;
    }
    const auto fails = [](const explain::Explanation& finding) {
      return finding.verdict == Verdict::fails && finding.severity != check::Severity::advise;
    };
    out.fails = std::any_of(one.findings.begin(), one.findings.end(), fails);
    for (const explain::Explanation& finding : one.findings) {
      ++out.counts[static_cast<std::size_t>(finding.verdict)];
      // Where a clause fails, one that complies governs nothing.
      if (finding.severity != check::Severity::advise && (!out.fails || fails(finding))) {
        govern(finding, out);
      }
    }
    return out;
  }

  static void govern(const explain::Explanation& finding, Column& out) {
    const Comparison* failing = nullptr;
    for (const Comparison& comparison : finding.comparisons) {
      // Of alternatives one that complies is enough: what the others lack does not govern.
      if (comparison.verdict != finding.verdict) {
        continue;
      }
      failing = failing == nullptr ? &comparison : failing;
      if (less_room(comparison.headroom, out.headroom)) {
        out.headroom = comparison.headroom;
        out.governing = finding.number + " " + comparison.label;
      }
    }
    // A word, or a rule on consecutive sieves, fails without a number.
    if (out.fails && out.governing.empty()) {
      out.governing = finding.number + " " + (failing == nullptr ? finding.title : failing->label);
    }
  }

  void add(std::size_t at, const explain::Explanation& finding, const Comparison& comparison) {
    const bool advice = finding.severity == check::Severity::advise;  // never hides what decides
    const std::string subject = comparison.subject + (advice ? "|advice" : "");
    auto kind =
        std::find_if(out_.kinds.begin(), out_.kinds.end(), [&](const TestRow& one) { return one.subject == subject; });
    if (kind == out_.kinds.end()) {
      kind = out_.kinds.insert(out_.kinds.end(), {subject, comparison.label + (advice ? ", advice only" : ""), {}});
      kind->cells.resize(out_.columns.size());
    }
    // The verdict of the clause counts: of alternatives one is enough.
    const bool other_way = finding.verdict == Verdict::complies && comparison.verdict != Verdict::complies;
    // What fails although no comparison does, such as the rule on consecutive sieves, fails in all of its cells.
    const bool as_a_whole = finding.verdict == Verdict::fails &&
                            std::none_of(finding.comparisons.begin(), finding.comparisons.end(),
                                         [](const Comparison& one) { return one.verdict == Verdict::fails; });
    const Verdict shown = comparison.verdict == Verdict::complies && !as_a_whole ? Verdict::complies : finding.verdict;
    const Cell cell{shown,
                    true,
                    other_way,
                    other_way ? comparison.verdict : shown,
                    finding.number,
                    comparison.limit,
                    comparison.value,
                    other_way || as_a_whole ? std::nullopt : comparison.headroom,
                    comparison.why};
    if (!kind->cells[at].asked || worse(cell, kind->cells[at])) {
      kind->cells[at] = cell;
    }
  }
};

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

Matrix matrix(const Report& report) { return MatrixMaker(report).run(); }

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
