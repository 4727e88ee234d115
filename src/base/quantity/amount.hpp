#pragma once
// A value with its unit, and what is known of it when the operator only noted a bound ("180 s or more").

#include <cstdint>
#include <string_view>

#include "base/quantity/decimal.hpp"
#include "base/quantity/unit.hpp"

namespace plumbrule::quantity {

/// What a reading says of the true value: exactly it, at least / above it, at most / below it, or nothing
/// (`undetermined`: the combination of bounds leaves it open).
enum class Bound : std::uint8_t { exact, at_least, above, at_most, below, undetermined };

struct Amount {
  Decimal value;
  UnitId unit = UnitTable::number;
  Bound bound = Bound::exact;
};

}  // namespace plumbrule::quantity
