#include "base/quantity/unit_text.hpp"

#include <catch2/catch.hpp>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/quantity/symbols.hpp"

using namespace plumbrule::quantity;

TEST_CASE("units as the trade writes them") {
  const std::vector<std::pair<const char*, const char*>> written = {
      {"g/ft2", "g/ft2"},   {"lb/yd2", "lb/yd2"}, {"kg/m2", "kg/m2"},     {"1/m2", "1/m2"},
      {"g/in2", "g/in2"},   {"m2/kg", "m2/kg"},   {"ft2/lb", "ft2/lb"},   {"g/m²", "g/m2"},
      {"kg/m³", "kg/m3"},   {"kg·cm", "kg-cm"},   {"kgf.cm", "kg-cm"},    {"kgf·cm", "kg-cm"},
      {"kgf-cm", "kg-cm"},  {"kg-mm", "kg-mm"},   {"N·m", "N.m"},         {"N⋅m", "N.m"},
      {"Nm", "N.m"},        {"lbf·in", "lbf.in"}, {"in-lb", "lbf.in"},    {"in.lb", "lbf.in"},
      {"lbf-in", "lbf.in"}, {"ft-lb", "lbf.ft"},  {"°C", "degC"},         {"°F", "degF"},
      {"µm", "um"},         {"\u03BCm", "um"},    {"lbs", "lb"},          {"%", "%"},
      {"points", "points"}, {"cycles", "cycles"}, {"l/t", "L/t"},         {"gal/ton", "gal/ton"},
      {"m.s-1", "m/s"},     {"g/h.m2", "g/m2.h"}, {"1/kg-cm", "1/kg-cm"}, {"kg-cm/min", "kg-cm/min"},
      {"Nm2", "N2.m2"},
  };
  for (const auto& [text, canonical] : written) {
    INFO(text);
    const auto factors = read_factors(text);
    REQUIRE(factors.has_value());
    CHECK(write_factors(*factors) == canonical);  // factors stand in the order of the table of symbols
  }
}

TEST_CASE("texts that are no unit are refused") {
  UnitTable units;
  for (const char* text :
       {"furlong", "N.m/deg", "g/",     "/m2",       "g//m2",    "g/m2/h",   "g.",     ".g",     "g..m",
        "g m",     " g",      "g ",     "1",         "1/",       "1/1",      "2",      "m0",     "m10",
        "m-0",     "m-",      "m--2",   "-2",        "G",        "KG",       "m9.m",   "1/m9.m", "degC.m",
        "m.degC",  "degC2",   "1/degC", "degC/degC", "degF/min", "degC.m/m", "°C/min", "g/1",    "%%",
        "²",       "\xC2",    "\xFF",   "g\n",       "m2-",      "kg-",      "/"}) {
    INFO("text `" << text << "`");
    CHECK_FALSE(units.find(text).has_value());
  }
  CHECK_FALSE(units.find(std::string_view("g\0", 2)).has_value());
  CHECK_FALSE(units.find(std::string(65, 'm')).has_value());
  std::string cancelling = "m";
  while (cancelling.size() <= longest_unit_text) {
    cancelling += ".m.m-1.m-1";
  }
  CHECK_FALSE(units.find(cancelling).has_value());
}

TEST_CASE("every symbol with every power reads back as itself") {
  UnitTable units;
  int wrong = 0;
  for (const Symbol& symbol : symbols()) {
    for (int power = -largest_power; power <= largest_power; ++power) {
      const bool is_point = !symbol.difference.empty();
      if (power == 0 || (is_point && power != 1)) {
        continue;
      }
      const std::string text = write_factors({{*find_symbol(symbol.text), static_cast<std::int8_t>(power)}});
      const auto id = units.find(text);
      wrong += id && units.at(*id).text == text && units.at(*id).factors.at(0).power == power ? 0 : 1;
    }
  }
  CHECK(wrong == 0);
}

TEST_CASE("every product and quotient of two symbols reads back as itself") {
  UnitTable units;
  int wrong = 0;
  for (const Symbol& first : symbols()) {
    for (const Symbol& second : symbols()) {
      const UnitId a = units.find(first.text).value();
      const UnitId b = units.find(second.text).value();
      for (const auto& combined : {units.product(a, b), units.quotient(a, b)}) {
        const bool point = units.at(a).point || units.at(b).point;
        wrong += combined.has_value() != point ? 0 : 1;
        // A new table, which has not interned the text yet.
        UnitTable other;
        const auto again = combined ? other.find(units.at(*combined).text) : std::nullopt;
        wrong += !combined || (again && other.at(*again).factors == units.at(*combined).factors) ? 0 : 1;
      }
    }
  }
  CHECK(wrong == 0);
}

TEST_CASE("a mass times a length is not written like a torque") {
  UnitTable units;
  const UnitId product = units.product(units.find("lb").value(), units.find("in").value()).value();
  CHECK(units.at(product).text == "lb1.in1");
  CHECK(units.find("lb1.in1") == product);
  CHECK(units.find("lb.in") == units.find("lbf.in"));
}
