// From branches to lines: the items of a file.

#include <algorithm>
#include <array>

#include "language/syntax/tidy_sheet.hpp"

namespace plumbrule::syntax {
namespace {

bool one_line(std::string_view item) {
  return item == "category" || item == "condition" || item == "basis" || item == "term";
}

class Planner {
 public:
  explicit Planner(const std::vector<Token>& tokens) : sheet_(tokens) {}

  std::vector<Line> run(std::span<const Branch> branches) {
    const std::vector<Part> items =
        sheet_.parts(branches, sheet_.whole(), [](const Branch& branch) { return branch.kind == Kind::item; });
    sheet_.line(Sheet::head(sheet_.whole(), items), 0, Blank::author);
    for (std::size_t index = 0; index < items.size();) {
      const std::size_t examples = short_examples(items, index);
      if (examples == 0) {
        item(items[index]);
      }
      index += std::max<std::size_t>(examples, 1);
    }
    return std::move(sheet_.lines());
  }

 private:
  Sheet sheet_;
  std::string_view before_;  // the word of the item before, if that is a line

  void item(const Part& item) {
    const std::string_view word = sheet_.word(item.range);
    if (one_line(word)) {
      short_item(item.range);
      return;
    }
    before_ = {};
    const std::vector<Part> clauses = sheet_.clauses(*item.branch, item.range);
    sheet_.line(Sheet::head(item.range, clauses), 0, Blank::one);
    lay_clauses(sheet_, clauses, word, indent_step);
  }

  void short_item(Range range) {
    const bool next = before_ == sheet_.word(range);
    if (!next || sheet_.blank_above(range.first)) {
      sheet_.begin_block();
    }
    sheet_.row(range, 0, next ? Blank::author : Blank::one, short_item_cells(sheet_.tokens(), range));
    before_ = sheet_.word(range);
  }

  // An example whose first clause stands on the line of its head, and that can be written so.
  [[nodiscard]] std::optional<ShortExample> short_example(const Part& part) const {
    if (sheet_.word(part.range) != "example" || !clean(sheet_.tokens(), part.range)) {
      return std::nullopt;
    }
    const std::vector<Part> inner = sheet_.clauses(*part.branch, part.range);
    if (inner.empty() || sheet_.tokens()[inner.front().range.first].new_line) {
      return std::nullopt;
    }
    ShortExample out{{part.range.first, inner.front().range.first}, {}};
    for (const Part& clause : inner) {
      const bool last = &clause == &inner.back();
      if (!sheet_.tokens()[clause.range.first].is(last ? "expect" : "given")) {
        return std::nullopt;
      }
      out.clauses.push_back(clause.range);
    }
    return out;
  }

  // The short examples from here to the next blank line; how many were laid out in rows.
  std::size_t short_examples(const std::vector<Part>& items, std::size_t index) {
    std::vector<ShortExample> run;
    for (std::size_t at = index; at < items.size() && (at == index || !sheet_.blank_above(items[at].range.first));
         ++at) {
      auto example = short_example(items[at]);
      if (!example) {
        break;
      }
      run.push_back(std::move(*example));
    }
    if (run.empty()) {
      return 0;
    }
    std::vector<Line> rows = example_rows(sheet_.tokens(), run, sheet_.begin_block());
    if (rows.empty()) {
      return explode(items, index, run.size());
    }
    rows.front().blank = before_ == "example" ? Blank::author : Blank::one;
    sheet_.lines().insert(sheet_.lines().end(), std::make_move_iterator(rows.begin()),
                          std::make_move_iterator(rows.end()));
    before_ = "example";
    return run.size();
  }

  // All of them clause by clause, so that examples of one block look alike.
  std::size_t explode(const std::vector<Part>& items, std::size_t index, std::size_t count) {
    for (std::size_t at = index; at < index + count; ++at) {
      item(items[at]);
    }
    return count;
  }
};

}  // namespace

std::vector<Line> plan_lines(const std::vector<Token>& tokens, const std::vector<Branch>& branches) {
  return Planner(tokens).run(branches);
}

}  // namespace plumbrule::syntax
