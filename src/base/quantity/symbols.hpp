#pragma once
// The symbols from which units are built, and the other ways in which the trade writes them.

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "base/quantity/unit.hpp"

namespace plumbrule::quantity {

/// One indivisible unit. value in coherent SI units = (value + zero) * numerator / denominator, all written as
/// decimals.
struct Symbol {
  std::string_view text;
  Dimension dimension;
  std::string_view numerator = "1";
  std::string_view denominator = "1";
  std::string_view zero = "0";
  std::string_view difference = {};  // only of a temperature point: the symbol of its differences
};

/// Another way to write one symbol or a product of symbols: "°C" is "degC", "in-lb" is "lbf.in".
struct Alias {
  std::string_view text;
  std::string_view meaning;
};

/// In the order in which factors stand in a canonical text: "N.m", not "m.N".
[[nodiscard]] std::span<const Symbol> symbols();
/// With '.' for every '·'; find_alias expects the same.
[[nodiscard]] std::span<const Alias> aliases();

[[nodiscard]] std::optional<std::uint8_t> find_symbol(std::string_view text);
/// The meaning of an alias.
[[nodiscard]] std::optional<std::string_view> find_alias(std::string_view text);

}  // namespace plumbrule::quantity
