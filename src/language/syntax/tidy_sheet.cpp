#include "language/syntax/tidy_sheet.hpp"

#include <algorithm>

namespace plumbrule::syntax {

bool Sheet::blank_above(std::size_t token) const {
  const std::vector<Comment>& above = tokens_[token].above;
  return tokens_[token].blank_above ||
         std::any_of(above.begin(), above.end(), [](const Comment& comment) { return comment.blank_above; });
}

std::vector<Part> Sheet::clauses(const Branch& item, Range range) const {
  const bool table = word(range) == "table";
  return parts(item.children, range, [&](const Branch& child) {
    const std::string_view first = tokens_[token_at(child.span.begin)].text;
    return child.kind == Kind::row ||
           (child.kind == Kind::clause_group && !(table && (first == "by" || first == "in")));
  });
}

Line& Sheet::line(Range range, std::size_t indent, Blank blank) {
  lines_.push_back({range, indent, blank, 0, phrase_width, {}, 0, false});
  return lines_.back();
}

Line& Sheet::row(Range range, std::size_t indent, Blank blank, std::vector<Cell> cells) {
  Line& out = line(range, indent, blank);
  out.cells = std::move(cells);
  out.block = block_;
  return out;
}

std::size_t Sheet::token_at(std::uint32_t offset) const {
  const auto found = std::lower_bound(tokens_.begin(), tokens_.end(), offset,
                                      [](const Token& token, std::uint32_t at) { return token.begin < at; });
  return static_cast<std::size_t>(found - tokens_.begin());
}

}  // namespace plumbrule::syntax
