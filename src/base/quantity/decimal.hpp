#pragma once
// Decimal numbers: IEEE 754-2008 decimal128 (34 significant digits), by Intel's decimal floating-point library.
//
// A number keeps the digits it was written with: "2.10" is 210 x 10^-2, so its last written place is known.
// Arithmetic rounds half to even at the 34th digit; results within 34 digits are exact.

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace plumbrule::quantity {

/// How a tie (exactly half-way) is resolved. `to_even`: ASTM E29 rounding rule. `up`: away from zero.
enum class Ties : std::uint8_t { to_even, up };

/// The most digits a written number may have, in all and after the decimal point; longer ones are refused when read,
/// so that a product of a reading and a conversion factor stays exact.
inline constexpr int most_digits = 17;

class Decimal {
 public:
  constexpr Decimal() = default;  // 0
  Decimal(std::int64_t whole);    // NOLINT(google-explicit-constructor): whole numbers are decimals

  /// Reads "-12.50"; ".5" and "5." are refused, so are exponents, signs other than '-', more than `most_digits`
  /// digits (leading zeros not counted) and more than that many decimals. Nothing else may stand in the text. "-0" is
  /// 0.
  [[nodiscard]] static std::optional<Decimal> parse(std::string_view text);
  /// For constants in our own code; precondition: parse(text) succeeds.
  [[nodiscard]] static Decimal of(std::string_view text);

  friend Decimal operator+(const Decimal& a, const Decimal& b);
  friend Decimal operator-(const Decimal& a, const Decimal& b);
  friend Decimal operator*(const Decimal& a, const Decimal& b);
  /// Division by zero gives a number for which finite() is false; callers check.
  friend Decimal operator/(const Decimal& a, const Decimal& b);
  /// a / b when that needs no rounding, otherwise nothing (1 / 3, 1 / 0).
  [[nodiscard]] static std::optional<Decimal> exact_quotient(const Decimal& a, const Decimal& b);
  friend Decimal operator-(const Decimal& a);
  /// Times ten to the power, with the digits kept: 1250 shifted by -2 is 12.50. Precondition: |power| <= 33.
  [[nodiscard]] Decimal shifted(int power) const;
  /// Numeric: 2.10 equals 2.1. Not-finite numbers compare unordered.
  friend std::partial_ordering operator<=>(const Decimal& a, const Decimal& b);
  friend bool operator==(const Decimal& a, const Decimal& b);

  [[nodiscard]] bool finite() const;
  [[nodiscard]] bool zero() const;
  [[nodiscard]] Decimal square_root() const;
  /// The greatest whole number not above this one.
  [[nodiscard]] Decimal floor() const;
  /// What is left after taking away whole divisors towards zero; exact: 7.5 by 2 leaves 1.5, -7.5 by 2 leaves -1.5.
  [[nodiscard]] Decimal remainder(const Decimal& divisor) const;
  /// Rewritten with as many decimals as `pattern` has, rounding once where digits are lost: 538.5 as 0.01 is 538.50.
  /// A number too large to have that many decimals within 34 digits has no digits to lose and is returned as it is.
  [[nodiscard]] Decimal written_as(const Decimal& pattern, Ties ties) const;
  /// True when whole and even.
  [[nodiscard]] bool even() const;
  /// The place of the last digit as written: 2.10 gives 0.01, 538 gives 1, 1200 gives 1.
  [[nodiscard]] Decimal last_place() const;
  /// Trailing zeros after the decimal point removed (and no positive exponent): 2.10 -> 2.1, 1E+3 -> 1000.
  [[nodiscard]] Decimal stripped() const;
  /// Plain notation, never an exponent: "538.195521"; zero has no sign. Not finite: "not a number".
  [[nodiscard]] std::string text() const;

 private:
  // 16 bytes of the library's interchange format; the library's header stays inside decimal.cpp.
  alignas(16) std::uint64_t bits_[2] = {0, 0x3040000000000000ULL};  // coefficient 0, exponent 0 (biased by 6176)
};

}  // namespace plumbrule::quantity
