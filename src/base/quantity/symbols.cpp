#include "base/quantity/symbols.hpp"

#include <algorithm>
#include <array>

namespace plumbrule::quantity {

namespace {

constexpr Dimension plain{};
constexpr Dimension mass{1, 0, 0, 0};
constexpr Dimension length{0, 1, 0, 0};
constexpr Dimension volume{0, 3, 0, 0};
constexpr Dimension time{0, 0, 1, 0};
constexpr Dimension force{1, 1, -2, 0};
constexpr Dimension torque{1, 2, -2, 0};
constexpr Dimension pressure{1, -1, -2, 0};
constexpr Dimension temperature{0, 0, 0, 1};

// Every figure is exact, by the definitions named in unit.hpp; 1 US gal = 231 in3; 1 short ton = 2000 lb.
constexpr std::array symbol_table = {
    Symbol{"%", plain, "0.01"},
    Symbol{"points", plain},
    Symbol{"cycles", plain},

    Symbol{"kg", mass},
    Symbol{"g", mass, "0.001"},
    Symbol{"mg", mass, "0.000001"},
    Symbol{"t", mass, "1000"},
    Symbol{"lb", mass, "0.45359237"},
    Symbol{"oz", mass, "0.028349523125"},  // avoirdupois: 1/16 lb
    Symbol{"ton", mass, "907.18474"},

    Symbol{"N", force},
    Symbol{"kN", force, "1000"},
    Symbol{"lbf", force, "4.4482216152605"},

    Symbol{"kg-cm", torque, "0.0980665"},  // the weight of a kilogram on an arm of a centimetre
    Symbol{"kg-mm", torque, "0.00980665"},

    Symbol{"Pa", pressure},
    Symbol{"kPa", pressure, "1000"},
    Symbol{"MPa", pressure, "1000000"},
    Symbol{"psi", pressure, "4.4482216152605", "0.00064516"},

    Symbol{"L", volume, "0.001"},
    Symbol{"mL", volume, "0.000001"},
    Symbol{"gal", volume, "0.003785411784"},

    Symbol{"m", length},
    Symbol{"cm", length, "0.01"},
    Symbol{"mm", length, "0.001"},
    Symbol{"um", length, "0.000001"},
    Symbol{"dmm", length, "0.0001"},  // the unit of penetration
    Symbol{"in", length, "0.0254"},
    Symbol{"ft", length, "0.3048"},
    Symbol{"yd", length, "0.9144"},

    Symbol{"s", time},
    Symbol{"min", time, "60"},
    Symbol{"h", time, "3600"},
    Symbol{"d", time, "86400"},

    Symbol{"degC", temperature, "1", "1", "0", "Cdeg"},
    Symbol{"degF", temperature, "5", "9", "-32", "Fdeg"},
    Symbol{"Cdeg", temperature},
    Symbol{"Fdeg", temperature, "5", "9"},
};

constexpr std::array alias_table = {
    Alias{"percent", "%"},
    Alias{"point", "points"},
    Alias{"cycle", "cycles"},
    Alias{"lbs", "lb"},
    Alias{"tonne", "t"},
    Alias{"tons", "ton"},

    // Torque. Nobody in the trade multiplies a mass by a length, so "lb.in" and "kg.cm" are torques as well.
    Alias{"Nm", "N.m"},
    Alias{"N-m", "N.m"},
    Alias{"kg.cm", "kg-cm"},
    Alias{"kgf.cm", "kg-cm"},
    Alias{"kgf-cm", "kg-cm"},
    Alias{"kg.mm", "kg-mm"},
    Alias{"kgf.mm", "kg-mm"},
    Alias{"kgf-mm", "kg-mm"},
    Alias{"lbf-in", "lbf.in"},
    Alias{"in-lbf", "lbf.in"},
    Alias{"in.lbf", "lbf.in"},
    Alias{"lb-in", "lbf.in"},
    Alias{"lb.in", "lbf.in"},
    Alias{"in-lb", "lbf.in"},
    Alias{"in.lb", "lbf.in"},
    Alias{"lbf-ft", "lbf.ft"},
    Alias{"ft-lbf", "lbf.ft"},
    Alias{"ft.lbf", "lbf.ft"},
    Alias{"lb-ft", "lbf.ft"},
    Alias{"lb.ft", "lbf.ft"},
    Alias{"ft-lb", "lbf.ft"},
    Alias{"ft.lb", "lbf.ft"},

    Alias{"l", "L"},
    Alias{"ml", "mL"},
    Alias{"\xC2\xB5m", "um"},  // micro sign
    Alias{"\xCE\xBCm", "um"},  // Greek mu
    Alias{"sec", "s"},
    Alias{"hr", "h"},
    Alias{"day", "d"},
    Alias{"days", "d"},
    Alias{"\xC2\xB0"
          "C",
          "degC"},
    Alias{"\xC2\xB0"
          "F",
          "degF"},
};

static_assert(symbol_table.size() < 256, "UnitFactor holds the index in a byte");

}  // namespace

std::span<const Symbol> symbols() { return symbol_table; }
std::span<const Alias> aliases() { return alias_table; }

std::optional<std::uint8_t> find_symbol(std::string_view text) {
  const auto* const found =
      std::find_if(symbol_table.begin(), symbol_table.end(), [&](const Symbol& symbol) { return symbol.text == text; });
  if (found == symbol_table.end()) {
    return std::nullopt;
  }
  return static_cast<std::uint8_t>(found - symbol_table.begin());
}

std::optional<std::string_view> find_alias(std::string_view text) {
  const auto* const found =
      std::find_if(alias_table.begin(), alias_table.end(), [&](const Alias& alias) { return alias.text == text; });
  return found == alias_table.end() ? std::nullopt : std::optional(found->meaning);
}

}  // namespace plumbrule::quantity
