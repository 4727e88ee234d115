// Single looks, and what they turn on. Values: computed here.

#include <catch2/catch.hpp>

#include "made_record.hpp"

namespace plumbrule::followup {
namespace {

using made::Record;
using made::Trial;

const std::string file = "specs/issa_a143_2010.plumb";

Record adhesion(const std::string& reported, const std::string& tested = "2026-03-05") {
  Record out;
  Trial trial;
  trial.measure = "sand_adhesion";
  trial.tested = tested;
  trial.reported = reported;
  out.trials.push_back(trial);
  return out;
}

// 1 g/ft2 is 10.7639 g/m2; 538 g/m2 is 49.982 g/ft2.
TEST_CASE("a value in another unit is altered if it is farther off than half of its last digit", "[followup]") {
  const auto shipped = made::read(file);
  const auto drawn = [&](const std::string& before, const std::string& after) {
    return made::codes(made::follow(*shipped, adhesion(before), adhesion(after)));
  };
  CHECK(drawn("538 g/m2", "50.0 g/ft2").empty());
  CHECK(drawn("538 g/m2", "49.98 g/ft2").empty());
  CHECK(drawn("538 g/m2", "0.538 kg/m2").empty());
  CHECK(drawn("50.0 g/ft2", "538 g/m2").empty());
  CHECK(drawn("500 g/m2 or less", "46.5 g/ft2 or less").empty());
  CHECK(drawn("538 g/m2", "49.9 g/ft2") == "reading_altered");
  CHECK(drawn("538 g/m2", "50.00 g/ft2") == "reading_altered");
  CHECK(drawn("50.0 g/ft2", "539 g/m2") == "reading_altered");
  CHECK(drawn("500 g/m2", "46.5 g/ft2 or less") == "reading_altered");
  CHECK(drawn("538.4 g/m2", "538 g/m2") == "reading_altered");  // in the same unit digits are no conversion
}

TEST_CASE("a value that was only converted is listed as that", "[followup]") {
  const auto shipped = made::read(file);
  const FollowUp found = made::follow(*shipped, adhesion("538 g/m2"), adhesion("50.0 g/ft2"));
  REQUIRE(found.values.size() == 1);
  CHECK(found.values.front().difference == "the same as far as its digits go");
  CHECK(made::follow(*shipped, adhesion("538 g/m2"), adhesion("0.538 kg/m2")).values.empty());
}

TEST_CASE("a test was repeated if it is dated later than before and than the submittal of before", "[followup]") {
  const auto shipped = made::read(file);
  const auto repeated = [&](const std::string& before, const std::string& submitted, const std::string& now) {
    Record earlier = adhesion("560 g/m2", before);
    earlier.date = submitted;
    Record later = adhesion("500 g/m2", now);
    later.date = "2026-04-10";
    return made::codes(made::follow(*shipped, earlier, later)).empty();
  };
  CHECK(repeated("2026-03-05", "2026-03-20", "2026-03-21"));
  CHECK_FALSE(repeated("2026-03-05", "2026-03-20", "2026-03-20"));
  CHECK_FALSE(repeated("2026-03-05", "2026-03-20", "2026-03-06"));
  CHECK_FALSE(repeated("2026-03-05", "2026-03-20", "2026-03-05"));
  CHECK_FALSE(repeated("2026-03-05", "2026-03-20", ""));
  CHECK(repeated("", "2026-03-20", "2026-03-21"));
  CHECK_FALSE(repeated("", "2026-03-20", "2026-03-20"));
  CHECK(repeated("2026-03-05", "", "2026-03-06"));
  CHECK_FALSE(repeated("2026-03-05", "", "2026-03-05"));
  CHECK_FALSE(repeated("2026-03-25", "2026-03-20", "2026-03-24"));
}

TEST_CASE("names are told apart by letters, digits and signs", "[followup]") {
  const auto shipped = made::read(file);
  const auto drawn = [&](const std::string& before, const std::string& after) {
    Record earlier = adhesion("500 g/m2");
    Record later = earlier;
    earlier.mix = before;
    later.mix = after;
    return made::codes(made::follow(*shipped, earlier, later));
  };
  CHECK(drawn("MS-08-C", "ms 08_c").empty());
  CHECK(drawn("", "MS-08-C").empty());
  CHECK(drawn("MS-08-C", "").empty());
  CHECK(drawn("MS-08-C", "MS-08-D") == "other_submittal");
  CHECK(drawn("MS 8", "MS 80") == "other_submittal");
}

}  // namespace
}  // namespace plumbrule::followup
