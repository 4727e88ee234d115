#include "language/syntax/tidy.hpp"

#include "language/syntax/tidy_layout.hpp"
#include "language/syntax/tree.hpp"

namespace plumbrule::syntax {
namespace {

// The place of the next byte that is no blank, or the end.
std::size_t skip_blanks(std::string_view text, std::size_t at) {
  while (at < text.size() && is_blank(text[at])) {
    ++at;
  }
  return at;
}

}  // namespace

std::optional<std::string> tidy(const source::SourceMap& sources, source::FileId file,
                                diagnose::Diagnostics& diagnostics) {
  diagnose::Diagnostics found;
  const RuleFile rules = parse(sources, file, found);  // all errors, those of the language version among them
  diagnostics.append(found);
  if (found.has_errors()) {
    return std::nullopt;
  }
  const std::vector<Branch> branches = parse_branches(sources, rules.file, found);
  const std::vector<Token> tokens = tokens_of(sources.text(file), branches);
  return print_lines(tokens, plan_lines(tokens, branches));
}

bool same_but_for_blanks(std::string_view a, std::string_view b) {
  std::size_t in_a = skip_blanks(a, 0);
  std::size_t in_b = skip_blanks(b, 0);
  while (in_a < a.size() && in_b < b.size() && a[in_a] == b[in_b]) {
    in_a = skip_blanks(a, in_a + 1);
    in_b = skip_blanks(b, in_b + 1);
  }
  return in_a == a.size() && in_b == b.size();
}

}  // namespace plumbrule::syntax
