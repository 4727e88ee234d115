#include "sweep/short_number.hpp"

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

bool is_digit(char byte) { return byte >= '0' && byte <= '9'; }

}  // namespace

std::optional<ShortNumber> read_short(std::string_view text) {
  const bool negative = !text.empty() && text.front() == '-';
  text.remove_prefix(negative ? 1 : 0);
  if (text.empty() || text.size() > 16 || !is_digit(text.front()) || !is_digit(text.back())) {
    return std::nullopt;
  }
  if (text.front() == '0' && text.size() > 1 && text[1] != '.') {
    return std::nullopt;
  }
  std::int64_t digits = 0;
  int decimals = -1;
  for (const char byte : text) {
    if (byte == '.' && decimals < 0) {
      decimals = 0;
      continue;
    }
    if (!is_digit(byte)) {
      return std::nullopt;
    }
    digits = digits * 10 + (byte - '0');
    decimals += decimals < 0 ? 0 : 1;
  }
  if (digits >= digits_end || decimals > most_decimals) {
    return std::nullopt;
  }
  return ShortNumber{static_cast<std::int32_t>(negative ? -digits : digits),
                     static_cast<std::uint8_t>(decimals < 0 ? 0 : decimals)};
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
