#include "apply/sweep/short_number.hpp"

#include <charconv>
#include <string>

namespace plumbrule::sweep {
namespace {

constexpr std::array<std::int64_t, 16> powers_of_ten{1,
                                                     10,
                                                     100,
                                                     1'000,
                                                     10'000,
                                                     100'000,
                                                     1'000'000,
                                                     10'000'000,
                                                     100'000'000,
                                                     1'000'000'000,
                                                     10'000'000'000,
                                                     100'000'000'000,
                                                     1'000'000'000'000,
                                                     10'000'000'000'000,
                                                     100'000'000'000'000,
                                                     1'000'000'000'000'000};

Decimal scaled(const Decimal& value, int decimals) {
  return value * Decimal{powers_of_ten.at(static_cast<std::size_t>(decimals))};
}

// Precondition: whole.
std::optional<std::int64_t> as_integer(const Decimal& whole) {
  if (!whole.finite() || whole >= Decimal{powers_of_ten.back()} || whole <= Decimal{-powers_of_ten.back()}) {
    return std::nullopt;
  }
  const std::string text = whole.stripped().text();
  std::int64_t out = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), out);
  return read.ec == std::errc() && read.ptr == text.data() + text.size() ? std::optional(out) : std::nullopt;
}

std::int64_t kept_within(const Decimal& whole) {
  if (whole >= Decimal{digits_end}) {
    return digits_end;
  }
  if (whole <= Decimal{-digits_end}) {
    return -digits_end;
  }
  return as_integer(whole).value_or(0);
}

}  // namespace

std::optional<ShortNumber> read_short(std::string_view text) {
  const char* at = text.data();
  ShortNumber out;
  const bool taken = take_short(at, text.data() + text.size(), out);
  return taken && at == text.data() + text.size() ? std::optional(out) : std::nullopt;
}

Decimal exact(const ShortNumber& number) {
  Decimal out{number.digits};
  return out.shifted(-number.decimals);
}

ByDecimals largest_not_above(const Decimal& value, bool inclusive) {
  ByDecimals out{};
  for (int decimals = 0; decimals <= most_decimals; ++decimals) {
    const Decimal wanted = scaled(value, decimals);
    const Decimal whole = wanted.floor();
    out.at(static_cast<std::size_t>(decimals)) =
        kept_within(whole == wanted && !inclusive ? whole - Decimal{1} : whole);
  }
  return out;
}

ByDecimals smallest_not_below(const Decimal& value, bool inclusive) {
  ByDecimals out = largest_not_above(-value, inclusive);
  for (std::int64_t& one : out) {
    one = -one;
  }
  return out;
}

std::optional<std::int64_t> whole_at(const Decimal& value, int decimals) {
  const Decimal wanted = scaled(value, decimals);
  return wanted.finite() && wanted.floor() == wanted ? as_integer(wanted) : std::nullopt;
}

}  // namespace plumbrule::sweep
