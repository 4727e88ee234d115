#include "apply/sweep/tally.hpp"

#include <catch2/catch.hpp>

// All expected values: computed here.
using namespace plumbrule::sweep;

TEST_CASE("a quantile is one of the margins that were counted") {
  Margins margins;
  for (int at = 1; at <= 100; ++at) {
    margins.add(at);
  }
  CHECK(margins.quantile(50) == 5);
  CHECK(margins.quantile(500) == 50);
  CHECK(margins.quantile(950) == 95);
  CHECK(margins.quantile(1) == 1);
  Margins one;
  one.add(-7);
  CHECK(one.quantile(50) == -7);
  CHECK(one.quantile(950) == -7);
}

TEST_CASE("counts of parts add up to those of the whole") {
  Margins whole, left, right;
  for (int at = -50; at < 50; ++at) {
    whole.add(3 * at);
    (at % 3 == 0 ? left : right).add(3 * at);
  }
  left.add(right);
  CHECK(left.count() == whole.count());
  for (int at = -widest_margin; at <= widest_margin; ++at) {
    REQUIRE(left.at(at) == whole.at(at));
  }
}

TEST_CASE("a margin is rounded down and kept within its ends") {
  using plumbrule::quantity::Decimal;
  CHECK(margin_of(Decimal::of("12.39")) == 123);
  CHECK(margin_of(-Decimal::of("0.01")) == -1);
  CHECK(margin_of(Decimal::of("1000")) == widest_margin);
  CHECK(margin_of(-Decimal::of("1000")) == -widest_margin);
  CHECK(margin_of(std::nullopt) == no_margin);
}
