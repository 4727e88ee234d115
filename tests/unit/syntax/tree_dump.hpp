#pragma once
// A syntax tree as text, without the places of its parts: equal texts mean equal rules.

#include <string>

#include "language/syntax/tree.hpp"

namespace plumbrule::test {

[[nodiscard]] std::string dump(const syntax::RuleFile& file);

}  // namespace plumbrule::test
