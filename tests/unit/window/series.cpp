#include "apply/window/series.hpp"

#include <catch2/catch.hpp>

namespace plumbrule::window {
namespace {

Reading solid(const Decimal& at, const Decimal& value, Verdict verdict) {
  Reading out;
  out.at = at;
  out.verdict = verdict;
  out.matched = true;
  out.solid = true;
  out.least = value;
  out.greatest = value;
  return out;
}

// Abrasion of reference/trials.md, G2, COMPUTED, case 1: at most 538 g/m2.
Series abrasion() {
  Series out;
  out.limits.high = quantity::Threshold{538, true};
  out.readings = {solid(6, 790, Verdict::fails), solid(7, 610, Verdict::fails), solid(8, 420, Verdict::complies),
                  solid(9, 300, Verdict::complies)};
  return out;
}

TEST_CASE("a line meets the limit where the published arithmetic says") {
  const auto all = crossings(abrasion());
  REQUIRE(all.size() == 1);
  CHECK(all[0].at.written_as(Decimal::of("0.000001"), quantity::Ties::to_even).text() == "7.378947");
  CHECK(all[0].first == 1);
  const auto good = profile(abrasion()).complying();
  REQUIRE(good.size() == 1);
  CHECK(good[0].low == all[0].at);
  CHECK(good[0].high == Decimal{9});
}

TEST_CASE("values between tested ones lie on the line; none beyond") {
  // Computed here: 610 - 0.5 * 190.
  CHECK(value_at(abrasion(), Decimal::of("7.5")) == Decimal{515});
  CHECK(value_at(abrasion(), 7) == Decimal{610});
  CHECK_FALSE(value_at(abrasion(), Decimal::of("5.9")));
  CHECK_FALSE(value_at(abrasion(), Decimal::of("9.1")));
}

TEST_CASE("no line is drawn to a value that is not solid") {
  Series series = abrasion();
  series.readings[2].solid = false;
  CHECK(profile(series).at(Decimal::of("8.5")) == Verdict::not_shown);
  CHECK(profile(series).at(8) == Verdict::complies);
  CHECK_FALSE(value_at(series, Decimal::of("7.5")));
  CHECK(crossings(series).empty());
}

TEST_CASE("a level line at the limit complies or fails as the threshold itself does") {
  Series series;
  series.limits.high = quantity::Threshold{5, true};
  series.readings = {solid(1, 5, Verdict::complies), solid(2, 5, Verdict::complies)};
  CHECK(profile(series).at(Decimal::of("1.5")) == Verdict::complies);
  series.limits.high->inclusive = false;
  CHECK(profile(series).at(Decimal::of("1.5")) == Verdict::fails);
}

TEST_CASE("a series that leaps over a band complies between its failing values") {
  Series series;
  series.limits.low = quantity::Threshold{4, true};
  series.limits.high = quantity::Threshold{6, true};
  series.readings = {solid(0, 0, Verdict::fails), solid(10, 10, Verdict::fails)};
  const auto good = profile(series).complying();
  REQUIRE(good.size() == 1);
  CHECK((good[0].low == Decimal{4} && good[0].high == Decimal{6}));
  CHECK_FALSE(rises_and_falls(series));
}

TEST_CASE("rising and falling is noticed") {
  Series series = abrasion();
  CHECK_FALSE(rises_and_falls(series));
  series.readings.push_back(solid(10, 310, Verdict::complies));
  CHECK(rises_and_falls(series));
}

}  // namespace
}  // namespace plumbrule::window
