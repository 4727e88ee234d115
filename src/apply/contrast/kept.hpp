#pragma once
// `either ... or ...` in an envelope. Internal to this folder.

#include "apply/contrast/scope.hpp"

namespace plumbrule::contrast {

void keep_ways(EnvelopeScope& scope, std::size_t at, const Demand& demand);

}  // namespace plumbrule::contrast
