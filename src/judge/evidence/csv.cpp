// One line of a CSV file.

#include "base/diagnose/quote.hpp"
#include "judge/evidence/sheet.hpp"
#include "judge/evidence/text_of_file.hpp"

namespace plumbrule::evidence {
namespace {

using diagnose::Code;

class Splitter {
 public:
  Splitter(std::string_view line, source::FileId file, std::uint32_t offset, diagnose::Diagnostics& diagnostics)
      : line_(line), file_(file), offset_(offset), diagnostics_(diagnostics) {}

  std::optional<std::vector<Cell>> run() {
    while (true) {
      skip_blanks();
      if (!(stands('"') ? quoted() : plain())) {
        return std::nullopt;
      }
      if (at_ >= line_.size()) {
        return std::move(cells_);
      }
      ++at_;  // the comma
    }
  }

 private:
  std::string_view line_;
  source::FileId file_;
  std::uint32_t offset_;
  diagnose::Diagnostics& diagnostics_;
  std::vector<Cell> cells_;
  std::size_t at_ = 0;

  [[nodiscard]] bool stands(char byte) const { return at_ < line_.size() && line_[at_] == byte; }
  [[nodiscard]] source::Span span(std::size_t begin, std::size_t end) const {
    return {file_, offset_ + static_cast<std::uint32_t>(begin), offset_ + static_cast<std::uint32_t>(end)};
  }
  void skip_blanks() {
    while (stands(' ') || stands('\t')) {
      ++at_;
    }
  }
  bool error(std::size_t begin, std::size_t end, const std::string& message, const std::string& help) {
    diagnostics_.error(Code::submittal_sheet, span(begin, end), message, help);
    return false;
  }

  bool plain() {
    const std::size_t begin = at_;
    at_ = std::min(line_.find(',', at_), line_.size());
    const std::string_view whole = line_.substr(begin, at_ - begin);
    const std::string_view text = whole.substr(0, whole.find_last_not_of(" \t") + 1);
    if (const std::size_t quote = text.find('"'); quote != std::string_view::npos) {
      return error(begin + quote, begin + quote + 1, "found a quote inside a cell that does not begin with one",
                   "put the whole cell in quotes, and write each quote inside it twice");
    }
    cells_.push_back({std::string(text), span(begin, begin + text.size()), !text.empty()});
    return true;
  }

  bool quoted() {
    const std::size_t begin = at_++;
    std::string text;
    while (true) {
      const std::size_t quote = line_.find('"', at_);
      if (quote == std::string_view::npos) {
        return error(begin, begin + 1, "found a quote that is not closed on its line",
                     "close it; each line is a record of its own, and no cell holds a line break");
      }
      text += line_.substr(at_, quote - at_);
      at_ = quote + 1;
      if (!stands('"')) {
        break;
      }
      text += '"';
      ++at_;
    }
    const std::size_t end = at_;
    skip_blanks();
    if (at_ < line_.size() && line_[at_] != ',') {
      const std::size_t next = std::min(line_.find(',', at_), line_.size());
      return error(at_, next, "found " + diagnose::quoted(line_.substr(at_, next - at_)) + " behind a closing quote",
                   "write a quote inside a cell twice, and a comma between cells");
    }
    const bool given = text.find_first_not_of(" \t") != std::string::npos;
    cells_.push_back({std::move(text), span(begin, end), given});
    return true;
  }
};

}  // namespace

std::optional<std::vector<Cell>> split_row(std::string_view line, source::FileId file, std::uint32_t offset,
                                           diagnose::Diagnostics& diagnostics) {
  while (line.ends_with('\n') || line.ends_with('\r')) {
    line.remove_suffix(1);
  }
  return Splitter(line, file, offset, diagnostics).run();
}

std::optional<SheetFile> read_sheet(const source::SourceMap& sources, source::FileId file,
                                    diagnose::Diagnostics& diagnostics) {
  const auto text = text_of_file(sources, file, Code::submittal_sheet, diagnostics);
  if (!text) {
    return std::nullopt;
  }
  std::vector<SheetRow> rows;
  bool good = true;
  for (std::size_t at = 0; at < text->text.size();) {
    const std::size_t end = std::min(text->text.find('\n', at), text->text.size());
    std::string_view line = text->text.substr(at, end - at);
    line.remove_suffix(line.ends_with('\r') ? 1 : 0);
    if (line.find_first_not_of(" \t\r") != std::string_view::npos) {
      const auto offset = static_cast<std::uint32_t>(text->offset + at);
      auto cells = split_row(line, file, offset, diagnostics);
      good = good && cells;
      rows.push_back({{file, offset, offset + static_cast<std::uint32_t>(line.size())},
                      std::move(cells).value_or(std::vector<Cell>())});
    }
    at = end + 1;
  }
  if (good && rows.size() < 2) {
    diagnostics.error(Code::submittal_sheet, {file, 0, 0}, "found no line of headings with a record below it",
                      "write a line of headings, and a line for each mix");
  }
  auto headings = good && rows.size() > 1 ? read_headings(rows.front().cells, diagnostics) : std::nullopt;
  if (!headings) {
    return std::nullopt;
  }
  rows.erase(rows.begin());
  return SheetFile{std::move(*headings), std::move(rows)};
}

}  // namespace plumbrule::evidence
