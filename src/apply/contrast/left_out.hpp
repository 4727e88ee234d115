#pragma once
// What specifications ask and an envelope does not hold, and mixes of which one asks nothing. Internal to this folder.

#include "apply/contrast/scope.hpp"

namespace plumbrule::contrast {

/// A category that two specifications declare with other words: what one calls a class is unknown to the other.
void leave_out_other_words(EnvelopeScope& scope);

/// What is asked beside the limit: stated once for a clause.
void leave_out_beside(EnvelopeScope& scope, std::size_t at, const Demand& demand);

/// `demands`: those of the specification that may apply. Optional tests and advice make no submittal comply.
void find_uncovered(EnvelopeScope& scope, std::size_t at, const std::vector<const Demand*>& demands);

}  // namespace plumbrule::contrast
