#include "base/quantity/symbols.hpp"

#include <udunits2.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <memory>
#include <set>
#include <string>
#include <utility>
#include <vector>

using namespace plumbrule::quantity;

TEST_CASE("symbols and aliases do not clash") {
  std::set<std::string_view> seen;
  for (const Symbol& symbol : symbols()) {
    CHECK(seen.insert(symbol.text).second);
  }
  UnitTable units;
  for (const Alias& alias : aliases()) {
    INFO(alias.text);
    CHECK(seen.insert(alias.text).second);
    CHECK(units.find(alias.text).has_value());
    CHECK(units.find(alias.text) == units.find(alias.meaning));
  }
  CHECK(known_units().size() == seen.size());
}

namespace {

struct FreeSystem {
  void operator()(ut_system* system) const { ut_free_system(system); }
};
struct FreeUnit {
  void operator()(ut_unit* unit) const { ut_free(unit); }
};
struct FreeConverter {
  void operator()(cv_converter* converter) const { cv_free(converter); }
};
using System = std::unique_ptr<ut_system, FreeSystem>;
using ForeignUnit = std::unique_ptr<ut_unit, FreeUnit>;
using Converter = std::unique_ptr<cv_converter, FreeConverter>;

// Our text, and how UDUNITS writes the same unit. Its own gallon is rounded at the seventh digit, so the gallon is
// given as 231 cubic inches.
const std::vector<std::pair<const char*, const char*>>& both_spellings() {
  static const std::vector<std::pair<const char*, const char*>> spellings = {
      {"", "1"},
      {"%", "percent"},
      {"points", "1"},
      {"cycles", "1"},
      {"kg", "kg"},
      {"g", "g"},
      {"mg", "mg"},
      {"t", "metric_ton"},
      {"lb", "pound"},
      {"oz", "pound/16"},
      {"ton", "short_ton"},
      {"N", "N"},
      {"kN", "kN"},
      {"lbf", "pound_force"},
      {"kg-cm", "kgf.cm"},
      {"kg-mm", "kgf.mm"},
      {"N.m", "N.m"},
      {"lbf.in", "lbf.inch"},
      {"lbf.ft", "lbf.foot"},
      {"Pa", "Pa"},
      {"kPa", "kPa"},
      {"MPa", "MPa"},
      {"psi", "lbf/inch^2"},
      {"L", "liter"},
      {"mL", "milliliter"},
      {"gal", "231 inch^3"},
      {"m", "m"},
      {"cm", "cm"},
      {"mm", "mm"},
      {"um", "um"},
      {"dmm", "0.1 mm"},
      {"in", "inch"},
      {"ft", "foot"},
      {"yd", "yard"},
      {"s", "s"},
      {"min", "minute"},
      {"h", "hour"},
      {"d", "day"},
      {"degC", "celsius"},
      {"degF", "fahrenheit"},
      {"Cdeg", "kelvin"},
      {"Fdeg", "kelvin/1.8"},
      {"g/m2", "g/m^2"},
      {"g/ft2", "g/foot^2"},
      {"g/in2", "g/inch^2"},
      {"kg/m2", "kg/m^2"},
      {"lb/yd2", "pound/yard^2"},
      {"kg/m3", "kg/m^3"},
      {"lb/ft3", "pound/foot^3"},
      {"g/mL", "g/cm^3"},
      {"gal/ton", "231 inch^3/short_ton"},
      {"L/t", "liter/metric_ton"},
      {"m2/kg", "m^2/kg"},
      {"ft2/lb", "foot^2/pound"},
      {"1/m2", "m^-2"},
      {"1/ft2", "foot^-2"},
      {"gal/yd2", "231 inch^3/yard^2"},
      {"L/m2", "liter/m^2"},
      {"ft/min", "foot/minute"},
      {"mm/s", "mm/s"},
  };
  return spellings;
}

struct Pairing {
  UnitId ours;
  ForeignUnit theirs;
  std::string text;
};

std::vector<Pairing> pairings(UnitTable& units, ut_system* system) {
  std::vector<Pairing> found;
  for (const auto& [text, spelling] : both_spellings()) {
    INFO(text << " as " << spelling);
    const auto ours = units.find(text);
    REQUIRE(ours.has_value());
    ForeignUnit theirs(ut_parse(system, spelling, UT_ASCII));
    REQUIRE(theirs != nullptr);
    found.push_back({*ours, std::move(theirs), text});
  }
  return found;
}

void check_pair(const UnitTable& units, const Pairing& from, const Pairing& to) {
  const Converter converter(ut_get_converter(from.theirs.get(), to.theirs.get()));
  REQUIRE(converter != nullptr);
  for (const double value : {1.0, 538.0, 0.25, 77.0}) {
    const Decimal ours = convert(Decimal::of(std::to_string(value)), units.at(from.ours), units.at(to.ours));
    const double expected = cv_convert_double(converter.get(), value);
    const double found = std::strtod(ours.text().c_str(), nullptr);
    // UDUNITS goes through 459.67 and 273.15 in doubles: near 0 degrees only the absolute difference is meaningful.
    const double scale = units.at(from.ours).point ? std::max(std::abs(expected), 100.0) : std::abs(expected);
    INFO(value << " " << from.text << " to " << to.text << ": " << found << ", UDUNITS " << expected);
    CHECK(std::abs(found - expected) < 1e-12 * scale);
  }
}

}  // namespace

TEST_CASE("conversions agree with UDUNITS") {
  ut_set_error_message_handler(ut_ignore);
  const System system(ut_read_xml(nullptr));
  REQUIRE(system != nullptr);
  UnitTable units;
  const std::vector<Pairing> all = pairings(units, system.get());
  std::set<std::string_view> covered;
  int pairs = 0;
  for (const Pairing& from : all) {
    covered.insert(units.at(from.ours).text);
    for (const Pairing& to : all) {
      const Unit& ours = units.at(from.ours);
      const Unit& other = units.at(to.ours);
      if (convertible(ours, other)) {
        check_pair(units, from, to);
        ++pairs;
      }
      // Both must agree on what can be converted, but that UDUNITS makes no difference between points and differences.
      const bool theirs = ut_are_convertible(from.theirs.get(), to.theirs.get()) != 0;
      const bool reciprocal = theirs && !(ours.dimension == other.dimension);  // it also converts s to 1/s
      CHECK((reciprocal || theirs == (ours.dimension == other.dimension)));
    }
  }
  for (const Symbol& symbol : symbols()) {
    INFO(symbol.text);
    CHECK(covered.count(symbol.text) == 1);
  }
  CHECK(pairs > 200);
}
