#pragma once
// The concrete tree between the grammar and the syntax tree. Only parse.cpp (which alone includes PEGTL) makes it;
// only the builder reads it.

#include <vector>

#include "base/diagnose/diagnostic.hpp"
#include "base/source/source.hpp"
#include "grammar/kinds.hpp"

namespace plumbrule::syntax {

using grammar::Kind;

struct Branch {
  Kind kind{};
  source::Span span;
  std::vector<Branch> children;
};

/// The deepest nesting of brackets that is read, and the most errors reported for one file.
inline constexpr int deepest_brackets = 64;
inline constexpr std::size_t most_errors = 2000;

/// The items of a file in order, `broken` branches among them. Never throws.
[[nodiscard]] std::vector<Branch> parse_branches(const source::SourceMap& sources, source::FileId file,
                                                 diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::syntax
