#pragma once
// Whether one limit is tighter than another.

#include "apply/contrast/contrast.hpp"

namespace plumbrule::contrast {

/// How two limits of one measure differ: ChangeKind::same, tightened, relaxed or moved, and in which amounts.
/// ChangeKind::conditions: the numbers as printed moved, but by rounding what passes did not follow them. With
/// ChangeKind::same other values may still pass, if the rounding differs.
struct Difference {
  ChangeKind kind = ChangeKind::same;
  std::vector<std::string> details;
  bool rounding = false;                 // an end that both have is rounded to another place, or its ties otherwise
  ChangeKind passes = ChangeKind::same;  // what became of the values that pass, where rounding alone differs
};
[[nodiscard]] Difference difference(const check::Rules& before, const check::Assertion& left, const check::Rules& after,
                                    const check::Assertion& right);

/// The bound on an unrounded value that an end and its rounding come to.
[[nodiscard]] quantity::Threshold threshold_of(const check::End& end, bool upper);

/// Whether the left bound lets less pass than the right one. Both are in one unit.
[[nodiscard]] bool stricter(const quantity::Threshold& left, const quantity::Threshold& right, bool upper);

}  // namespace plumbrule::contrast
