#pragma once
// Numbers of few digits as scaled whole numbers: what nearly every value of an archive is. Comparing them with a
// threshold that was brought to their scale beforehand is exact, and a hundred times cheaper than decimal128.

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "base/quantity/decimal.hpp"

namespace plumbrule::sweep {

using quantity::Decimal;

/// A value has at most so many decimals, and its digits as one whole number are below `digits_end`.
inline constexpr int most_decimals = 6;
inline constexpr std::int64_t digits_end = 1'000'000'000;

/// The value digits / 10^decimals.
struct ShortNumber {
  std::int32_t digits = 0;
  std::uint8_t decimals = 0;
};

/// Reads what a submittal and JSON both take for a number, such as "-12.50"; no exponent, no zero in front of other
/// digits, a digit on both sides of the point. Nothing for any other text and for numbers that are not short.
[[nodiscard]] std::optional<ShortNumber> read_short(std::string_view text);

/// The same from the front of a text, as far as it goes; `at` moves behind it. False: there is none, and `out` is as it
/// was. Here so that it is inlined: it reads most bytes of an archive that are not names.
inline bool take_short(const char*& at, const char* end, ShortNumber& out) {
  const auto is_digit = [](char byte) { return byte >= '0' && byte <= '9'; };
  const bool negative = at != end && *at == '-';
  at += negative ? 1 : 0;
  const char* const first = at;
  std::int64_t digits = 0;
  while (at != end && is_digit(*at) && digits < digits_end) {
    digits = digits * 10 + (*at++ - '0');
  }
  if (at == first || (*first == '0' && at != first + 1)) {
    return false;
  }
  std::int64_t decimals = 0;
  if (at != end && *at == '.') {
    const char* const point = at++;
    while (at != end && is_digit(*at) && digits < digits_end) {
      digits = digits * 10 + (*at++ - '0');
    }
    decimals = at - point - 1;
    if (decimals == 0 || decimals > most_decimals) {
      return false;
    }
  }
  if (digits >= digits_end || (at != end && is_digit(*at))) {
    return false;
  }
  out = {static_cast<std::int32_t>(negative ? -digits : digits), static_cast<std::uint8_t>(decimals)};
  return true;
}

/// The same value, with the same number of decimals.
[[nodiscard]] Decimal exact(const ShortNumber& number);

/// A whole number for each number of decimals.
using ByDecimals = std::array<std::int64_t, most_decimals + 1>;

/// The largest n with n / 10^decimals <= value (or < value), kept within +-digits_end.
[[nodiscard]] ByDecimals largest_not_above(const Decimal& value, bool inclusive);
/// The smallest n with n / 10^decimals >= value (or > value), kept within +-digits_end.
[[nodiscard]] ByDecimals smallest_not_below(const Decimal& value, bool inclusive);

/// value * 10^decimals if that is a whole number of less than sixteen digits.
[[nodiscard]] std::optional<std::int64_t> whole_at(const Decimal& value, int decimals);

}  // namespace plumbrule::sweep
