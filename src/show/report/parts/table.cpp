#include "show/report/parts/table.hpp"

#include <algorithm>

#include "base/diagnose/quote.hpp"

namespace plumbrule::report {
namespace {

constexpr std::size_t narrowest = 12;

std::size_t characters(const std::string& text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }));
}

std::string padded(const std::string& text, std::size_t width) {
  const std::size_t used = characters(text);
  return used < width ? text + std::string(width - used, ' ') : text;
}

// Lines of at most `width` characters, broken between words; a longer word stands alone.
std::vector<std::string> folded(const std::string& text, std::size_t width) {
  std::vector<std::string> out{""};
  std::size_t from = 0;
  while (from <= text.size()) {
    const std::size_t to = std::min(text.find(' ', from), text.size());
    const std::string word = text.substr(from, to - from);
    if (!out.back().empty() && characters(out.back()) + 1 + characters(word) > width) {
      out.emplace_back();
    }
    out.back() += (out.back().empty() ? "" : " ") + word;
    from = to + 1;
  }
  return out;
}

std::vector<std::size_t> widths_of(const TableView& table, std::size_t width) {
  std::vector<std::size_t> out;
  for (const std::string& head : table.heads) {
    out.push_back(characters(head));
  }
  for (const auto& row : table.rows) {
    for (std::size_t at = 0; row.size() == out.size() && at < out.size(); ++at) {
      out[at] = std::max(out[at], characters(row[at]));
    }
  }
  const auto total = [&] {
    std::size_t sum = 2 * (out.size() - 1);
    for (const std::size_t one : out) {
      sum += one;
    }
    return sum;
  };
  while (total() > width) {
    const auto widest = std::max_element(out.begin(), out.end());
    if (*widest <= narrowest) {
      break;
    }
    --*widest;
  }
  return out;
}

std::string line(const std::vector<std::string>& cells, const std::vector<std::size_t>& widths) {
  std::vector<std::vector<std::string>> parts;
  std::size_t height = 1;
  for (std::size_t at = 0; at < cells.size(); ++at) {
    parts.push_back(folded(diagnose::printable(cells[at]), widths[at]));
    height = std::max(height, parts.back().size());
  }
  std::string out;
  for (std::size_t row = 0; row < height; ++row) {
    std::string text;
    for (std::size_t at = 0; at < parts.size(); ++at) {
      text += (at == 0 ? "" : "  ") + padded(row < parts[at].size() ? parts[at][row] : "", widths[at]);
    }
    text.erase(text.find_last_not_of(' ') + 1);
    out += text + "\n";
  }
  return out;
}

}  // namespace

std::string text_table(const TableView& table, std::size_t width) {
  const auto widths = widths_of(table, width);
  std::string out = line(table.heads, widths);
  std::vector<std::string> rules;
  rules.reserve(widths.size());
  for (const std::size_t one : widths) {
    rules.emplace_back(one, '-');
  }
  out += line(rules, widths);
  for (const auto& row : table.rows) {
    out += row.size() == 1 ? "\n" + diagnose::printable(row.front()) + "\n" : line(row, widths);
  }
  return out;
}

std::string markdown_cell(const std::string& text) {
  std::string out;
  for (const char byte : text) {
    if (byte == '|' || byte == '<' || byte == '\\' || byte == '`' || byte == '*' || byte == '_' || byte == '[') {
      out.push_back('\\');
    }
    out.push_back(byte == '\n' ? ' ' : byte);
  }
  return out;
}

std::string folded_line(const std::string& text, std::size_t indent, std::size_t width) {
  std::string out;
  for (const std::string& one : folded(diagnose::printable(text), std::max(width, indent + 20) - indent)) {
    out += std::string(indent, ' ') + one + "\n";
  }
  return out;
}

std::string markdown_table(const TableView& table) {
  const auto row = [](const std::vector<std::string>& cells) {
    std::string out = "|";
    for (const std::string& cell : cells) {
      out += " " + markdown_cell(cell) + " |";
    }
    return out + "\n";
  };
  std::string out = row(table.heads) + "|";
  for (std::size_t at = 0; at < table.heads.size(); ++at) {
    out += " --- |";
  }
  out += "\n";
  for (const auto& cells : table.rows) {
    if (cells.size() == 1) {
      std::vector<std::string> heading(table.heads.size());
      heading.front() = cells.front();
      out += row(heading);
    } else {
      out += row(cells);
    }
  }
  return out;
}

}  // namespace plumbrule::report
