#pragma once
// One submittal against many specifications: what each of them demands of each test, side by side.

#include <string>
#include <vector>

#include "apply/review/matrix.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {

using review::Cell;
using review::Column;
using review::Matrix;
using review::matrix;
using review::TestRow;

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
