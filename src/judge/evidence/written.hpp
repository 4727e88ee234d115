#pragma once
// How a submittal writes a quantity: "798.6 g", "180 s or more", "7.8 % of dry aggregate", "No. 4", "2.05".

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "base/quantity/amount.hpp"

namespace plumbrule::evidence {

struct Written {
  quantity::Bound bound = quantity::Bound::exact;
  quantity::Decimal value;
  std::string_view unit;   // as written, empty for a plain number
  std::string_view basis;  // what stands after "of": "dry aggregate"; empty if not stated
};

/// What was found and how to mend it, worded as a diagnostic.
struct Unreadable {
  std::string message;
  std::string help;
};

/// Bounds are written "180 s or more", "at least 180 s", ">= 180 s", "180+ s", "more than 180 s", "> 180 s", and the
/// same downwards ("or less", "at most", "<=", "less than", "<"). A comma as decimal sign, thousands separators,
/// exponents, fractions, tolerances, "about", a plus sign, "n/a", an empty text, more than 17 digits and a second
/// number are unreadable, each with its own message. "-3 g" is read, also with the minus sign U+2212. Blanks around and
/// between may be no-break blanks. The views point into `text`.
[[nodiscard]] std::variant<Written, Unreadable> read_written(std::string_view text);

/// A date "2026-03-20" as days since 1970-01-01; nothing for anything that is not a day of the calendar.
[[nodiscard]] std::optional<std::int32_t> read_date(std::string_view text);

}  // namespace plumbrule::evidence
