#include "base/quantity/unit.hpp"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "base/quantity/rounding.hpp"

using namespace plumbrule::quantity;

namespace {

Decimal converted(const char* value, const char* from, const char* to) {
  UnitTable units;
  const UnitId source = units.find(from).value();
  const UnitId target = units.find(to).value();
  REQUIRE(convertible(units.at(source), units.at(target)));
  return convert(Decimal::of(value), units.at(source), units.at(target));
}

struct Row {
  const char* value;
  const char* from;
  const char* printed;  // as the source prints it, whose last place is the one to round to
  const char* to;
};

void check_rows(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    INFO(row.value << " " << row.from << " to " << row.to);
    const Decimal printed = Decimal::of(row.printed);
    CHECK(round_to(converted(row.value, row.from, row.to), printed.last_place(), Ties::to_even).text() == row.printed);
  }
}

}  // namespace

TEST_CASE("conversions that are exact come out exact") {
  // By the definitions of 1959 (yard and pound) and 1901 (standard gravity).
  CHECK(converted("1", "ft2", "m2") == Decimal::of("0.09290304"));
  CHECK(converted("1", "kg-cm", "N.m") == Decimal::of("0.0980665"));
  CHECK(converted("1", "kg-mm", "kg-cm") == Decimal::of("0.1"));
  CHECK(converted("125", "lb", "kg") == Decimal::of("56.69904625"));
  CHECK(converted("1", "gal", "L") == Decimal::of("3.785411784"));
  CHECK(converted("1", "gal", "in3") == 231);
  CHECK(converted("1", "g/m2", "g/ft2") == Decimal::of("0.09290304"));
  CHECK(converted("1", "lbf.in", "N.m") == Decimal::of("0.1129848290276167"));
  CHECK(converted("1", "ton", "lb") == 2000);
  CHECK(converted("16", "oz", "lb") == 1);
  CHECK(converted("2.1", "in", "mm").text() == "53.34");
  CHECK(converted("25.4", "mm", "in").text() == "1");
  CHECK(converted("1", "h", "min").text() == "60");
  CHECK(converted("90", "min", "h").text() == "1.5");
  CHECK(converted("7.2", "g/in2", "g/ft2").text() == "1036.8");
  CHECK(converted("1036.8", "g/ft2", "g/in2").text() == "7.2");
  CHECK(converted("9", "lb/yd2", "lb/ft2").text() == "1");
  CHECK(converted("5", "%", "").text() == "0.05");
  CHECK(converted("0.05", "", "%").text() == "5");
  CHECK(converted("3", "points", "").text() == "3");
  CHECK(converted("1000", "cycles", "").text() == "1000");
  CHECK(converted("40", "dmm", "mm").text() == "4.0");
  CHECK(converted("600", "um", "mm").text() == "0.600");
}

TEST_CASE("factors as a reference table prints them") {
  // Reference table of exact conversions, computed from the same definitions, rounded where it is printed rounded.
  check_rows({{"1", "g/ft2", "10.763910417", "g/m2"},
              {"1", "kg-cm", "0.8679617", "lbf.in"},
              {"1", "N.m", "10.19716", "kg-cm"},
              {"1", "lb/yd2", "0.54249196", "kg/m2"},
              {"1", "kg/m2", "1.84334529", "lb/yd2"},
              {"1", "gal/ton", "4.1727", "L/t"}});
}

