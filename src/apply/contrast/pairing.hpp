#pragma once
// Which demands of two specifications are held against each other, and for which mixes.

#include <cstddef>
#include <vector>

#include "apply/contrast/demand.hpp"

namespace plumbrule::contrast {

struct Pair {
  std::size_t after = 0;  // its place in the list
  Mixes mixes;
};

/// For each demand before its pairs, in the order of those after; for each demand of either side the mixes for which it
/// stands alone. A case that requires nothing is paired with the demands that its clause makes of other mixes, and
/// never stands alone.
struct Pairs {
  std::vector<std::vector<Pair>> of;
  std::vector<Mixes> before_alone, after_alone;
};

[[nodiscard]] Pairs pairs(const check::Rules& rules_before, const std::vector<Demand>& before,
                          const check::Rules& rules_after, const std::vector<Demand>& after, const Words& words);

}  // namespace plumbrule::contrast
