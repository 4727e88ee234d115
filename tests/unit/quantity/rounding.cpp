#include "base/quantity/rounding.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <cstdint>
#include <cstdio>
#include <string>
#include <vector>

using plumbrule::quantity::Decimal;
using plumbrule::quantity::fold_at_least;
using plumbrule::quantity::fold_at_most;
using plumbrule::quantity::round_to;
using plumbrule::quantity::Threshold;
using plumbrule::quantity::Ties;

namespace {

struct Pair {
  const char* place;
  const char* calculated;
  const char* rounded;
};

std::string rounded_text(const char* value, const char* place, Ties ties) {
  return round_to(Decimal::of(value), Decimal::of(place), ties).text();
}

void check_pairs(const std::vector<Pair>& pairs) {
  for (const Pair& pair : pairs) {
    INFO(pair.calculated << " to " << pair.place);
    CHECK(rounded_text(pair.calculated, pair.place, Ties::to_even) == pair.rounded);
  }
}

}  // namespace

TEST_CASE("the published examples of Alberta ATT-70/96") {
  // Alberta Transportation ATT-70/96 "Rounding-off calculated values", section 3 and Table 1:
  // https://studylib.net/doc/7979112/rounding-off-calculated-values
  const std::vector<Pair> pairs = {
      {"0.01", "5.684", "5.68"},  {"0.01", "5.686", "5.69"},  {"0.01", "5.6750", "5.68"},
      {"0.01", "5.6850", "5.68"}, {"0.01", "5.6852", "5.69"},  // text
      {"0.01", "5.765", "5.76"},  {"0.01", "5.755", "5.76"},  {"0.01", "5.781", "5.78"},
      {"0.01", "5.688", "5.69"},  // asphalt content
      {"1", "51.2", "51"},        {"1", "50.49", "50"},       {"1", "50.5", "50"},
      {"1", "51.5", "52"},        {"1", "51.51", "52"},  // sieve analysis
      {"0.1", "13.12", "13.1"},   {"0.1", "13.25", "13.2"},   {"0.1", "13.35", "13.4"},
      {"0.1", "97.55", "97.6"},   {"0.1", "97.65", "97.6"},   {"0.1", "97.12", "97.1"},
      {"0.1", "97.52", "97.5"},  // sieve, compaction
      {"1", "2350.12", "2350"},   {"1", "2350.82", "2351"},   {"1", "2350.5", "2350"},
      {"1", "2351.5", "2352"},    {"1", "2350.51", "2351"},   {"1", "2350.49", "2350"},  // density, kg/m3
  };
  CHECK(pairs.size() == 27);
  check_pairs(pairs);
}

TEST_CASE("the published examples of a field sampling manual") {
  // "Field Sampling and Testing Manual - Rounding Procedures" (agency not named on the page, cites ASTM E29):
  // https://info.5y1.org/rules-for-rounding_1_2e6a1e.html
  check_pairs({{"0.1", "45.71", "45.7"},
               {"0.1", "45.72", "45.7"},
               {"0.1", "45.73", "45.7"},
               {"0.1", "45.74", "45.7"},
               {"0.1", "45.76", "45.8"},
               {"0.1", "45.77", "45.8"},
               {"0.1", "45.78", "45.8"},
               {"0.1", "45.79", "45.8"},
               {"0.1", "45.7500", "45.8"},
               {"0.1", "45.4500", "45.4"},
               {"0.1", "45.45001", "45.5"},
               {"0.1", "45.45105", "45.5"},
               {"0.1", "45.45099", "45.5"}});
}

TEST_CASE("rounding the nearest double gives the wrong answer for published examples") {
  // The first five are of ATT-70/96, the last of the field sampling manual (addresses above).
  struct Trap {
    double value;
    const char* text;
    int decimals;
    const char* wrong;
    const char* right;
  };
  const std::array<Trap, 6> traps = {{{5.755, "5.755", 2, "5.75", "5.76"},
                                      {5.6750, "5.6750", 2, "5.67", "5.68"},
                                      {13.35, "13.35", 1, "13.3", "13.4"},
                                      {97.55, "97.55", 1, "97.5", "97.6"},
                                      {97.65, "97.65", 1, "97.7", "97.6"},
                                      {45.45, "45.45", 1, "45.5", "45.4"}}};
  for (const Trap& trap : traps) {
    INFO(trap.text);
    std::array<char, 32> printed{};
    std::snprintf(printed.data(), printed.size(), "%.*f", trap.decimals, trap.value);
    CHECK(std::string(printed.data()) == trap.wrong);
    CHECK(rounded_text(trap.text, trap.decimals == 2 ? "0.01" : "0.1", Ties::to_even) == trap.right);
  }
}