TEST_CASE("limits in both units") {
  // The same reference table; values computed from the exact definitions.
  check_rows(
      {{"50", "g/ft2", "538.196", "g/m2"},  {"55", "g/ft2", "592.02", "g/m2"},   {"60", "g/ft2", "645.83", "g/m2"},
       {"70", "g/ft2", "753.47", "g/m2"},   {"75", "g/ft2", "807.293", "g/m2"},  {"450", "g/m2", "41.81", "g/ft2"},
       {"500", "g/m2", "46.45", "g/ft2"},   {"538", "g/m2", "49.982", "g/ft2"},  {"540", "g/m2", "50.168", "g/ft2"},
       {"650", "g/m2", "60.39", "g/ft2"},   {"800", "g/m2", "74.32", "g/ft2"},   {"807", "g/m2", "74.973", "g/ft2"},
       {"810", "g/m2", "75.25", "g/ft2"},   {"12", "kg-cm", "1.1768", "N.m"},    {"12", "kg-cm", "10.416", "lbf.in"},
       {"1.2", "N.m", "12.24", "kg-cm"},    {"20", "kg-cm", "1.9613", "N.m"},    {"20", "kg-cm", "17.359", "lbf.in"},
       {"2.0", "N.m", "20.39", "kg-cm"},    {"23", "kg-cm", "2.2555", "N.m"},    {"26", "kg-cm", "2.5497", "N.m"},
       {"8", "lb/yd2", "4.340", "kg/m2"},   {"10", "lb/yd2", "5.425", "kg/m2"},  {"12", "lb/yd2", "6.510", "kg/m2"},
       {"15", "lb/yd2", "8.137", "kg/m2"},  {"18", "lb/yd2", "9.765", "kg/m2"},  {"20", "lb/yd2", "10.850", "kg/m2"},
       {"22", "lb/yd2", "11.935", "kg/m2"}, {"30", "lb/yd2", "16.275", "kg/m2"}, {"2", "lb/yd2", "1.085", "kg/m2"},
       {"2", "gal/ton", "8.345", "L/t"}});
}

TEST_CASE("temperatures are points, their differences are not") {
  // Equivalent temperatures of the reference table, computed from the definition.
  check_rows({{"45", "degF", "7.22", "degC"},
              {"50", "degF", "10", "degC"},
              {"77", "°F", "25", "°C"},
              {"100", "degF", "37.78", "degC"},
              {"104", "degF", "40", "degC"},
              {"113", "degF", "45", "degC"},
              {"135", "degF", "57.22", "degC"},
              {"170", "degF", "76.67", "degC"},
              {"350", "degF", "176.67", "degC"}});
  CHECK(converted("25", "degC", "degF").text() == "77.0");
  CHECK(converted("-40", "degC", "degF") == -40);
  CHECK(converted("77.50", "degF", "degF").text() == "77.50");
  CHECK(converted("9", "Fdeg", "Cdeg").text() == "5");
  CHECK(converted("5", "Cdeg", "Fdeg") == 9);
  UnitTable units;
  const UnitId celsius = units.find("degC").value();
  const UnitId step = units.find("Cdeg").value();
  CHECK_FALSE(convertible(units.at(celsius), units.at(step)));
  CHECK(units.difference(celsius) == step);
  CHECK(units.difference(units.find("degF").value()) == units.find("Fdeg").value());
  CHECK(units.difference(step) == step);
  CHECK_FALSE(units.product(celsius, UnitTable::number).has_value());
  CHECK_FALSE(units.quotient(UnitTable::number, celsius).has_value());
  CHECK(units.at(units.quotient(step, step).value()).text.empty());
}

TEST_CASE("the same scale keeps the digits as written") {
  for (const char* unit : {"", "g", "degF", "lb/yd2", "%", "psi", "Fdeg", "kg-cm", "g/ft2"}) {
    INFO(unit);
    CHECK(converted("2.10", unit, unit).text() == "2.10");
  }
  CHECK(converted("2.10", "mL", "cm3").text() == "2.10");
  CHECK(converted("2.10", "N", "kg.m/s2").text() == "2.10");
  CHECK(converted("2.10", "L/t", "mL/kg").text() == "2.10");
}

TEST_CASE("there and back gives the value again where both ways are exact") {
  UnitTable units;
  const UnitId inch = units.find("in").value();
  const UnitId millimetre = units.find("mm").value();
  for (const char* value : {"0", "1", "2.10", "538.5", "-7.25", "12345678901234567"}) {
    const Decimal there = convert(Decimal::of(value), units.at(inch), units.at(millimetre));
    CHECK(convert(there, units.at(millimetre), units.at(inch)) == Decimal::of(value));
  }
}

TEST_CASE("a conversion is one step where its scale allows") {
  UnitTable units;
  const auto steps = [&](const char* from, const char* to) {
    const UnitId source = units.find(from).value();
    const UnitId target = units.find(to).value();
    return conversion(units.at(source), units.at(target));
  };
  CHECK(steps("in", "mm").multiply == Decimal::of("25.4"));
  CHECK(steps("in", "mm").divide == 1);
  CHECK(steps("mm", "in").multiply == 1);
  CHECK(steps("mm", "in").divide == Decimal::of("25.4"));
  CHECK(steps("g/in2", "g/ft2").multiply == 144);
  CHECK(steps("degF", "degC").before == -32);
  CHECK(steps("degF", "degC").divide == Decimal::of("1.8"));
  CHECK(steps("lb/yd2", "kg/m2").multiply == Decimal::of("0.45359237"));
  CHECK(steps("lb/yd2", "kg/m2").divide == Decimal::of("0.83612736"));
}

