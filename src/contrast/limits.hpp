#pragma once
// Whether one limit is tighter than another.

#include "contrast/contrast.hpp"

namespace plumbrule::contrast {

/// How two limits of one measure differ: Kind::same, tightened, relaxed or moved, and in which amounts.
struct Difference {
  Kind kind = Kind::same;
  std::vector<std::string> details;
  bool undone_by_rounding = false;  // of an end: the values that pass do not follow the number as printed
};
[[nodiscard]] Difference difference(const check::Rules& before, const check::Assertion& left, const check::Rules& after,
                                    const check::Assertion& right);

/// The bound on an unrounded value that an end and its rounding come to.
[[nodiscard]] quantity::Threshold threshold_of(const check::End& end, bool upper);

/// Whether the left bound lets less pass than the right one. Both are in one unit.
[[nodiscard]] bool stricter(const quantity::Threshold& left, const quantity::Threshold& right, bool upper);

}  // namespace plumbrule::contrast