TEST_CASE("the place may be any number") {
  // Computed here.
  CHECK(rounded_text("538.5", "0.01", Ties::to_even) == "538.50");
  CHECK(rounded_text("12.5", "5", Ties::to_even) == "10");
  CHECK(rounded_text("17.5", "5", Ties::to_even) == "20");
  CHECK(rounded_text("12.5", "5", Ties::up) == "15");
  CHECK(rounded_text("-12.5", "5", Ties::up) == "-15");
  CHECK(rounded_text("-12.5", "5", Ties::to_even) == "-10");
  CHECK(rounded_text("12.49", "5", Ties::up) == "10");
  CHECK(rounded_text("0.25", "0.5", Ties::to_even) == "0.0");
  CHECK(rounded_text("0.75", "0.5", Ties::to_even) == "1.0");
  CHECK(rounded_text("1250", "100", Ties::to_even) == "1200");
  CHECK(rounded_text("1250", "100", Ties::up) == "1300");
  CHECK(rounded_text("3", "0.10", Ties::up) == "3.00");
  CHECK(rounded_text("-0.4", "1", Ties::to_even) == "0");
  CHECK(rounded_text("0", "5", Ties::up) == "0");
}

TEST_CASE("a value of 34 digits just below a tie is no tie") {
  // Computed here. Doubling 6.99...9 needs a 35th digit, and 13.99...98 would be rounded to a tie of place 14.
  const Decimal finest = Decimal::of("0.00000000000000001") * Decimal::of("0.0000000000000001");  // 1e-33
  CHECK(round_to(Decimal(7) - finest, 14, Ties::up).text() == "0");
  CHECK(round_to(Decimal(7) + finest, 14, Ties::to_even).text() == "14");
  CHECK(round_to(Decimal(21) - finest * 10, 14, Ties::to_even).text() == "14");
  CHECK(round_to(Decimal::of("0.5") - finest, 1, Ties::up).text() == "0");
  CHECK(round_to(Decimal::of("0.5") + finest, 1, Ties::to_even).text() == "1");
}

TEST_CASE("a result of 34 digits is exact though the other multiple needs 35") {
  // Computed here: 3369546189550288245209705967817294 lies between ...292.5 and ...295.
  const Decimal value =
      Decimal::of("33695461895502882") * Decimal(100000000000000000) + Decimal::of("45209705967817294");
  CHECK(round_to(value, Decimal::of("2.5"), Ties::to_even) == value + 1);
}

TEST_CASE("a value without the digits to lose is left alone") {
  const Decimal large = Decimal::of("99999999999999999") * Decimal::of("10000000000000000");
  CHECK(round_to(large, Decimal::of("0.00000000000000001"), Ties::to_even) == large);
  CHECK_FALSE(round_to(Decimal(1) / 0, 1, Ties::up).finite());
  CHECK_FALSE(round_to(Decimal(1) / 0, 5, Ties::up).finite());
}

namespace {

constexpr std::array<Ties, 2> both_ties = {Ties::to_even, Ties::up};

// All in thousandths.
std::int64_t rounded_whole(std::int64_t value, std::int64_t place, Ties ties) {
  const std::int64_t sign = value < 0 ? -1 : 1;
  const std::int64_t multiples = sign * value / place;
  const std::int64_t rest = sign * value % place;
  const bool tie_goes_out = ties == Ties::up || multiples % 2 != 0;
  const bool out = 2 * rest > place || (2 * rest == place && tie_goes_out);
  return sign * (multiples + (out ? 1 : 0)) * place;
}

Decimal thousandths(std::int64_t count) { return Decimal(count) * Decimal::of("0.001"); }

}  // namespace

