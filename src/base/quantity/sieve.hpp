#pragma once
// Sieves are matched by designation, not by a measured length: "No. 4", "4.75 mm" are one sieve; "3/8 in", "9.5 mm"
// are one. Source: ASTM E11 / ISO 3310 nominal openings.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity/decimal.hpp"

namespace plumbrule::quantity {

/// The nominal opening in mm of a designation ("No. 8", "No 8", "3/8 in", "9.5 mm", "9.50 mm", "600 um", "600 µm",
/// "0.600 mm"). Nothing if there is no such sieve.
[[nodiscard]] std::optional<Decimal> sieve_opening(std::string_view designation);
/// "4.75 mm (No. 4)"; precondition: an opening that sieve_opening returned.
[[nodiscard]] std::string sieve_name(const Decimal& opening_mm);
/// All designations, for suggestions.
[[nodiscard]] std::vector<std::string> known_sieves();

}  // namespace plumbrule::quantity
