#pragma once
// The classes that a clause asks about. Internal to this folder.

#include "apply/followup/comparison.hpp"

namespace plumbrule::followup {

[[nodiscard]] std::set<check::CategoryId> tested_classes(const Comparison& both, std::uint32_t requirement);
/// Looks at a class by which the clause no longer applies or asks for less.
void look_at_class(Comparison& both, const ClauseProgress& clause);

}  // namespace plumbrule::followup
