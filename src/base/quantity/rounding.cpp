#include "base/quantity/rounding.hpp"

#include <cassert>

namespace plumbrule::quantity {

namespace {

Decimal magnitude(const Decimal& value) { return value < 0 ? -value : value; }

// How far `value` lies beyond the multiple next to it on the side of zero, and before the one on the other side.
struct Gaps {
  Decimal to_inner;
  Decimal to_outer;
};

Gaps gaps_around(const Decimal& value, const Decimal& place) {
  const Decimal rest = magnitude(value.remainder(place));
  return {rest, place - rest};
}

bool inner_multiple_is_even(const Decimal& value, const Decimal& place) {
  return magnitude(value.remainder(place + place)) < place;
}

// The greatest multiple of `place` that is not above `value`.
Decimal multiple_below(const Decimal& value, const Decimal& place) {
  const Decimal rest = value.remainder(place);
  const Decimal toward_zero = value - rest;
  return rest < 0 ? toward_zero - place : toward_zero;
}

Decimal half(const Decimal& place) { return place * Decimal::of("0.5"); }

}  // namespace

Decimal round_to(const Decimal& value, const Decimal& place, Ties ties) {
  assert(place > 0);
  if (place == place.last_place()) {  // 1, 0.1, 0.01 ...: the library drops the digits in one step
    return value.written_as(place, ties);
  }
  const Gaps gaps = gaps_around(value, place);
  // The gaps are compared with each other, not the inner one doubled with the place: that may need a 35th digit, while
  // the lesser gap is always exact. The multiples are not worked out before the choice for the same reason.
  const auto order = gaps.to_inner <=> gaps.to_outer;
  const bool tie = order == std::partial_ordering::equivalent;
  const bool outwards =
      tie ? ties == Ties::up || !inner_multiple_is_even(value, place) : order == std::partial_ordering::greater;
  const Decimal step = outwards ? gaps.to_outer : -gaps.to_inner;
  return (value < 0 ? value - step : value + step).written_as(place, ties);
}

Threshold fold_at_most(const Decimal& limit, const Decimal& place, Ties ties) {
  const Decimal tie = multiple_below(limit, place) + half(place);
  return {tie, round_to(tie, place, ties) <= limit};
}

Threshold fold_at_least(const Decimal& limit, const Decimal& place, Ties ties) {
  const Decimal below = multiple_below(limit, place);
  const Decimal tie = below == limit ? below - half(place) : below + half(place);
  return {tie, round_to(tie, place, ties) >= limit};
}

}  // namespace plumbrule::quantity
