#pragma once
// Rows of one subject for classes that meet: a lower end above an upper end, or no word in common. Internal to this
// folder.

#include "apply/contrast/scope.hpp"

namespace plumbrule::contrast {

void find_exclusions(EnvelopeScope& scope);

}  // namespace plumbrule::contrast
