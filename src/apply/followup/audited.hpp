#pragma once
// What became of the findings of the audit. Internal to this folder.

#include "apply/followup/comparison.hpp"

namespace plumbrule::followup {

void follow_audit(Comparison& both, const std::vector<audit::Finding>& before,
                  const std::vector<audit::Finding>& after);

}  // namespace plumbrule::followup
