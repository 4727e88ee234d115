#pragma once
// One value of a flat record, as it was found.

#include <cstdint>
#include <string_view>

#include "apply/sweep/short_number.hpp"

namespace plumbrule::sweep {

/// `other`: a number that is not short, or anything that only the full reader should look at.
enum class CellKind : std::uint8_t { absent, number, text, other };

struct Cell {
  CellKind kind = CellKind::absent;
  ShortNumber number;
  std::string_view text;  // of a text, without quotes; of a number, as written
};

}  // namespace plumbrule::sweep
