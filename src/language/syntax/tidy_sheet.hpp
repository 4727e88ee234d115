#pragma once
// The lines of a plan while it is made, and how branches are found among the tokens. Internal to tidy.

#include "language/syntax/tidy_layout.hpp"

namespace plumbrule::syntax {

/// An item, a clause, a row or an alternative, from its first token to the next one's.
struct Part {
  const Branch* branch = nullptr;
  Range range;
};

class Sheet {
 public:
  explicit Sheet(const std::vector<Token>& tokens) : tokens_(tokens) {}

  [[nodiscard]] const std::vector<Token>& tokens() const { return tokens_; }
  [[nodiscard]] std::string_view word(Range range) const { return tokens_[range.first].text; }
  /// All tokens but the end.
  [[nodiscard]] Range whole() const { return {0, tokens_.size() - 1}; }
  /// A blank line stands above the token or among its comments.
  [[nodiscard]] bool blank_above(std::size_t token) const;

  /// Those of the branches that are wanted; the last one reaches to the end of the range.
  template <typename Wanted>
  [[nodiscard]] std::vector<Part> parts(std::span<const Branch> branches, Range range, Wanted wanted) const {
    std::vector<Part> out;
    for (const Branch& branch : branches) {
      if (wanted(branch)) {
        const std::size_t first = token_at(branch.span.begin);
        if (!out.empty()) {
          out.back().range.last = first;
        }
        out.push_back({&branch, {first, range.last}});
      }
    }
    return out;
  }
  /// The clauses and rows of an item. The `by` and `in` of a table belong to its head.
  [[nodiscard]] std::vector<Part> clauses(const Branch& item, Range range) const;
  /// The tokens of an item in front of its clauses.
  [[nodiscard]] static Range head(Range range, const std::vector<Part>& clauses) {
    return {range.first, clauses.empty() ? range.last : clauses.front().range.first};
  }

  Line& line(Range range, std::size_t indent, Blank blank);
  /// A row of the block that was begun last.
  Line& row(Range range, std::size_t indent, Blank blank, std::vector<Cell> cells);
  std::size_t begin_block() { return ++block_; }
  std::vector<Line>& lines() { return lines_; }

 private:
  const std::vector<Token>& tokens_;
  std::vector<Line> lines_;
  std::size_t block_ = 0;

  [[nodiscard]] std::size_t token_at(std::uint32_t offset) const;
};

// tidy_clauses.cpp
/// The clauses of an item, which is told by its word.
void lay_clauses(Sheet& sheet, const std::vector<Part>& clauses, std::string_view item, std::size_t indent);

}  // namespace plumbrule::syntax