TEST_CASE("the same text or the same factors give the same unit") {
  UnitTable units;
  CHECK(units.find("") == UnitTable::number);
  CHECK(units.at(UnitTable::number).text.empty());
  CHECK(units.find("g/m2") == units.find("g/m²"));
  CHECK(units.find("kg/m3") == units.find("kg/m³"));
  CHECK(units.find("g/m2") == units.find("g.m-2"));
  CHECK(units.find("N.m") == units.find("N·m"));
  CHECK(units.find("N.m") == units.find("Nm"));
  CHECK(units.find("N.m") == units.find("m.N"));
  const std::size_t before = units.size();
  CHECK(units.find("g/m2").has_value());
  CHECK(units.size() == before);
  const UnitId grams = units.find("g").value();
  const UnitId area = units.find("m2").value();
  CHECK(units.quotient(grams, area) == units.find("g/m2"));
}

TEST_CASE("a unit stays valid while others are added") {
  UnitTable units;
  const Unit& grams = units.at(units.find("g").value());
  for (const char* other : {"kg", "g/m2", "lb/yd2", "N.m", "g/ft2", "L/t", "gal/ton", "psi", "mm", "in/mm"}) {
    CHECK(units.find(other).has_value());
  }
  CHECK(grams.text == "g");
}

TEST_CASE("products and quotients") {
  UnitTable units;
  const auto id = [&](const char* text) { return units.find(text).value(); };
  const auto product = [&](const char* a, const char* b) { return units.at(units.product(id(a), id(b)).value()).text; };
  const auto quotient = [&](const char* a, const char* b) {
    return units.at(units.quotient(id(a), id(b)).value()).text;
  };
  CHECK(product("g", "1/m2") == "g/m2");
  CHECK(product("m", "N") == "N.m");
  CHECK(product("in", "lbf") == "lbf.in");
  CHECK(product("g", "") == "g");
  CHECK(quotient("g", "g").empty());
  CHECK(quotient("mm", "mm").empty());
  CHECK(quotient("", "m2") == "1/m2");
  CHECK(quotient("in", "mm") == "in/mm");
  CHECK(quotient("g/m2", "g/m2").empty());
  CHECK(quotient("%", "%").empty());
  const Unit& strain = units.at(units.quotient(id("in"), id("mm")).value());
  CHECK(convertible(strain, units.at(UnitTable::number)));
  CHECK(convert(1, strain, units.at(UnitTable::number)) == Decimal::of("25.4"));
  CHECK(units.at(id("N.m")).dimension == units.at(id("kg-cm")).dimension);
}

TEST_CASE("a product that passes the limits is refused") {
  UnitTable units;
  UnitId power = units.find("m").value();
  int steps = 1;
  while (const auto next = units.product(power, units.find("m").value())) {
    power = *next;
    ++steps;
  }
  CHECK(steps == largest_power);
  CHECK(units.at(power).text == "m9");
  CHECK_FALSE(units.find("L9.mL9.gal9.m9.cm9.mm9.um9.in9.ft9.yd9").has_value());  // length^153
  UnitId longest = units.find("points2.cycles2.kg2.mg2.lb2.oz2.ton2").value();
  CHECK_FALSE(units.product(longest, units.find("kg-cm2.kg-mm2.MPa2.kPa2.psi2").value()).has_value());
}

TEST_CASE("dimensions in words") {
  UnitTable units;
  const auto words = [&](const char* text) { return describe(units.at(units.find(text).value()).dimension); };
  CHECK(words("") == "a plain number or percentage");
  CHECK(words("%") == "a plain number or percentage");
  CHECK(words("g/ft2") == "a mass per area");
  CHECK(words("kg-cm") == "a torque");
  CHECK(words("lbf.in") == "a torque");
  CHECK(words("degC") == "a temperature");
  CHECK(words("gal/ton") == "a volume per mass");
  CHECK(words("psi") == "a pressure");
  CHECK(words("g.m") == "mass x length");
  CHECK(words("g/m4") == "mass x length^-4");
}
