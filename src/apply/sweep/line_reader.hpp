#pragma once
// The quick reading of one line of an archive into cells. What it does not take, the full reader of the evidence stage
// reads (with simdjson, if it is JSON), and says what is wrong with it; so it may give up on whatever is out of the
// ordinary, but what it takes means the same to the full reader.

#include <string_view>
#include <vector>

#include "apply/sweep/cell.hpp"
#include "apply/sweep/columns.hpp"

namespace plumbrule::sweep {

class LineReader {
 public:
  /// One flat JSON record in printable ASCII without escapes: names of columns with texts, short numbers or null. Cells
  /// of columns that it does not name are absent. False: not taken.
  /// The texts of cells point into the line.
  [[nodiscard]] bool read_json(std::string_view line, const Columns& columns, std::vector<Cell>& cells);

  /// One row of a sheet with as many cells as there are columns; none in quotes.
  [[nodiscard]] static bool read_row(std::string_view line, const Columns& columns, std::vector<Cell>& cells);

 private:
  std::vector<std::uint32_t> seen_;  // by column: the number of the record in which it was met last
  std::uint32_t record_ = 0;
};

}  // namespace plumbrule::sweep
