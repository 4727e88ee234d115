#include "judge/evidence/document.hpp"

#include <algorithm>

namespace plumbrule::evidence {

const Node* Node::find(std::string_view key) const {
  const auto at = std::find_if(entries.begin(), entries.end(), [&](const Entry& entry) { return entry.key == key; });
  return at == entries.end() ? nullptr : &at->value;
}

}  // namespace plumbrule::evidence
