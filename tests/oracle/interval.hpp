#pragma once
// What is known of a number: the interval it lies in, with ends that belong to it or not. "180 s or more" is
// [180, infinity), "less than 5 g" is (-infinity, 5), a plain reading is one point. Sums, greatest and least are exact
// interval arithmetic, worked out end by end; products, quotients and spreads give up where language.md, section 9.3
// says so.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/quantity/amount.hpp"
#include "base/quantity/rounding.hpp"

namespace plumbrule::oracle {

using quantity::Decimal;

struct End {
  Decimal value;
  bool infinite = false;
  bool closed = true;
};

struct Interval {
  End low, high;

  [[nodiscard]] static Interval point(const Decimal& value) { return {{value, false, true}, {value, false, true}}; }
  [[nodiscard]] static Interval everything() { return {{{}, true, false}, {{}, true, false}}; }
  [[nodiscard]] static Interval reading(const Decimal& value, quantity::Bound bound);
  /// One point only.
  [[nodiscard]] bool exact() const;
  /// Nothing is known.
  [[nodiscard]] bool unknown() const { return low.infinite && high.infinite; }
  /// Known from below and from above, and not a point.
  [[nodiscard]] bool both_ends() const { return !low.infinite && !high.infinite && !exact(); }
  /// The number of a point.
  [[nodiscard]] const Decimal& value() const { return low.value; }
};

/// Where the table of bounds (language.md, section 9.3) gives up though the interval would say more; the judge follows
/// the table. At the last three the engine may leave open what is decided here: it keeps one end of two in a formula,
/// may take no value of which nothing is known where a refusal asks for it, and may not round an end that is only
/// approached, and a tie, to its own side.
enum class Loss : std::uint8_t {
  product_of_bounds,
  zero_times_bound,
  division_by_bound,
  spread,
  both_ends,
  unknown_refusal,
  staged_tie
};
inline constexpr std::size_t losses = 7;
[[nodiscard]] std::string loss_text(Loss loss);
/// A set of them.
struct Lost {
  std::uint32_t bits = 0;
  void note(Loss loss) { bits |= 1U << static_cast<unsigned>(loss); }
  [[nodiscard]] bool any() const { return bits != 0; }
  [[nodiscard]] bool has(Loss loss) const { return (bits >> static_cast<unsigned>(loss) & 1U) != 0; }
};

[[nodiscard]] Interval add(const Interval& left, const Interval& right);
[[nodiscard]] Interval subtract(const Interval& left, const Interval& right);
[[nodiscard]] Interval multiply(const Interval& left, const Interval& right, Lost& lost);
/// Nothing when the divisor is zero.
[[nodiscard]] std::optional<Interval> divide(const Interval& left, const Interval& right, Lost& lost);
[[nodiscard]] Interval larger(const Interval& left, const Interval& right);
[[nodiscard]] Interval smaller(const Interval& left, const Interval& right);
[[nodiscard]] Interval mean(std::span<const Interval> values);
[[nodiscard]] Interval range(std::span<const Interval> values, Lost& lost);
/// Of a sample; nothing for a single value.
[[nodiscard]] std::optional<Interval> standard_deviation(std::span<const Interval> values, Lost& lost);

/// How a comparison rounds; no place: not at all.
struct Rounding {
  std::optional<Decimal> place;
  quantity::Ties ties{};
};
/// All numbers of the interval, rounded.
[[nodiscard]] Interval rounded(const Interval& values, const Decimal& place, quantity::Ties ties);
/// Whether an end is a tie that does not belong to the interval.
[[nodiscard]] bool open_tie(const End& end, const Decimal& place);

enum class Answer : std::uint8_t { yes, no, open };
/// Whether every number of the interval, rounded and then compared, is at most the limit; no: none is.
[[nodiscard]] Answer at_most(const Interval& values, const Decimal& limit, const Rounding& rounding);
[[nodiscard]] Answer at_least(const Interval& values, const Decimal& limit, const Rounding& rounding);

}  // namespace plumbrule::oracle