TEST_CASE("rounding agrees with whole-number arithmetic and is idempotent") {
  int wrong = 0;
  for (const std::int64_t place : {1, 2, 3, 5, 7, 10, 20, 25, 50, 100, 500, 1000, 1500, 5000, 10000}) {
    for (std::int64_t value = -12000; value <= 12000; value += 13) {
      for (const Ties ties : both_ties) {
        const Decimal rounded = round_to(thousandths(value), thousandths(place), ties);
        wrong += rounded == thousandths(rounded_whole(value, place, ties)) ? 0 : 1;
        wrong += round_to(rounded, thousandths(place), ties) == rounded ? 0 : 1;
      }
    }
  }
  CHECK(wrong == 0);
}

namespace {

bool at_most(const Decimal& value, const Threshold& fold) {
  return fold.inclusive ? value <= fold.value : value < fold.value;
}
bool at_least(const Decimal& value, const Threshold& fold) {
  return fold.inclusive ? value >= fold.value : value > fold.value;
}

int disagreements(const Decimal& limit, const Decimal& place, Ties ties) {
  const Threshold most = fold_at_most(limit, place, ties);
  const Threshold least = fold_at_least(limit, place, ties);
  const Decimal tenth = place * Decimal::of("0.1");
  const Decimal hair = Decimal::of("0.000000000000001");
  int wrong = 0;
  for (int step = -30; step <= 30; ++step) {
    for (int nudge = -1; nudge <= 1; ++nudge) {
      // Around the limit, and around the multiple near it, where the ties are met exactly.
      for (const Decimal& centre : {limit, round_to(limit, place, ties)}) {
        const Decimal value = centre + tenth * step + hair * nudge;
        const Decimal rounded = round_to(value, place, ties);
        wrong += at_most(value, most) == (rounded <= limit) ? 0 : 1;
        wrong += at_least(value, least) == (rounded >= limit) ? 0 : 1;
      }
    }
  }
  return wrong;
}

}  // namespace

TEST_CASE("a folded threshold says the same as rounding, then comparing") {
  const std::vector<const char*> places = {"1", "0.1", "0.01", "0.001", "5", "0.5", "0.25", "3", "10", "100"};
  const std::vector<const char*> limits = {"0",     "0.3",  "0.5",  "1",     "2.5",  "7",     "7.5",   "12",
                                           "12.5",  "50",   "538",  "538.5", "0.05", "2.10",  "97.65", "10",
                                           "-0.05", "-0.5", "-2.5", "-7",    "-12",  "-12.5", "-538",  "-3"};
  for (const char* place : places) {
    for (const char* limit : limits) {
      for (const Ties ties : both_ties) {
        INFO("limit " << limit << " place " << place << (ties == Ties::up ? " up" : " to even"));
        CHECK(disagreements(Decimal::of(limit), Decimal::of(place), ties) == 0);
      }
    }
  }
}

TEST_CASE("folded thresholds of known limits") {
  // Computed here: 538.5 rounds to the even 538, 50.5 to 50, 19.5 to 20.
  const Threshold loss = fold_at_most(538, 1, Ties::to_even);
  CHECK(loss.value.text() == "538.5");
  CHECK(loss.inclusive);
  const Threshold loss_up = fold_at_most(538, 1, Ties::up);
  CHECK(loss_up.value.text() == "538.5");
  CHECK_FALSE(loss_up.inclusive);
  const Threshold torque = fold_at_least(20, 1, Ties::to_even);
  CHECK(torque.value.text() == "19.5");
  CHECK(torque.inclusive);
  const Threshold odd = fold_at_least(23, 1, Ties::to_even);
  CHECK(odd.value.text() == "22.5");
  CHECK_FALSE(odd.inclusive);
  const Threshold negative = fold_at_least(-5, 1, Ties::up);
  CHECK(negative.value.text() == "-5.5");
  CHECK_FALSE(negative.inclusive);
  const Threshold coarse = fold_at_most(7, 10, Ties::to_even);  // only 0, -10 ... pass; 5 is a tie that goes to 0
  CHECK(coarse.value == 5);
  CHECK(coarse.inclusive);
}
