#include "base/quantity/sieve.hpp"

#include <catch2/catch.hpp>
#include <string>
#include <utility>
#include <vector>

using plumbrule::quantity::Decimal;
using plumbrule::quantity::known_sieves;
using plumbrule::quantity::sieve_name;
using plumbrule::quantity::sieve_opening;

TEST_CASE("sieves of the published grading tables") {
  // 1/2 in, No. 10, 40, 80: Oklahoma mix design sheet, https://scribd.com/document/696187524/T2sem0800100;
  // the others: UFC and Ohio gradation tables.
  const std::vector<std::pair<const char*, const char*>> sieves = {
      {"1/2 in", "12.5"},  {"3/8 in", "9.5"},   {"No. 4", "4.75"},    {"No. 8", "2.36"},
      {"No. 10", "2.00"},  {"No. 16", "1.18"},  {"No. 30", "0.600"},  {"No. 40", "0.425"},
      {"No. 50", "0.300"}, {"No. 80", "0.180"}, {"No. 100", "0.150"}, {"No. 200", "0.075"},
  };
  for (const auto& [name, opening] : sieves) {
    INFO(name);
    REQUIRE(sieve_opening(name).has_value());
    CHECK(sieve_opening(name)->text() == opening);
    CHECK(sieve_opening(std::string(opening) + " mm") == sieve_opening(name));
    CHECK(sieve_name(*sieve_opening(name)) == std::string(opening) + " mm (" + name + ")");
  }
}

TEST_CASE("the same sieve in other words") {
  const std::vector<std::pair<const char*, const char*>> same = {
      {"9.50 mm", "3/8 in"}, {"9.5mm", "9.5 mm"},    {"3/8\"", "9.5 mm"},     {"3/8 inch", "9.5 mm"},
      {"3/8 in.", "9.5 mm"}, {"600 um", "No. 30"},   {"600 µm", "No. 30"},    {"600 \u03BCm", "No. 30"},
      {"0.6 mm", "No. 30"},  {"0.600 mm", "No. 30"}, {"No 4", "No. 4"},       {"No.4", "No. 4"},
      {"no. 4", "No. 4"},    {"NO. 4", "No. 4"},     {"#4", "No. 4"},         {" No.  4 ", "No. 4"},
      {"75 um", "No. 200"},  {"2 mm", "No. 10"},     {"1 1/2 in", "37.5 mm"}, {"1-1/2 in", "37.5 mm"},
      {"75 mm", "3 in"},     {"25.0 mm", "1 in"},    {"19.0 mm", "3/4 in"},   {"1 mm", "No. 18"},
      {"0.063 mm", "63 um"}, {"8.0 mm", "8 mm"},
  };
  for (const auto& [one, other] : same) {
    INFO(one << " and " << other);
    REQUIRE(sieve_opening(one).has_value());
    REQUIRE(sieve_opening(other).has_value());
    CHECK(sieve_opening(one)->text() == sieve_opening(other)->text());
  }
}

TEST_CASE("a length that no sieve has is refused") {
  for (const char* text : {"",       " ",      "mm",      "in",       "No.",     "No",       "#",       "No. 3",
                           "No. 4a", "No. -4", "9.4 mm",  "9.525 mm", "4.76 mm", "0.375 in", "11/2 in", "-9.5 mm",
                           "4.75",   "4.75 m", "4.75 cm", "nominal",  "9,5 mm",  "No. 4 mm"}) {
    INFO("text `" << text << "`");
    CHECK_FALSE(sieve_opening(text).has_value());
  }
  CHECK_FALSE(sieve_opening(std::string(100000, '4') + " mm").has_value());
}

TEST_CASE("every known sieve is found under every name and has one name") {
  int wrong = 0;
  for (const std::string& designation : known_sieves()) {
    const auto opening = sieve_opening(designation);
    wrong += opening && sieve_name(*opening).find(designation) != std::string::npos ? 0 : 1;
  }
  CHECK(wrong == 0);
  CHECK(known_sieves().size() > 90);
}

TEST_CASE("the openings fall from sieve to sieve") {
  Decimal last = 1000;
  int wrong = 0;
  for (const std::string& designation : known_sieves()) {
    const Decimal opening = sieve_opening(designation).value();
    wrong += opening <= last ? 0 : 1;
    last = opening;
  }
  CHECK(wrong == 0);
}
