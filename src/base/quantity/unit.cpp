#include "base/quantity/unit.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cstdlib>
#include <limits>
#include <utility>

#include "base/quantity/symbols.hpp"
#include "base/quantity/unit_text.hpp"

namespace plumbrule::quantity {

namespace {

Decimal power_of(std::string_view base, int exponent) {
  const Decimal factor = Decimal::of(base);
  Decimal result = 1;
  for (int times = 0; times < exponent; ++times) {
    result = result * factor;
  }
  return result;
}

void multiply_scale(Unit& unit, const Symbol& symbol, int power) {
  const bool above = power > 0;
  const int times = std::abs(power);
  unit.numerator = unit.numerator * power_of(above ? symbol.numerator : symbol.denominator, times);
  unit.denominator = unit.denominator * power_of(above ? symbol.denominator : symbol.numerator, times);
}

// Adds `power` times an exponent of a symbol; false when the sum no longer fits.
bool add_exponent(std::int8_t& sum, std::int8_t exponent, int power) {
  const int wide = sum + exponent * power;
  sum = static_cast<std::int8_t>(wide);
  return sum == wide;
}

bool multiply_dimension(Dimension& sum, const Dimension& by, int power) {
  return add_exponent(sum.mass, by.mass, power) && add_exponent(sum.length, by.length, power) &&
         add_exponent(sum.time, by.time, power) && add_exponent(sum.temperature, by.temperature, power);
}

std::optional<Unit> build(std::vector<UnitFactor> factors, std::string text) {
  Unit unit;
  unit.text = std::move(text);
  for (const UnitFactor& factor : factors) {
    const Symbol& symbol = symbols()[factor.symbol];
    if (!multiply_dimension(unit.dimension, symbol.dimension, factor.power)) {
      return std::nullopt;
    }
    multiply_scale(unit, symbol, factor.power);
    unit.point = !symbol.difference.empty();  // a point is the only factor
    unit.zero = Decimal::of(symbol.zero);
  }
  unit.factors = std::move(factors);
  return unit;
}

constexpr std::array<std::pair<Dimension, std::string_view>, 19> named_dimensions = {{
    {{0, 0, 0, 0}, "a plain number or percentage"},
    {{1, 0, 0, 0}, "a mass"},
    {{0, 1, 0, 0}, "a length"},
    {{0, 2, 0, 0}, "an area"},
    {{0, 3, 0, 0}, "a volume"},
    {{0, 0, 1, 0}, "a time"},
    {{0, 0, 0, 1}, "a temperature"},
    {{1, -2, 0, 0}, "a mass per area"},
    {{1, -3, 0, 0}, "a mass per volume"},
    {{1, -1, 0, 0}, "a mass per length"},
    {{-1, 3, 0, 0}, "a volume per mass"},
    {{-1, 2, 0, 0}, "an area per mass"},
    {{0, -2, 0, 0}, "a number per area"},
    {{0, -1, 0, 0}, "a number per length"},
    {{0, 0, -1, 0}, "a number per time"},
    {{0, 1, -1, 0}, "a speed"},
    {{1, 1, -2, 0}, "a force"},
    {{1, 2, -2, 0}, "a torque"},
    {{1, -1, -2, 0}, "a pressure"},
}};

void append_exponent(std::string& text, std::string_view name, int exponent) {
  if (exponent == 0) {
    return;
  }
  text += text.empty() ? "" : " x ";
  text += name;
  text += exponent == 1 ? "" : "^" + std::to_string(exponent);
}

std::optional<std::vector<UnitFactor>> combined(const Unit& a, const Unit& b, int sign_of_b) {
  if (a.point || b.point) {
    return std::nullopt;
  }
  Powers powers;
  for (const UnitFactor& factor : a.factors) {
    powers[factor.symbol] += factor.power;
  }
  for (const UnitFactor& factor : b.factors) {
    powers[factor.symbol] += sign_of_b * factor.power;
  }
  return factors_of(powers);
}

bool same_scale(const Unit& a, const Unit& b) {
  return a.zero == b.zero && a.numerator * b.denominator == b.numerator * a.denominator;
}

}  // namespace

std::string describe(const Dimension& dimension) {
  const auto* const named = std::find_if(named_dimensions.begin(), named_dimensions.end(),
                                         [&](const auto& one) { return one.first == dimension; });
  if (named != named_dimensions.end()) {
    return std::string(named->second);
  }
  std::string text;
  append_exponent(text, "mass", dimension.mass);
  append_exponent(text, "length", dimension.length);
  append_exponent(text, "time", dimension.time);
  append_exponent(text, "temperature", dimension.temperature);
  return text;
}

std::string describe(const Unit& unit) {
  const bool difference = unit.dimension == Dimension{0, 0, 0, 1} && !unit.point;
  return difference ? "a difference of temperatures" : describe(unit.dimension);
}

UnitTable::UnitTable() {
  intern({});
  for (const Symbol& symbol : symbols()) {  // so that difference() always has its answer
    if (const auto difference = find_symbol(symbol.difference)) {
      intern({{*difference, 1}});
    }
  }
}

std::optional<UnitId> UnitTable::find(std::string_view text) {
  if (const auto known = by_text_.find(text); known != by_text_.end()) {
    return known->second;
  }
  if (text.size() > longest_unit_text) {
    return std::nullopt;
  }
  auto factors = read_factors(text);
  return factors ? intern(std::move(*factors)) : std::nullopt;
}

std::optional<UnitId> UnitTable::intern(std::vector<UnitFactor> factors) {
  std::string text = write_factors(factors);
  if (const auto known = by_text_.find(text); known != by_text_.end()) {
    return known->second;
  }
  if (text.size() > longest_unit_text || units_.size() > std::numeric_limits<UnitId>::max()) {
    return std::nullopt;
  }
  auto unit = build(std::move(factors), text);
  if (!unit) {
    return std::nullopt;
  }
  const auto id = static_cast<UnitId>(units_.size());
  units_.push_back(std::move(*unit));
  by_text_.emplace(std::move(text), id);
  return id;
}

std::optional<UnitId> UnitTable::product(UnitId a, UnitId b) {
  auto factors = combined(at(a), at(b), 1);
  return factors ? intern(std::move(*factors)) : std::nullopt;
}

std::optional<UnitId> UnitTable::quotient(UnitId a, UnitId b) {
  auto factors = combined(at(a), at(b), -1);
  return factors ? intern(std::move(*factors)) : std::nullopt;
}

UnitId UnitTable::difference(UnitId a) const {
  const Unit& unit = at(a);
  return unit.point ? by_text_.find(symbols()[unit.factors.front().symbol].difference)->second : a;
}

bool same_kind_of_number(const Unit& found, const Unit& wanted) {
  const bool plain = found.dimension == Dimension{} && wanted.dimension == Dimension{};
  return !plain || found.text == wanted.text || (found.text.empty() && wanted.text != "%");
}

bool convertible(const Unit& from, const Unit& to) { return from.dimension == to.dimension && from.point == to.point; }

Conversion conversion(const Unit& from, const Unit& to) {
  assert(convertible(from, to));
  if (same_scale(from, to)) {
    return {};
  }
  const Decimal above = from.numerator * to.denominator;
  const Decimal below = from.denominator * to.numerator;
  if (const auto factor = Decimal::exact_quotient(above, below)) {
    return {from.zero, *factor, 1, -to.zero};
  }
  if (const auto inverse = Decimal::exact_quotient(below, above)) {
    return {from.zero, 1, *inverse, -to.zero};
  }
  return {from.zero, above, below, -to.zero};
}

Decimal convert(const Decimal& value, const Conversion& steps) {
  // A step that does nothing is left out: it would cost time, and adding 0 rewrites 15E2 as 1500.
  Decimal result = steps.before.zero() ? value : value + steps.before;
  result = steps.multiply == 1 ? result : result * steps.multiply;
  result = steps.divide == 1 ? result : result / steps.divide;
  return steps.after.zero() ? result : result + steps.after;
}

Decimal convert(const Decimal& value, const Unit& from, const Unit& to) { return convert(value, conversion(from, to)); }

std::vector<std::string_view> known_units() {
  std::vector<std::string_view> known;
  known.reserve(symbols().size() + aliases().size());
  for (const Symbol& symbol : symbols()) {
    known.push_back(symbol.text);
  }
  for (const Alias& alias : aliases()) {
    known.push_back(alias.text);
  }
  return known;
}

}  // namespace plumbrule::quantity
