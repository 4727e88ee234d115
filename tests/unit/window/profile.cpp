#include "apply/window/profile.hpp"

#include <catch2/catch.hpp>

namespace plumbrule::window {
namespace {

constexpr Verdict yes = Verdict::complies;
constexpr Verdict no = Verdict::fails;
constexpr Verdict open = Verdict::not_shown;

// Complies from 2 to 4, 4 outside; known from 1 to 5.
Profile from_two_to_below_four() { return Profile({{1, no, no}, {2, yes, yes}, {4, no, no}, {5, no, open}}); }

TEST_CASE("a profile is read at its points, beside them and between them") {
  const Profile profile = from_two_to_below_four();
  CHECK(profile.at(2) == yes);
  CHECK(profile.at(3) == yes);
  CHECK(profile.at(4) == no);
  CHECK(profile.below(2) == no);
  CHECK(profile.above(2) == yes);
  CHECK(profile.below(4) == yes);
  CHECK(profile.above(3) == yes);
}

TEST_CASE("nothing is shown beyond the first and the last point") {
  const Profile profile = from_two_to_below_four();
  CHECK(profile.at(Decimal::of("0.5")) == open);
  CHECK(profile.at(6) == open);
  CHECK(profile.below(1) == open);
  CHECK(profile.above(5) == open);
  CHECK(Profile().at(1) == open);
}

TEST_CASE("stretches know whether their ends belong to them") {
  const auto all = from_two_to_below_four().complying();
  REQUIRE(all.size() == 1);
  CHECK(all[0].low == Decimal{2});
  CHECK(all[0].high == Decimal{4});
  CHECK(all[0].contains(2));
  CHECK_FALSE(all[0].contains(4));
  CHECK_FALSE(all[0].contains(1));
}

TEST_CASE("a single value, and two stretches that a failing value parts") {
  const Profile profile({{1, yes, no}, {2, no, yes}, {3, no, yes}, {4, yes, open}});
  const auto all = profile.complying();
  REQUIRE(all.size() == 3);
  CHECK((all[0].low == all[0].high && all[0].low_inside && all[0].high_inside));
  CHECK((!all[1].low_inside && !all[1].high_inside));
  CHECK((!all[2].low_inside && all[2].high_inside));
}

TEST_CASE("all must hold, one is enough") {
  const Profile left = from_two_to_below_four();
  const Profile right({{3, yes, yes}, {5, yes, open}});
  CHECK(all_of(left, right).at(Decimal::of("2.5")) == open);
  CHECK(all_of(left, right).at(Decimal::of("3.5")) == yes);
  CHECK(all_of(left, right).at(4) == no);
  CHECK(all_of(left, right).at(Decimal::of("1.5")) == no);
  CHECK(any_of(left, right).at(Decimal::of("1.5")) == open);
  CHECK(any_of(left, right).at(Decimal::of("2.5")) == yes);
  CHECK(any_of(left, right).at(5) == yes);
}

}  // namespace
}  // namespace plumbrule::window
