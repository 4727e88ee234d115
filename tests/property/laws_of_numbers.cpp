// Laws of rounding (language.md, section 3.6): limits and values are drawn near each other, so that ties are common.

#include "base/quantity/rounding.hpp"
#include "law_tools.hpp"

namespace plumbrule::property {
namespace {

using quantity::Decimal;
using quantity::Ties;

Decimal decimal(std::int64_t coefficient, int decimals) {
  Decimal out{coefficient};
  for (int at = 0; at < decimals; ++at) {
    out = out * Decimal::of("0.1");
  }
  return out;
}

Decimal draw_decimal() { return decimal(*rc::gen::inRange<std::int64_t>(-4000, 4000), *rc::gen::inRange(0, 4)); }

Decimal draw_place() {
  return Decimal::of(*rc::gen::element<std::string>("1", "0.1", "0.01", "0.5", "5", "0.25", "3"));
}

Ties draw_ties() { return *rc::gen::element(Ties::to_even, Ties::up); }

Decimal magnitude(const Decimal& value) { return value < Decimal{0} ? -value : value; }

TEST_CASE("rounding is idempotent, and moves by at most half a place") {
  LAW("rounding", [] {
    const Decimal value = draw_decimal();
    const Decimal place = draw_place();
    const Ties ties = draw_ties();
    const Decimal once = quantity::round_to(value, place, ties);
    RC_ASSERT(quantity::round_to(once, place, ties) == once);
    RC_ASSERT(once.remainder(place).zero());
    RC_ASSERT(magnitude(once - value) * Decimal{2} <= place);
  });
}

TEST_CASE("rounding keeps the order of values") {
  LAW("order", [] {
    const Decimal one = draw_decimal();
    const Decimal other = one + magnitude(draw_decimal());
    const Decimal place = draw_place();
    const Ties ties = draw_ties();
    RC_ASSERT(quantity::round_to(one, place, ties) <= quantity::round_to(other, place, ties));
  });
}

TEST_CASE("a folded threshold says the same as rounding and then comparing") {
  LAW("thresholds", [] {
    const Decimal place = draw_place();
    const Ties ties = draw_ties();
    const Decimal limit = draw_decimal();
    // Near the limit, on a raster of an eighth of the place: ties and their neighbours.
    const Decimal value = limit + place * decimal(*rc::gen::inRange<std::int64_t>(-24, 25) * 125, 3);
    const quantity::Threshold high = quantity::fold_at_most(limit, place, ties);
    const quantity::Threshold low = quantity::fold_at_least(limit, place, ties);
    const bool below = value < high.value || (value == high.value && high.inclusive);
    const bool above = value > low.value || (value == low.value && low.inclusive);
    const Decimal rounded = quantity::round_to(value, place, ties);
    RC_ASSERT(below == (rounded <= limit));
    RC_ASSERT(above == (rounded >= limit));
  });
}

TEST_CASE("the judge's answer for a bound is the answer for every number within it, or open") {
  LAW("bounds", [] {
    const Decimal place = draw_place();
    const oracle::Rounding rounding{*rc::gen::arbitrary<bool>() ? std::optional(place) : std::nullopt, draw_ties()};
    const Decimal limit = draw_decimal();
    const Decimal bound = limit + place * decimal(*rc::gen::inRange<std::int64_t>(-24, 25) * 125, 3);
    const auto kind = *rc::gen::element(quantity::Bound::at_least, quantity::Bound::above, quantity::Bound::at_most,
                                        quantity::Bound::below);
    const bool up = kind == quantity::Bound::at_least || kind == quantity::Bound::above;
    const bool strict = kind == quantity::Bound::above || kind == quantity::Bound::below;
    const Decimal apart = decimal(*rc::gen::inRange<std::int64_t>(strict ? 1 : 0, 500), 3);
    const Decimal inside = up ? bound + apart : bound - apart;
    const oracle::Answer answer = oracle::at_most(oracle::Interval::reading(bound, kind), limit, rounding);
    const oracle::Answer exact = oracle::at_most(oracle::Interval::point(inside), limit, rounding);
    RC_ASSERT(answer == oracle::Answer::open || answer == exact);
  });
}

}  // namespace
}  // namespace plumbrule::property
