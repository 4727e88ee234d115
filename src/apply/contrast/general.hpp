#pragma once
// What differs between two specifications beside their demands.

#include <vector>

#include "apply/contrast/contrast.hpp"

namespace plumbrule::contrast {

/// First what the heads say, then measures and classes in the order in which the specification before demands them. Its
/// title, agency, status, source and note only between editions. `found`: its demands are read.
[[nodiscard]] std::vector<General> general(const check::Rules& before, const check::Rules& after,
                                           const Contrast& found);

}  // namespace plumbrule::contrast
