#pragma once
// The plan of a layout: the lines of a file, as ranges of its tokens, and how lines stand in columns. Internal to
// tidy.

#include <algorithm>
#include <map>
#include <span>
#include <string>
#include <vector>

#include "language/syntax/tidy.hpp"
#include "language/syntax/tidy_tokens.hpp"

namespace plumbrule::syntax {

/// Blanks that a level of clauses stands further in.
inline constexpr std::size_t indent_step = 2;

template <typename Words>
[[nodiscard]] bool holds(const Words& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// Tokens [first, last).
struct Range {
  std::size_t first = 0;
  std::size_t last = 0;
};

/// A part of a line that stands in a column. Columns are numbered in order, with gaps.
struct Cell {
  Range range;
  std::size_t column = 0;
  std::size_t gutter = 1;  // blanks in front of the column
  bool number = false;     // decimal points stand one under the other
  bool loose = false;      // it may reach into columns that its row leaves empty
};

/// Blanks in front of a comment behind code.
inline constexpr std::size_t comment_gap = 2;

/// Blank lines above a line: never, as the author had it, always.
enum class Blank : std::uint8_t { none, author, one };

struct Line {
  Range range;
  std::size_t indent = 0;
  Blank blank = Blank::none;
  std::size_t lead = 0;  // the first token is padded to this width
  std::size_t width = phrase_width;
  std::vector<Cell> cells;  // none: the line is not a row
  std::size_t block = 0;    // rows of one block have common columns
  bool alone = false;       // columns count even if the block has one row
};

// tidy_plan.cpp
/// All tokens but the end, in order, each in one line.
[[nodiscard]] std::vector<Line> plan_lines(const std::vector<Token>& tokens, const std::vector<Branch>& branches);

// tidy_columns.cpp
/// Characters, not bytes.
[[nodiscard]] std::size_t width_of(std::string_view text);
/// The tokens on one line.
[[nodiscard]] std::string joined(const std::vector<Token>& tokens, Range range);
/// What stands between two tokens on one line: a blank or nothing.
[[nodiscard]] std::string_view between(const Token& before, const Token& after);
/// No comment stands between the first and the last token, so that they can stand on one line.
[[nodiscard]] bool clean(const std::vector<Token>& tokens, Range range);
/// The rows of one block in columns, without comments. Precondition: all rows are clean.
[[nodiscard]] std::vector<std::string> in_columns(const std::vector<Token>& tokens, std::span<const Line* const> rows);
/// A row with its indentation, and where the comment behind it begins.
struct Row {
  std::string text;
  std::size_t comment = 0;
};
/// The lines, by index, that stand in columns: those that are rows, have no comment inside and are not too long.
[[nodiscard]] std::map<std::size_t, Row> rows_of(const std::vector<Token>& tokens, const std::vector<Line>& lines);

// tidy_page.cpp
/// The file's text.
[[nodiscard]] std::string print_lines(const std::vector<Token>& tokens, const std::vector<Line>& lines);

// tidy_rows.cpp
/// A category, condition, basis or term.
[[nodiscard]] std::vector<Cell> short_item_cells(const std::vector<Token>& tokens, Range range);
/// A row of a table, by value (edge, number, unit, value) or by category (word, value).
[[nodiscard]] std::vector<Cell> table_cells(const std::vector<Token>& tokens, Range range, bool by_value);
/// `tolerances`: the names met so far in this grading, each of which has its column.
[[nodiscard]] std::vector<Cell> grading_cells(const std::vector<Token>& tokens, Range range,
                                              std::vector<std::string>& tolerances);
/// One alternative of `either`: word, measure, conditions, statistic, demand.
[[nodiscard]] std::vector<Cell> alternative_cells(const std::vector<Token>& tokens, Range range,
                                                  const Branch& assertion);
/// Readings, or a value with or without conditions: only what is alike stands in common columns.
[[nodiscard]] char given_shape(const std::vector<Token>& tokens, Range range);
/// Cells for `given` clauses of one shape, one vector a clause. Columns begin with `base`.
[[nodiscard]] std::vector<std::vector<Cell>> given_cells(const std::vector<Token>& tokens,
                                                         std::span<const Range> clauses, std::size_t base);

// tidy_examples.cpp
/// An example that may stand on one line: its head, then its clauses, the last of them `expect`.
struct ShortExample {
  Range head;
  std::vector<Range> clauses;
};
/// Consecutive examples as rows of one block, with `expect` under `given` if the rows are too long otherwise; nothing
/// if they are too long even so.
[[nodiscard]] std::vector<Line> example_rows(const std::vector<Token>& tokens, std::span<const ShortExample> examples,
                                             std::size_t block);

}  // namespace plumbrule::syntax
