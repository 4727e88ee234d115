#include <algorithm>

#include "language/syntax/tidy_layout.hpp"

namespace plumbrule::syntax {
namespace {

using Tokens = std::vector<Token>;

// The first token of a range that is one of the words, or the end of the range.
std::size_t find_word(const Tokens& tokens, Range range, std::initializer_list<std::string_view> words) {
  for (std::size_t at = range.first; at < range.last; ++at) {
    if (std::any_of(words.begin(), words.end(), [&](std::string_view word) { return tokens[at].is(word); })) {
      return at;
    }
  }
  return range.last;
}

// Cells one behind the other, empty ones left out.
class Cells {
 public:
  explicit Cells(std::size_t at, std::size_t column = 0) : at_(at), column_(column) {}

  void to(std::size_t end, std::size_t gutter = 1, bool number = false) {
    put(column_, {{at_, end}, column_, gutter, number, false});
    ++column_;
  }
  void put(std::size_t column, Cell cell) {
    cell.column = column;
    if (cell.range.first < cell.range.last) {
      cells_.push_back(cell);
      at_ = cell.range.last;
    }
  }
  [[nodiscard]] std::size_t at() const { return at_; }
  std::vector<Cell> take() { return std::move(cells_); }

 private:
  std::size_t at_;
  std::size_t column_;
  std::vector<Cell> cells_;
};

std::size_t end_of_texts(const Tokens& tokens, Range range) {
  std::size_t at = range.first;
  while (at < range.last && tokens[at].kind == TokenKind::text) {
    ++at;
  }
  return at;
}

}  // namespace

std::vector<Cell> short_item_cells(const Tokens& tokens, Range range) {
  const bool term = tokens[range.first].is("term");
  Cells cells(range.first);
  cells.to(range.first + 1);
  cells.to(range.first + 2);
  std::size_t title = end_of_texts(tokens, {cells.at(), range.last});
  title += title < range.last && tokens[title].text == ":" ? 1 : 0;
  cells.to(title);
  cells.to(range.last, term ? 1 : 2);
  return cells.take();
}

std::vector<Cell> table_cells(const Tokens& tokens, Range range, bool by_value) {
  constexpr std::size_t value_column = 3;
  const std::size_t value = range.last - 1;
  std::size_t number = range.first;  // the first one: of the edge, or the value
  while (number < value && tokens[number].kind != TokenKind::number) {
    ++number;
  }
  const bool plain = number < value && tokens[number + 1].text == ":";
  Cells cells(range.first);
  cells.put(0, {{range.first, number}, 0, 1, false, by_value && number == value});  // `otherwise:` widens no column
  cells.put(1, {{number, number == value ? value : number + (plain ? 2 : 1)}, 1, 1, true, false});
  cells.put(2, {{cells.at(), value}, 2, 1, false, false});
  cells.put(value_column, {{value, range.last}, value_column, 1, true, false});
  return cells.take();
}

namespace {

constexpr std::size_t first_tolerance = 7;

// Number and unit, each in a column.
void band_end(const Tokens& tokens, Cells& cells, Range range, std::size_t gutter) {
  const bool number = range.first < range.last && tokens[range.first].kind == TokenKind::number;
  cells.to(number ? range.first + 1 : range.first, gutter, number);
  cells.to(range.last);
}

// The column of a tolerance: that of its name, but behind the tolerances of this row so far.
std::size_t tolerance_column(const std::string& name, std::size_t from, std::vector<std::string>& known) {
  const auto begin = known.begin() + static_cast<std::ptrdiff_t>(from);
  const auto found = std::find(begin, known.end(), name);
  const auto place = static_cast<std::size_t>(found - known.begin());
  if (found == known.end()) {
    known.push_back(name);
  }
  return place;
}

}  // namespace

std::vector<Cell> grading_cells(const Tokens& tokens, Range range, std::vector<std::string>& tolerances) {
  const auto next_tolerance = [&](std::size_t from) {
    return find_word(tokens, {from, range.last}, {"job", "stockpile"});
  };
  Cells cells(range.first);
  cells.to(range.first + 1);
  const bool with_unit = tokens[range.first + 1].kind == TokenKind::number;
  cells.to(range.first + (with_unit ? 3 : 2));
  const std::size_t end = next_tolerance(cells.at());
  const std::size_t to = find_word(tokens, {cells.at(), end}, {"to"});
  if (tokens[cells.at()].is("no")) {
    cells.put(2, {{cells.at(), end}, 2, 2, false, true});
  } else {
    band_end(tokens, cells, {cells.at(), to}, 2);
    cells.to(std::min(to + 1, end));
    band_end(tokens, cells, {cells.at(), end}, 1);
  }
  std::size_t from = 0;
  while (cells.at() < range.last) {
    const std::size_t last = next_tolerance(cells.at() + 1);
    const std::size_t place = tolerance_column(tokens[cells.at()].text, from, tolerances);
    cells.put(first_tolerance + place, {{cells.at(), last}, 0, 2, false, false});
    from = place + 1;
  }
  return cells.take();
}

std::vector<Cell> alternative_cells(const Tokens& tokens, Range range, const Branch& assertion) {
  const auto token_at = [&](std::uint32_t offset) {
    const auto from = tokens.begin() + static_cast<std::ptrdiff_t>(range.first);
    const auto to = tokens.begin() + static_cast<std::ptrdiff_t>(range.last);
    const auto found =
        std::lower_bound(from, to, offset, [](const Token& token, std::uint32_t at) { return token.begin < at; });
    return static_cast<std::size_t>(found - tokens.begin());
  };
  const std::size_t shall = find_word(tokens, range, {"shall"});
  std::size_t conditions = shall;
  std::size_t statistic = shall;
  for (const Branch& part : assertion.children) {
    conditions = part.kind == Kind::conditions ? token_at(part.span.begin) : conditions;
    statistic = part.kind == Kind::statistic ? token_at(part.span.begin) : statistic;
  }
  conditions = std::min(conditions, statistic);
  Cells cells(range.first);
  for (const std::size_t end : {range.first + 1, conditions, statistic, shall, range.last}) {
    cells.to(end);
  }
  return cells.take();
}

namespace {

// given | name | value | conditions | lot
struct GivenParts {
  std::size_t name = 0;
  std::size_t value = 0;
  std::size_t conditions = 0;
  std::size_t lot = 0;
  std::size_t end = 0;
};

GivenParts given_parts(const Tokens& tokens, Range range) {
  GivenParts out{range.first + 1, range.first + 1, range.last, range.last, range.last};
  while (tokens[out.value].kind == TokenKind::word) {  // job mix
    ++out.value;
  }
  ++out.value;
  for (std::size_t at = out.value; at + 1 < range.last; ++at) {
    if (tokens[at].is("in") && tokens[at + 1].is("lot")) {
      out.lot = at;
    }
  }
  out.conditions = find_word(tokens, {out.value, out.lot}, {"under"});
  return out;
}

// A number, with the comma that follows it at once.
std::size_t number_end(const Tokens& tokens, std::size_t at, std::size_t end) {
  return at + 1 < end && tokens[at + 1].text == "," ? at + 2 : at + 1;
}

struct Stretch {
  std::size_t end = 0;
  bool number = false;
};

// A value as numbers and what stands between them.
std::vector<Stretch> stretches(const Tokens& tokens, Range value) {
  std::vector<Stretch> out;
  for (std::size_t at = value.first; at < value.last;) {
    const bool number = tokens[at].kind == TokenKind::number;
    std::size_t end = number ? number_end(tokens, at, value.last) : at + 1;
    while (!number && end < value.last && tokens[end].kind != TokenKind::number) {
      ++end;
    }
    out.push_back({end, number});
    at = end;
  }
  return out;
}

bool alike(const std::vector<std::vector<Stretch>>& values) {
  return std::all_of(values.begin(), values.end(), [&](const std::vector<Stretch>& value) {
    return std::equal(value.begin(), value.end(), values.front().begin(), values.front().end(),
                      [](const Stretch& a, const Stretch& b) { return a.number == b.number; });
  });
}

constexpr std::size_t behind_value = 90;  // more columns than a value has in a line

}  // namespace

char given_shape(const Tokens& tokens, Range range) {
  const GivenParts parts = given_parts(tokens, range);
  if (tokens[parts.value].is("from")) {
    return 'r';
  }
  if (parts.conditions < parts.lot) {
    return 'c';
  }
  return tokens[parts.value].kind == TokenKind::name ? 'w' : 'q';
}

std::vector<std::vector<Cell>> given_cells(const Tokens& tokens, std::span<const Range> clauses, std::size_t base) {
  std::vector<std::vector<Stretch>> values;
  for (const Range& clause : clauses) {
    const GivenParts parts = given_parts(tokens, clause);
    values.push_back(stretches(tokens, {parts.value, parts.conditions}));
    values.back().resize(std::min<std::size_t>(values.back().size(), behind_value - 2));
    values.back().back().end = parts.conditions;
  }
  const bool split = alike(values);
  std::vector<std::vector<Cell>> out;
  for (std::size_t index = 0; index < clauses.size(); ++index) {
    const GivenParts parts = given_parts(tokens, clauses[index]);
    Cells cells(clauses[index].first, base);
    cells.to(parts.name);
    cells.to(parts.value);
    for (const Stretch& stretch : values[index]) {
      if (split) {
        cells.to(stretch.end, 1, stretch.number);
      }
    }
    cells.to(parts.conditions);
    cells.put(base + behind_value, {{cells.at(), parts.lot}, 0, 1, false, false});
    cells.put(base + behind_value + 1, {{cells.at(), parts.end}, 0, 1, false, false});
    out.push_back(cells.take());
  }
  return out;
}

}  // namespace plumbrule::syntax
