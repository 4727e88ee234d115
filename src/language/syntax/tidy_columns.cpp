#include <algorithm>

#include "language/syntax/tidy_layout.hpp"

namespace plumbrule::syntax {
namespace {

struct Column {
  std::size_t left = 0;   // of numbers: characters in front of the decimal point
  std::size_t right = 0;  // from the point on
  std::size_t width = 0;  // of other cells
  std::size_t gutter = 0;
  std::size_t start = 0;

  [[nodiscard]] std::size_t full() const { return std::max(width, left + right); }
};
using Columns = std::map<std::size_t, Column>;

std::size_t whole_part(const std::string& number) { return std::min(number.find_first_of(".,:"), number.size()); }

void widen(Column& column, const Cell& cell, const std::string& text) {
  column.gutter = std::max(column.gutter, cell.gutter);
  if (cell.number) {
    const std::size_t whole = whole_part(text);
    column.left = std::max(column.left, whole);
    column.right = std::max(column.right, text.size() - whole);
  } else if (!cell.loose) {
    column.width = std::max(column.width, width_of(text));
  }
}

Columns measure(const std::vector<Token>& tokens, std::span<const Line* const> rows) {
  Columns columns;
  for (const Line* row : rows) {
    for (const Cell& cell : row->cells) {
      widen(columns[cell.column], cell, joined(tokens, cell.range));
    }
  }
  std::size_t end = 0;
  for (auto& [number, column] : columns) {
    column.start = number == columns.begin()->first ? 0 : end + column.gutter;
    end = column.start + column.full();
  }
  return columns;
}

std::string row_text(const std::vector<Token>& tokens, const Line& row, const Columns& columns) {
  std::string out(row.indent, ' ');
  std::size_t at = 0;
  bool first = true;
  for (const Cell& cell : row.cells) {
    const Column& column = columns.at(cell.column);
    const std::string text = joined(tokens, cell.range);
    std::size_t start = first ? column.start : std::max(column.start, at + cell.gutter);
    start += cell.number ? column.left - whole_part(text) : 0;
    out += std::string(start - at, ' ') + text;
    at = start + width_of(text);
    first = false;
  }
  return out;
}

}  // namespace

std::size_t width_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }));
}

std::string_view between(const Token& before, const Token& after) {
  const auto mark = [](const Token& token, char byte) {
    return token.kind == TokenKind::mark && token.text.front() == byte;
  };
  const bool closes = mark(after, ',') || mark(after, ':') || mark(after, ')');
  const bool call = mark(after, '(') && before.kind == TokenKind::name;
  return closes || call || mark(before, '(') ? "" : " ";
}

std::string joined(const std::vector<Token>& tokens, Range range) {
  std::string out;
  for (std::size_t at = range.first; at < range.last; ++at) {
    if (at > range.first) {
      out += between(tokens[at - 1], tokens[at]);
    }
    out += tokens[at].text;
  }
  return out;
}

bool clean(const std::vector<Token>& tokens, Range range) {
  for (std::size_t at = range.first + 1; at < range.last; ++at) {
    if (!tokens[at].above.empty() || !tokens[at - 1].beside.empty()) {
      return false;
    }
  }
  return true;
}

std::vector<std::string> in_columns(const std::vector<Token>& tokens, std::span<const Line* const> rows) {
  const Columns columns = measure(tokens, rows);
  std::vector<std::string> out;
  for (const Line* row : rows) {
    out.push_back(row_text(tokens, *row, columns));
  }
  return out;
}

namespace {

class Blocks {
 public:
  Blocks(const std::vector<Token>& tokens, const std::vector<Line>& lines) : tokens_(tokens), lines_(lines) {}

  std::map<std::size_t, Row> run() {
    std::map<std::size_t, std::vector<std::size_t>> blocks;
    for (std::size_t index = 0; index < lines_.size(); ++index) {
      if (!lines_[index].cells.empty() && clean(tokens_, lines_[index].range)) {
        blocks[lines_[index].block].push_back(index);
      }
    }
    for (auto& [number, block] : blocks) {
      lay(block);
    }
    return std::move(rows_);
  }

 private:
  const std::vector<Token>& tokens_;
  const std::vector<Line>& lines_;
  std::map<std::size_t, Row> rows_;

  // Rows that are too long leave the block; the others do not need their columns.
  void lay(std::vector<std::size_t>& block) {
    std::vector<std::string> texts = layout(block);
    std::vector<std::size_t> fitting;
    for (std::size_t at = 0; at < block.size(); ++at) {
      if (width_of(texts[at]) <= lines_[block[at]].width) {
        fitting.push_back(block[at]);
      }
    }
    if (fitting.empty() || (fitting.size() == 1 && !lines_[fitting.front()].alone)) {
      return;
    }
    texts = layout(fitting);
    std::size_t comment = 0;
    for (std::size_t at = 0; at < fitting.size(); ++at) {
      const bool commented = !tokens_[lines_[fitting[at]].range.last - 1].beside.empty();
      comment = commented ? std::max(comment, width_of(texts[at]) + comment_gap) : comment;
    }
    for (std::size_t at = 0; at < fitting.size(); ++at) {
      rows_[fitting[at]] = {std::move(texts[at]), comment};
    }
  }

  [[nodiscard]] std::vector<std::string> layout(const std::vector<std::size_t>& block) const {
    std::vector<const Line*> rows;
    rows.reserve(block.size());
    for (const std::size_t index : block) {
      rows.push_back(&lines_[index]);
    }
    return in_columns(tokens_, rows);
  }
};

}  // namespace

std::map<std::size_t, Row> rows_of(const std::vector<Token>& tokens, const std::vector<Line>& lines) {
  return Blocks(tokens, lines).run();
}

}  // namespace plumbrule::syntax
