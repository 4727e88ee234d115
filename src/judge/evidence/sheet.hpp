#pragma once
// Flat records: one mix a row, what each value is stands in the headings (language.md, section 17). The rows of a CSV
// file and JSON objects whose names are headings are made into the same tree that a nested submittal gives.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "judge/evidence/document.hpp"

namespace plumbrule::evidence {

/// One cell: what it says, and where it is written, quotes included. `given`: something is stated in it.
struct Cell {
  std::string text;
  source::Span span;
  bool given = true;
};

/// Splits one line of a CSV file (RFC 4180, with commas; blanks around a cell do not count) that stands in its file
/// behind `offset` bytes; a line end at its end does not count. Nothing, and a diagnostic, for a quote that is not
/// closed on the line, a quote inside a cell without quotes, and text behind a closing quote. Control characters and
/// bytes that are not UTF-8 are the reader's business (text_of_file).
[[nodiscard]] std::optional<std::vector<Cell>> split_row(std::string_view line, source::FileId file,
                                                         std::uint32_t offset, diagnose::Diagnostics& diagnostics);

/// The headings of a sheet, read once for all of its rows.
class Headings {
 public:
  struct Plan;
  explicit Headings(std::shared_ptr<const Plan> plan) : plan_(std::move(plan)) {}
  [[nodiscard]] const Plan& plan() const { return *plan_; }
  [[nodiscard]] std::size_t size() const;

 private:
  std::shared_ptr<const Plan> plan_;
};

/// Nothing, and a diagnostic for each fault, if a heading cannot be read, stands twice, or says a unit that is not
/// known.
[[nodiscard]] std::optional<Headings> read_headings(const std::vector<Cell>& cells, diagnose::Diagnostics& diagnostics);

/// The submittal of one row. A cell that is not given states nothing. The span of a scalar is its cell, that of a name
/// its part of the heading, that of a list or map reaches over the given cells; of the submittal it is `row`. Nothing,
/// and a diagnostic, if there are too few or too many cells, nothing is stated, or a cell holds a unit of its own under
/// a heading that has one. Time in proportion to the number of cells.
[[nodiscard]] std::optional<Node> submittal_of(const Headings& headings, const std::vector<Cell>& cells,
                                               const source::Span& row, diagnose::Diagnostics& diagnostics);

/// A record of a sheet: its line without the line end, and the cells of it.
struct SheetRow {
  source::Span span;
  std::vector<Cell> cells;
};
struct SheetFile {
  Headings headings;
  std::vector<SheetRow> rows;
};

/// Reads a whole CSV file: a line of headings, then a record a line; empty lines do not count. Nothing, and a
/// diagnostic, for a text that no submittal may have (read_yaml), a file without headings or records, headings that
/// cannot be read, and lines that cannot be split.
[[nodiscard]] std::optional<SheetFile> read_sheet(const source::SourceMap& sources, source::FileId file,
                                                  diagnose::Diagnostics& diagnostics);

/// Whether a tree is a flat record: a map without the name `submittal` and without lists or maps in it.
[[nodiscard]] bool is_flat(const Node& map);

/// A flat record as the cells of a sheet of its own: the names, and the values.
struct FlatRecord {
  std::vector<Cell> headings, cells;
};
[[nodiscard]] FlatRecord flat_record(const Node& flat);

/// The submittal of a flat record.
[[nodiscard]] std::optional<Node> submittal_of(const Node& flat, diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::evidence
