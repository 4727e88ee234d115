#include "base/quantity/decimal.hpp"

#include <bid_conf.h>
// The functions of the library must follow the configuration.
#include <bid_functions.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <charconv>
#include <cstring>
#include <type_traits>

namespace plumbrule::quantity {

namespace {

constexpr int exponent_bias = 6176;
constexpr int exponent_shift = 49;
constexpr std::uint64_t sign_bit = 1ULL << 63U;

constexpr std::uint64_t exponent_bits(int exponent) {
  return static_cast<std::uint64_t>(exponent + exponent_bias) << exponent_shift;
}

// As std::bit_cast, which standard libraries of the year 2021 do not have yet.
template <typename To, typename From>
To same_bits(const From& from) {
  static_assert(sizeof(To) == sizeof(From) && std::is_trivially_copyable_v<From>);
  To to;
  std::memcpy(static_cast<void*>(&to), &from, sizeof to);
  return to;
}

BID_UINT128 bits(const Decimal& number) { return same_bits<BID_UINT128>(number); }
Decimal number_of(const BID_UINT128& value) { return same_bits<Decimal>(value); }

Decimal build(bool negative, std::uint64_t coefficient, int exponent) {
  const BID_UINT128 built{{coefficient, exponent_bits(exponent) | (negative ? sign_bit : 0)}};
  return number_of(built);
}

using Binary = BID_UINT128(BID_UINT128, BID_UINT128, _IDEC_round, _IDEC_flags*);

Decimal apply(Binary operation, const Decimal& a, const Decimal& b) {
  _IDEC_flags flags = 0;
  return number_of(operation(bits(a), bits(b), BID_ROUNDING_TO_NEAREST, &flags));
}

using Relation = int(BID_UINT128, BID_UINT128, _IDEC_flags*);

bool holds(Relation relation, const Decimal& a, const Decimal& b) {
  _IDEC_flags flags = 0;
  return relation(bits(a), bits(b), &flags) != 0;
}

// Finite numbers only.
int exponent_of(const Decimal& number) {
  _IDEC_flags flags = 0;
  return bid128_quantexp(bits(number), &flags);
}

Decimal requantized(const Decimal& number, int exponent, Ties ties) {
  const auto mode = ties == Ties::to_even ? BID_ROUNDING_TO_NEAREST : BID_ROUNDING_TIES_AWAY;
  _IDEC_flags flags = 0;
  const BID_UINT128 place = bits(build(false, 1, exponent));
  return number_of(bid128_quantize(bits(number), place, static_cast<_IDEC_round>(mode), &flags));
}

struct Digits {
  bool negative = false;
  std::string coefficient;
  int exponent = 0;
};

// The library writes "-1250E-2", always with a sign and an exponent.
Digits digits_of(const Decimal& number) {
  std::array<char, 64> buffer{};
  _IDEC_flags flags = 0;
  bid128_to_string(buffer.data(), bits(number), &flags);
  const std::string_view written(buffer.data());
  const std::size_t mark = written.find('E');
  assert(mark != std::string_view::npos);
  Digits digits{written.front() == '-', std::string(written.substr(1, mark - 1)), 0};
  const std::size_t start = written[mark + 1] == '+' ? mark + 2 : mark + 1;
  std::from_chars(written.data() + start, written.data() + written.size(), digits.exponent);
  return digits;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

}  // namespace

Decimal::Decimal(std::int64_t whole) {
  const bool negative = whole < 0;
  const auto magnitude = static_cast<std::uint64_t>(whole);
  bits_[0] = negative ? 0 - magnitude : magnitude;  // unsigned, so that the least int64 has a magnitude
  bits_[1] |= negative ? sign_bit : 0;
}

std::optional<Decimal> Decimal::parse(std::string_view text) {
  const bool negative = text.starts_with('-');
  text.remove_prefix(negative ? 1 : 0);
  if (text.empty() || !is_digit(text.front()) || !is_digit(text.back())) {
    return std::nullopt;
  }
  std::uint64_t coefficient = 0;
  int significant = 0;
  int decimals = 0;
  bool after_point = false;
  for (const char c : text) {
    if (c == '.' && !after_point) {
      after_point = true;
      continue;
    }
    significant += (significant > 0 || c != '0') ? 1 : 0;
    decimals += after_point ? 1 : 0;
    if (!is_digit(c) || significant > most_digits || decimals > most_digits) {
      return std::nullopt;
    }
    coefficient = coefficient * 10 + static_cast<std::uint64_t>(c - '0');
  }
  return build(negative && coefficient != 0, coefficient, -decimals);
}

Decimal Decimal::of(std::string_view text) {
  const std::optional<Decimal> read = parse(text);
  assert(read.has_value());
  return read.value();
}

Decimal operator+(const Decimal& a, const Decimal& b) { return apply(bid128_add, a, b); }
Decimal operator-(const Decimal& a, const Decimal& b) { return apply(bid128_sub, a, b); }
Decimal operator*(const Decimal& a, const Decimal& b) { return apply(bid128_mul, a, b); }
Decimal operator/(const Decimal& a, const Decimal& b) { return apply(bid128_div, a, b); }
Decimal operator-(const Decimal& a) { return number_of(bid128_negate(bits(a))); }

std::optional<Decimal> Decimal::exact_quotient(const Decimal& a, const Decimal& b) {
  _IDEC_flags flags = 0;
  const Decimal quotient = number_of(bid128_div(bits(a), bits(b), BID_ROUNDING_TO_NEAREST, &flags));
  const bool exact = quotient.finite() && (flags & BID_INEXACT_EXCEPTION) == 0;
  return exact ? std::optional(quotient) : std::nullopt;
}

bool operator==(const Decimal& a, const Decimal& b) { return holds(bid128_quiet_equal, a, b); }

std::partial_ordering operator<=>(const Decimal& a, const Decimal& b) {
  if (holds(bid128_quiet_less, a, b)) {
    return std::partial_ordering::less;
  }
  if (holds(bid128_quiet_greater, a, b)) {
    return std::partial_ordering::greater;
  }
  return a == b ? std::partial_ordering::equivalent : std::partial_ordering::unordered;
}

bool Decimal::finite() const { return bid128_isFinite(bits(*this)) != 0; }
bool Decimal::zero() const { return bid128_isZero(bits(*this)) != 0; }

Decimal Decimal::square_root() const {
  _IDEC_flags flags = 0;
  return number_of(bid128_sqrt(bits(*this), BID_ROUNDING_TO_NEAREST, &flags));
}

Decimal Decimal::floor() const {
  _IDEC_flags flags = 0;
  return number_of(bid128_round_integral_negative(bits(*this), &flags));
}

Decimal Decimal::remainder(const Decimal& divisor) const {
  _IDEC_flags flags = 0;
  return number_of(bid128_fmod(bits(*this), bits(divisor), &flags));
}

Decimal Decimal::written_as(const Decimal& pattern, Ties ties) const {
  if (!finite() || !pattern.finite()) {
    return *this;
  }
  const Decimal rewritten = requantized(*this, std::min(exponent_of(pattern), 0), ties);
  return rewritten.finite() ? rewritten : *this;
}

Decimal Decimal::shifted(int power) const {
  _IDEC_flags flags = 0;
  return number_of(bid128_scalbn(bits(*this), power, BID_ROUNDING_TO_NEAREST, &flags));
}

bool Decimal::even() const { return remainder(2).zero(); }

Decimal Decimal::last_place() const { return finite() ? build(false, 1, std::min(exponent_of(*this), 0)) : *this; }

Decimal Decimal::stripped() const {
  if (!finite()) {
    return *this;
  }
  if (zero()) {
    return {};
  }
  const Digits digits = digits_of(*this);
  const std::size_t last = digits.coefficient.find_last_not_of('0');
  const int trailing = static_cast<int>(digits.coefficient.size() - 1 - last);
  const Decimal rewritten = requantized(*this, std::min(0, digits.exponent + trailing), Ties::to_even);
  return rewritten.finite() ? rewritten : *this;  // a whole number of more than 34 digits keeps its exponent
}

std::string Decimal::text() const {
  if (!finite()) {
    return "not a number";
  }
  Digits digits = digits_of(*this);
  std::string& written = digits.coefficient;
  if (digits.exponent > 0 && !zero()) {
    written.append(static_cast<std::size_t>(digits.exponent), '0');
  } else if (digits.exponent < 0) {
    const auto decimals = static_cast<std::size_t>(-digits.exponent);
    if (written.size() <= decimals) {
      written.insert(0, decimals + 1 - written.size(), '0');
    }
    written.insert(written.size() - decimals, 1, '.');
  }
  return digits.negative && !zero() ? "-" + written : written;
}

}  // namespace plumbrule::quantity
