#include "apply/sweep/short_number.hpp"

#include <catch2/catch.hpp>

// All expected values: computed here.
using namespace plumbrule::sweep;

TEST_CASE("short numbers are read as JSON and a submittal both write them") {
  const auto read = read_short("-12.50");
  REQUIRE(read);
  CHECK(read->digits == -1250);
  CHECK(read->decimals == 2);
  CHECK(exact(*read).text() == "-12.50");
  CHECK(read_short("0")->digits == 0);
  CHECK(read_short("0.5")->digits == 5);
  CHECK(exact(*read_short("-0")) == Decimal{0});
}

TEST_CASE("whatever is not a short number is left to the full reader") {
  for (const char* text :
       {"", "-", "007", "00", ".5", "5.", "1e3", "+5", "1.2.3", "12,5", " 1", "1 ", "1234567890", "0.1234567", "0x1"}) {
    CAPTURE(text);
    CHECK_FALSE(read_short(text));
  }
  CHECK(read_short("999999999"));
  CHECK(read_short("999.999999"));
}

TEST_CASE("a threshold is brought to every number of decimals, exactly") {
  const ByDecimals inclusive = largest_not_above(Decimal::of("538.5"), true);
  CHECK(inclusive[0] == 538);
  CHECK(inclusive[1] == 5385);
  CHECK(inclusive[2] == 53850);
  const ByDecimals exclusive = largest_not_above(Decimal::of("538.5"), false);
  CHECK(exclusive[0] == 538);
  CHECK(exclusive[1] == 5384);
  CHECK(exclusive[2] == 53849);
  const ByDecimals low = smallest_not_below(Decimal::of("-0.25"), false);
  CHECK(low[0] == 0);
  CHECK(low[1] == -2);
  CHECK(low[2] == -24);
}

TEST_CASE("a threshold beyond all short numbers is kept at their end") {
  CHECK(largest_not_above(Decimal::of("99999999999"), true)[0] == digits_end);
  CHECK(largest_not_above(Decimal::of("-99999999999"), true)[6] == -digits_end);
}

TEST_CASE("whole numbers of many digits are not taken") {
  CHECK(whole_at(Decimal::of("2.5"), 1) == 25);
  CHECK_FALSE(whole_at(Decimal::of("2.5"), 0));
  CHECK_FALSE(whole_at(Decimal::of("1234567890123456"), 6));
}
