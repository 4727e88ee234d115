#pragma once
// One submittal against many specifications: what each of them demands of each test, side by side, and how they rank.

#include <optional>
#include <string>
#include <vector>

#include "apply/review/report.hpp"

namespace plumbrule::review {

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

}  // namespace plumbrule::review
