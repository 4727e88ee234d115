#pragma once
// The heads of the submittals, and which results stand in one of them only. Internal to this folder.

#include "apply/followup/comparison.hpp"

namespace plumbrule::followup {

void compare_identity(Comparison& both);
/// Looks at project, mix and dates.
void look_whose(Comparison& both);
void compare_classes(Comparison& both);
void list_other_results(Comparison& both);

}  // namespace plumbrule::followup
