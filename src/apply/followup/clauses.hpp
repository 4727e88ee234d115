#pragma once
// What became of the clauses that were open. Internal to this folder.

#include "apply/followup/comparison.hpp"

namespace plumbrule::followup {

void follow_clauses(Comparison& both);

}  // namespace plumbrule::followup
