#include "apply/sweep/columns.hpp"

namespace plumbrule::sweep {

std::optional<std::uint32_t> Columns::find(std::string_view name) const {
  const auto at = by_name_.find(std::string(name));
  return at == by_name_.end() ? std::nullopt : std::optional(at->second);
}

void Columns::add(std::string_view name) {
  by_name_.emplace(std::string(name), static_cast<std::uint32_t>(names_.size()));
  names_.emplace_back(name);
}

}  // namespace plumbrule::sweep
