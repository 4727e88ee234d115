#include "judge/audit/outlier.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

using plumbrule::audit::critical_value;
using plumbrule::audit::find_outlier;

// Source: ASTM E178, table of critical values of T, upper 2.5 % (5 % two-sided); from memory, verify. The table prints
// three decimals; for n = 3 it prints the bound 1.155 of T itself, above the value of the formula.
TEST_CASE("critical values agree with the published table", "[audit]") {
  CHECK(critical_value(3, 0.05) == Approx(1.155).margin(0.001));
  CHECK(critical_value(4, 0.05) == Approx(1.481).margin(0.0006));
  CHECK(critical_value(5, 0.05) == Approx(1.715).margin(0.0006));
  CHECK(critical_value(6, 0.05) == Approx(1.887).margin(0.0006));
  CHECK(critical_value(10, 0.05) == Approx(2.290).margin(0.0006));
}

// Computed here: with two degrees of freedom Student's t has the closed form (2p - 1) / sqrt(2 p (1 - p)).
TEST_CASE("the critical value for four is that of the closed form of t", "[audit]") {
  const double p = 1 - 0.05 / 8;
  const double t = (2 * p - 1) / std::sqrt(2 * p * (1 - p));
  CHECK(critical_value(4, 0.05) == Approx(3 / 2.0 * std::sqrt(t * t / (2 + t * t))).epsilon(1e-12));
}

TEST_CASE("of three values T cannot exceed 2 / sqrt(3)", "[audit]") {
  CHECK(critical_value(3, 0.05) < 2 / std::sqrt(3.0));
  const std::vector<double> nearly{10, 10.001, 17};
  const auto found = find_outlier(nearly, 0.05);
  REQUIRE(found);
  CHECK(found->index == 2);
  CHECK(found->t == Approx(2 / std::sqrt(3.0)).epsilon(1e-6));
  CHECK_FALSE(find_outlier(std::vector<double>{10, 11, 17}, 0.05));
}

TEST_CASE("nothing lies apart where nothing can be told", "[audit]") {
  CHECK_FALSE(find_outlier(std::vector<double>{}, 0.05));
  CHECK_FALSE(find_outlier(std::vector<double>{1, 100}, 0.05));
  CHECK_FALSE(find_outlier(std::vector<double>{5, 5, 5, 5}, 0.05));
  CHECK_FALSE(find_outlier(std::vector<double>{1, 2, 3, INFINITY}, 0.05));
  // The others agree to the last digit: their spread is only the resolution of the readings.
  CHECK_FALSE(find_outlier(std::vector<double>{414.5, 414.5, 417.8}, 0.05));
  CHECK_FALSE(find_outlier(std::vector<double>{417.8, 414.5, 414.5, 414.5, 414.5}, 0.05));
}

TEST_CASE("the value farthest from the mean is tested, on either side", "[audit]") {
  const std::vector<double> low{-50, 10.1, 10.2, 9.9, 10.0};
  const auto found = find_outlier(low, 0.05);
  REQUIRE(found);
  CHECK(found->index == 0);
  CHECK_FALSE(find_outlier(std::vector<double>{9, 10.1, 10.2, 9.9, 10.8}, 0.05));
}
