#pragma once
// Units that the trade writes, with exact conversions.
//
// Exact definitions: 1 ft = 0.3048 m, 1 in = 0.0254 m, 1 yd = 0.9144 m, 1 lb = 0.45359237 kg (international yard and
// pound agreement, 1959), standard gravity 9.80665 m/s2 (3rd CGPM, 1901). A unit is held as factors of symbols
// (g, m, ft, kg-cm ...), so that products and quotients of units have exact scales too.

#include <cstddef>
#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity/decimal.hpp"

namespace plumbrule::quantity {

/// Exponents of mass, length, time and temperature.
struct Dimension {
  std::int8_t mass = 0;
  std::int8_t length = 0;
  std::int8_t time = 0;
  std::int8_t temperature = 0;
  friend bool operator==(const Dimension&, const Dimension&) = default;
};

/// In words for messages: "a mass per area", "a torque", "a plain number or percentage", "a temperature" ...; for a
/// dimension without a name of its own, its exponents ("mass x length^-3").
[[nodiscard]] std::string describe(const Dimension& dimension);

struct Unit;
/// The same for a unit, which tells a temperature from a difference of temperatures.
[[nodiscard]] std::string describe(const Unit& unit);

struct UnitFactor {
  std::uint8_t symbol = 0;  // index into the table of symbols (symbols.hpp)
  std::int8_t power = 0;
  friend bool operator==(const UnitFactor&, const UnitFactor&) = default;
};

/// A unit. value in coherent SI units = (value + zero) * numerator / denominator.
struct Unit {
  std::string text;                 // canonical: "g/m2", "kg-cm", "N.m", "%", "" for a plain number
  std::vector<UnitFactor> factors;  // sorted by symbol, no power 0
  Dimension dimension;
  Decimal numerator = 1;
  Decimal denominator = 1;
  Decimal zero = 0;    // only for a temperature point: -32 for degF so that 0 is the freezing point of water
  bool point = false;  // degC, degF: a point on a scale. Cdeg, Fdeg: a difference of temperatures.
};

using UnitId = std::uint16_t;

/// The longest text of a unit and the largest power of a symbol in it; more is refused.
inline constexpr std::size_t longest_unit_text = 64;
inline constexpr int largest_power = 9;

/// Interns units: the same text or the same factors give the same id. Id 0 is the plain number, whose text is "".
class UnitTable {
 public:
  UnitTable();
  static constexpr UnitId number = 0;
  /// Looks a written unit up: a known symbol or alias (`g`, `degC`, `kg-cm`, `kg·cm`, `kgf.cm`, `N·m`, `N.m`,
  /// `lbf.in`, `in-lb`, `%`, `points` ...), or powers, products (`.` or `·`) and one `/` ("g/ft2", "lb/yd2",
  /// "kg/m³", "1/m2", "g/m2.h" with h below the line). Nothing when a part is empty or unknown, a temperature point is
  /// multiplied, a power passes `largest_power`, or the text is too long. find(at(id).text) is id.
  std::optional<UnitId> find(std::string_view text);
  /// Nothing when a or b is a temperature point, or the result passes the limits above. The same factor above and
  /// below the line cancels (g/g is the plain number); mm and in do not ("in/mm", with the right scale).
  std::optional<UnitId> product(UnitId a, UnitId b);
  std::optional<UnitId> quotient(UnitId a, UnitId b);
  /// The unit of a difference of two values of this unit: degC -> Cdeg; any other unit: itself.
  [[nodiscard]] UnitId difference(UnitId a) const;
  /// Valid as long as the table, also while units are added.
  [[nodiscard]] const Unit& at(UnitId id) const { return units_.at(id); }
  [[nodiscard]] std::size_t size() const { return units_.size(); }

 private:
  std::deque<Unit> units_;  // not a vector: what at() returned stays valid while units are added
  std::map<std::string, UnitId, std::less<>> by_text_;  // by canonical text, which is unique to the factors
  std::optional<UnitId> intern(std::vector<UnitFactor> factors);
};

/// Whether a number in one unit may be written for the other. Of units without a dimension `%` stands for itself only,
/// and a plain number may stand for points or cycles; anything else only for itself. True for units with a dimension.
[[nodiscard]] bool same_kind_of_number(const Unit& found, const Unit& wanted);

/// Same dimension and both points or both not.
[[nodiscard]] bool convertible(const Unit& from, const Unit& to);

/// The arithmetic of a conversion, worked out once: (value + before) * multiply / divide + after.
struct Conversion {
  Decimal before = 0;
  Decimal multiply = 1;
  Decimal divide = 1;
  Decimal after = 0;
};

/// Precondition: convertible(from, to). The scale of the conversion is a fraction; when it, or its inverse, is a
/// decimal number (in to mm is 25.4, mm to in is 1/25.4, g/in2 to g/ft2 is 144), only that one step is left and the
/// result is rounded at most once; otherwise (lb/yd2 to kg/m2) it is a product and a division.
[[nodiscard]] Conversion conversion(const Unit& from, const Unit& to);

/// For a value of at most `most_digits` digits and units that the trade writes, a result that has at most 34 digits is
/// exact; beyond that each step rounds at the 34th digit. Converting to a unit of the same scale changes nothing, not
/// even the digits as written.
[[nodiscard]] Decimal convert(const Decimal& value, const Conversion& steps);
[[nodiscard]] Decimal convert(const Decimal& value, const Unit& from, const Unit& to);

/// Every symbol and alias, for suggestions ("did you mean").
[[nodiscard]] std::vector<std::string_view> known_units();

}  // namespace plumbrule::quantity
