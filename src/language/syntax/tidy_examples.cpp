// Examples on one line each, as rows of a block.

#include <algorithm>
#include <set>

#include "language/syntax/tidy_layout.hpp"

namespace plumbrule::syntax {
namespace {

using Tokens = std::vector<Token>;

constexpr std::size_t columns_a_given = 100;
constexpr std::size_t wide_gutter = 2;
constexpr std::size_t standing_out = 20;  // characters more than those of any other title

std::size_t given_count(const ShortExample& example) { return example.clauses.size() - 1; }
std::size_t given_column(std::size_t place) { return columns_a_given * (place + 1); }

// Title, then the clause that it is for.
std::vector<Cell> head_cells(const Tokens& tokens, Range head) {
  std::size_t target = head.last - 1;
  while (target > head.first && !tokens[target].is("for")) {
    --target;
  }
  return {{{head.first, target}, 0, 1, false, false}, {{target, head.last}, 1, 1, false, false}};
}

bool same_shape(const Tokens& tokens, std::span<const Range> clauses) {
  return std::all_of(clauses.begin(), clauses.end(), [&](const Range& clause) {
    return given_shape(tokens, clause) == given_shape(tokens, clauses.front());
  });
}

// `given` clauses at the same place of their examples. What is not alike is one cell.
std::vector<std::vector<Cell>> cells_at(const Tokens& tokens, std::span<const Range> clauses, std::size_t column) {
  std::vector<std::vector<Cell>> out;
  if (same_shape(tokens, clauses)) {
    out = given_cells(tokens, clauses, column);
  } else {
    for (const Range& clause : clauses) {
      out.push_back({{clause, column, 1, false, false}});
    }
  }
  for (std::vector<Cell>& cells : out) {
    cells.front().gutter = wide_gutter;
  }
  return out;
}

/// How a block may be laid.
struct Arrangement {
  std::size_t in_columns = 0;    // so many `given` stand in columns
  std::set<std::size_t> parted;  // examples with so many `given` have `expect` on a line of its own, under the first
  std::size_t widest_title = static_cast<std::size_t>(-1);  // a wider one has a line of its own
};

class Block {
 public:
  Block(const Tokens& tokens, std::span<const ShortExample> examples, std::size_t block)
      : tokens_(tokens), examples_(examples), block_(block), given_(examples.size()) {
    for (const ShortExample& example : examples) {
      most_ = std::max(most_, given_count(example));
    }
    for (std::size_t place = 0; place < most_; ++place) {
      add_given(place);
    }
  }

  // The arrangement that takes the fewest lines.
  [[nodiscard]] std::vector<Line> run() const {
    std::vector<Line> best;
    for (const Arrangement& one :
         {Arrangement{most_, {}}, title_apart(), Arrangement{most_, too_long()}, longest_parted()}) {
      std::vector<Line> lines = arranged(one);
      const auto fit = fits(lines);
      const bool all = std::find(fit.begin(), fit.end(), false) == fit.end();
      if (all && (best.empty() || lines.size() < best.size())) {
        best = std::move(lines);
      }
    }
    return best;
  }

 private:
  const Tokens& tokens_;
  std::span<const ShortExample> examples_;
  std::size_t block_;
  std::size_t most_ = 0;
  std::vector<std::vector<std::vector<Cell>>> given_;  // of each example, at each place

  void add_given(std::size_t place) {
    std::vector<Range> clauses;
    std::vector<std::size_t> owners;
    for (std::size_t index = 0; index < examples_.size(); ++index) {
      if (place < given_count(examples_[index])) {
        clauses.push_back(examples_[index].clauses[place]);
        owners.push_back(index);
      }
    }
    auto cells = cells_at(tokens_, clauses, given_column(place));
    for (std::size_t index = 0; index < owners.size(); ++index) {
      given_[owners[index]].push_back(std::move(cells[index]));
    }
  }

