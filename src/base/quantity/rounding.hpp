#pragma once
// Rounding to a place and its folding into exact thresholds.
// Source of the rule: ASTM E29, rounding method (ties to even); agencies that round ties up are served by Ties::up.

#include "base/quantity/decimal.hpp"

namespace plumbrule::quantity {

/// Rounds once, to a whole multiple of `place` (> 0, at most 33 digits; any place, such as 1, 0.01, 0.5 or 5). A tie
/// goes to the even multiple, or away from zero. Exact whenever the result has at most 34 digits. The result is written
/// with the digits of the place (538.5 to 0.01 gives 538.50).
[[nodiscard]] Decimal round_to(const Decimal& value, const Decimal& place, Ties ties);

/// The exact bound on an unrounded value that says the same as "rounded, then compared". Rounding never reverses the
/// order of two values, so the values that pass end at one tie; the threshold is that tie, inclusive if it passes.
struct Threshold {
  Decimal value;
  bool inclusive = true;
};

/// round_to(v, place, ties) <= limit  <=>  v <= value (or < when not inclusive).
[[nodiscard]] Threshold fold_at_most(const Decimal& limit, const Decimal& place, Ties ties);
/// round_to(v, place, ties) >= limit  <=>  v >= value (or > when not inclusive).
[[nodiscard]] Threshold fold_at_least(const Decimal& limit, const Decimal& place, Ties ties);

}  // namespace plumbrule::quantity
