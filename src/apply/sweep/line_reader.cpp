#include "apply/sweep/line_reader.hpp"

#include <algorithm>
#include <cstring>

namespace plumbrule::sweep {
namespace {

constexpr std::uint32_t no_column = UINT32_MAX;

// Printable ASCII, no escape and no quote: what every reader takes as it stands.
bool plain(char byte) { return byte >= ' ' && byte < '\x7f' && byte != '\\' && byte != '"'; }

bool plain(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char byte) { return plain(byte); });
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t' || text.back() == '\r')) {
    text.remove_suffix(1);
  }
  text.remove_prefix(std::min(text.find_first_not_of(" \t"), text.size()));
  return text;
}

// Walks over one line. Every function gives false, no_column, or an empty text, as soon as something else stands there.
// Numbers come back bare and not as std::optional: written in two parts and read as one, it makes the processor wait,
// which was a third of the reading.
class Walk {
 public:
  explicit Walk(std::string_view line) : at_(line.data()), end_(line.data() + line.size()) {}

  bool take(char byte) {
    skip_blanks();
    if (at_ == end_ || *at_ != byte) {
      return false;
    }
    ++at_;
    return true;
  }

  // A name and the colon behind it, as its column: most often the one after the last.
  std::uint32_t name(const Columns& columns, std::size_t expected) {
    if (!take('"')) {
      return no_column;
    }
    if (expected < columns.size()) {
      const std::string& likely = columns.name(expected);
      if (static_cast<std::size_t>(end_ - at_) > likely.size() && at_[likely.size()] == '"' &&
          std::memcmp(at_, likely.data(), likely.size()) == 0) {
        at_ += likely.size() + 1;
        return take(':') ? static_cast<std::uint32_t>(expected) : no_column;
      }
    }
    const auto text = rest_of_text();
    if (!text || !take(':')) {
      return no_column;
    }
    return columns.find(*text).value_or(no_column);
  }

  bool value(Cell& out) {
    skip_blanks();
    if (at_ == end_) {
      return false;
    }
    if (*at_ == '"') {
      ++at_;
      const auto text = rest_of_text();
      out = {CellKind::text, {}, text.value_or(std::string_view{})};
      return text && !text->empty() && text->front() != ' ' && text->back() != ' ';  // blanks there are read in full
    }
    const char* const begin = at_;
    if (*at_ == 'n') {
      at_ += std::min<std::ptrdiff_t>(end_ - at_, 4);
      out = {};
      return std::string_view(begin, at_) == "null";
    }
    if (!take_short(at_, end_, out.number)) {  // what stands behind it is a comma, a brace, or an error
      return false;
    }
    out.kind = CellKind::number;
    out.text = {begin, at_};
    return true;
  }

  bool at_end() {
    skip_blanks();
    return at_ == end_;
  }

 private:
  const char* at_;
  const char* end_;

  void skip_blanks() {
    while (at_ != end_ && (*at_ == ' ' || *at_ == '\t' || *at_ == '\r')) {
      ++at_;
    }
  }

  // Up to the closing quote, which is passed over.
  std::optional<std::string_view> rest_of_text() {
    const char* const begin = at_;
    while (at_ != end_ && plain(*at_)) {
      ++at_;
    }
    if (at_ == end_ || *at_ != '"') {
      return std::nullopt;
    }
    return std::string_view(begin, static_cast<std::size_t>(at_++ - begin));
  }
};

}  // namespace

bool LineReader::read_json(std::string_view line, const Columns& columns, std::vector<Cell>& cells) {
  cells.assign(columns.size(), {});
  seen_.resize(columns.size());
  ++record_;
  Walk walk(line);
  if (!walk.take('{')) {
    return false;
  }
  std::size_t expected = 0;
  do {
    const std::uint32_t column = walk.name(columns, expected);
    if (column == no_column || seen_[column] == record_ || !walk.value(cells[column])) {
      return false;
    }
    seen_[column] = record_;
    expected = column + 1;
  } while (walk.take(','));
  return walk.take('}') && walk.at_end();
}

bool LineReader::read_row(std::string_view line, const Columns& columns, std::vector<Cell>& cells) {
  cells.assign(columns.size(), {});
  bool given = false;
  for (std::size_t column = 0; column < columns.size(); ++column) {
    const bool last = column + 1 == columns.size();
    const std::size_t comma = std::min(line.find(','), line.size());
    if (last != (comma == line.size())) {
      return false;
    }
    const std::string_view text = trimmed(line.substr(0, comma));
    line.remove_prefix(std::min(comma + 1, line.size()));
    if (text.empty()) {
      continue;
    }
    given = true;
    const auto number = read_short(text);
    cells[column] = {number ? CellKind::number : CellKind::text, number.value_or(ShortNumber{}), text};
    if (!plain(text)) {
      return false;
    }
  }
  return given;
}

}  // namespace plumbrule::sweep
