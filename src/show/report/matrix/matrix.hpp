#pragma once
// One submittal against many specifications: what each of them demands of each test, side by side.

#include <string>
#include <vector>

#include "show/report/review/report.hpp"

namespace plumbrule::report {

struct Cell {
  explain::Verdict verdict = explain::Verdict::does_not_apply;
  bool asked = false;                                            // the specification asks for this test
  bool other_way = false;                                        // the clause complies by another of its alternatives
  explain::Verdict this_way = explain::Verdict::does_not_apply;  // then of the alternative of this test, else `verdict`
  std::string clause, limit, value;
  std::optional<quantity::Decimal> headroom;  // percent of the limit
  std::string why;                            // for not shown
};

/// A test under its conditions.
struct TestRow {
  std::string subject, label;
  std::vector<Cell> cells;  // one for each column
};

struct Column {
  std::string label;  // name, its amendments, and the edition where two have one name
  const SpecificationReport* specification = nullptr;
  bool fails = false;     // a clause that decides fails
  std::string governing;  // of the clauses that fail, if one does, else of all: the one with the least headroom; of
                          // those that fail without a number the first
  std::optional<quantity::Decimal> headroom;
  std::size_t counts[4] = {0, 0, 0, 0};  // of verdicts, in the order of explain::Verdict
};

/// Columns stand in order: those of a better outcome first, then those with more headroom, and last those of which no
/// clause could be decided; of a clause with several comparisons in one test the worst one is shown.
struct Matrix {
  std::vector<Column> columns;
  std::vector<TestRow> kinds;
};
[[nodiscard]] Matrix matrix(const Report& report);

inline constexpr std::string_view column_order =
    "Best outcome first, then most headroom; last those of which no clause was decided";
inline constexpr std::string_view headroom_meaning =
    "Headroom is the distance to the limit in percent of the limit, negative beyond it; of two ends the smaller share.";
inline constexpr std::string_view other_way_meaning =
    "`met another way`: the clause complies by another of its alternatives, so that this one is not needed.";

inline constexpr std::string_view rows_meaning =
    "A table leaves out the tests that none of its specifications asks for.";

[[nodiscard]] bool any_other_way(const Matrix& matrix);
/// What follows the verdict of a test whose clause complies by another alternative; else nothing.
[[nodiscard]] std::string way_text(const Cell& cell);
/// What follows the verdict of a cell: that, or the headroom.
[[nodiscard]] std::string standing_text(const Cell& cell);
/// The clause that governs, with its headroom if it has one.
[[nodiscard]] std::string room_text(const Column& column);
/// How many errors the submittal has.
[[nodiscard]] std::string errors_text(const Report& report);
/// "-7 %", with two decimals near the limit; empty if it cannot be told.
[[nodiscard]] std::string headroom_text(const std::optional<quantity::Decimal>& headroom);
/// Why tests are not compared, and which.
struct Uncompared {
  std::string why;
  std::vector<std::string> tests;
};
/// The tests that one specification asks for and no other does, and those that cannot be judged. None is empty.
[[nodiscard]] std::vector<Uncompared> uncompared(const Matrix& matrix);
/// The specifications from `begin` up to `end` stand in one table; the test has a row if one of them asks for it.
[[nodiscard]] bool has_row(const TestRow& kind, std::size_t begin, std::size_t end);

[[nodiscard]] std::string matrix_text(const Report& report, std::size_t width);
[[nodiscard]] std::string matrix_markdown(const Report& report);
[[nodiscard]] std::string matrix_html(const Report& report);
[[nodiscard]] std::string matrix_json(const Report& report);

}  // namespace plumbrule::report