  // Examples that give as much are laid alike.
  [[nodiscard]] std::set<std::size_t> too_long() const {
    std::set<std::size_t> out;
    const auto fit = fits(arranged({most_, {}}));
    for (std::size_t index = 0; index < examples_.size(); ++index) {
      if (!fit[index]) {
        out.insert(given_count(examples_[index]));
      }
    }
    return out;
  }

  // One example that gives more than all others does not push their `expect` to the right.
  [[nodiscard]] Arrangement longest_parted() const {
    std::size_t next = 0;
    std::size_t longest = 0;
    for (const ShortExample& example : examples_) {
      longest += given_count(example) == most_ ? 1 : 0;
      next = given_count(example) < most_ ? std::max(next, given_count(example)) : next;
    }
    return longest == 1 && next > 0 ? Arrangement{next, {most_}} : Arrangement{most_, {}};
  }

  // One title that is much longer than all others does not push everything to the right.
  [[nodiscard]] Arrangement title_apart() const {
    std::vector<std::size_t> widths;
    for (const ShortExample& example : examples_) {
      widths.push_back(width_of(joined(tokens_, head_cells(tokens_, example.head).front().range)));
    }
    std::sort(widths.begin(), widths.end());
    const std::size_t next = widths.size() > 1 ? widths[widths.size() - 2] : widths.back();
    return {most_, {}, next + standing_out};
  }

  [[nodiscard]] std::vector<Line> arranged(const Arrangement& arrangement) const {
    std::vector<Line> out;
    for (std::size_t index = 0; index < examples_.size(); ++index) {
      const ShortExample& example = examples_[index];
      const std::vector<Cell> head = head_cells(tokens_, example.head);
      Line row = line({example.head.first, example.clauses.back().first}, head);
      if (width_of(joined(tokens_, head.front().range)) > arrangement.widest_title) {
        out.push_back(line(head.front().range, {{head.front().range, 0, 1, false, true}}));
        row = line({head.back().range.first, row.range.last}, {head.back()});
        row.blank = Blank::none;
      }
      add_given_cells(row.cells, index, arrangement);
      out.push_back(std::move(row));
      add_expect(out, index, arrangement);
    }
    return out;
  }

  void add_given_cells(std::vector<Cell>& cells, std::size_t index, const Arrangement& arrangement) const {
    for (std::size_t place = 0; place < given_count(examples_[index]); ++place) {
      const std::vector<Cell>& given = given_[index][place];
      if (place < arrangement.in_columns) {
        cells.insert(cells.end(), given.begin(), given.end());
      } else {
        cells.push_back({examples_[index].clauses[place], behind(arrangement), wide_gutter, false, true});
      }
    }
  }

  void add_expect(std::vector<Line>& out, std::size_t index, const Arrangement& arrangement) const {
    const Range expect = examples_[index].clauses.back();
    const std::size_t given = given_count(examples_[index]);
    if (given > 0 && arrangement.parted.contains(given)) {
      out.push_back(line(expect, {{expect, given_column(0), wide_gutter, false, true}}));
      out.back().blank = Blank::none;
    } else {
      out.back().range.last = expect.last;
      out.back().cells.push_back({expect, behind(arrangement), wide_gutter, false, true});
    }
  }

  // The column behind those of `given`.
  static std::size_t behind(const Arrangement& arrangement) { return given_column(arrangement.in_columns) - 1; }

  [[nodiscard]] Line line(Range range, std::vector<Cell> cells) const {
    return {range, 0, Blank::author, 0, row_width, std::move(cells), block_, true};
  }

  [[nodiscard]] std::vector<bool> fits(const std::vector<Line>& lines) const {
    std::vector<const Line*> rows;
    rows.reserve(lines.size());
    for (const Line& one : lines) {
      rows.push_back(&one);
    }
    std::vector<bool> out;
    for (const std::string& text : in_columns(tokens_, rows)) {
      out.push_back(width_of(text) <= row_width);
    }
    return out;
  }
};

}  // namespace

std::vector<Line> example_rows(const Tokens& tokens, std::span<const ShortExample> examples, std::size_t block) {
  return Block(tokens, examples, block).run();
}

}  // namespace plumbrule::syntax
