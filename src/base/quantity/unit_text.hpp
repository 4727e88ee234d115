#pragma once
// Units as text: reading "g/ft2" into factors and writing factors canonically. Inside the quantity stage only.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity/unit.hpp"

namespace plumbrule::quantity {

/// Power of each symbol, by its index.
using Powers = std::map<std::uint8_t, int>;

/// Sorted factors without power 0; nothing when a power passes `largest_power`.
[[nodiscard]] std::optional<std::vector<UnitFactor>> factors_of(const Powers& powers);

/// The grammar is at UnitTable::find. Precondition: text is not longer than `longest_unit_text`.
[[nodiscard]] std::optional<std::vector<UnitFactor>> read_factors(std::string_view text);

/// The canonical text, which reads back as the same factors. Empty for no factors.
[[nodiscard]] std::string write_factors(const std::vector<UnitFactor>& factors);

}  // namespace plumbrule::quantity
