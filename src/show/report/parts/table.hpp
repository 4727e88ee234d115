#pragma once
// A table as plain text or Markdown. Cells are single lines; text tables fold long cells to fit a width.

#include <string>
#include <vector>

namespace plumbrule::report {

struct TableView {
  std::vector<std::string> heads;
  std::vector<std::vector<std::string>> rows;  // as many cells as heads; a row of one cell is a heading
};

/// Columns no wider than they need to be; if the table is wider than `width`, the widest columns fold between words.
[[nodiscard]] std::string text_table(const TableView& table, std::size_t width);
/// A text on lines no longer than `width`, `indent` blanks in front of each; a longer word stands alone.
[[nodiscard]] std::string folded_line(const std::string& text, std::size_t indent, std::size_t width);
[[nodiscard]] std::string markdown_table(const TableView& table);
/// `|` and line ends made harmless inside a Markdown cell.
[[nodiscard]] std::string markdown_cell(const std::string& text);

}  // namespace plumbrule::report
