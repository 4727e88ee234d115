#pragma once
// Arithmetic of amounts of which perhaps only a bound is known, and three-valued comparison.

#include <span>

#include "base/quantity/rounding.hpp"
#include "judge/evaluate/evaluate.hpp"

namespace plumbrule::evaluate {

using quantity::Amount;
using quantity::Bound;

/// The bound of -x.
[[nodiscard]] Bound mirrored(Bound bound);

/// What is known of the sum, difference, product, quotient, larger or smaller of two amounts in matching units. Units
/// are not looked at; the result has the unit of `left`.
[[nodiscard]] Amount apply(plan::OpCode code, const Amount& left, const Amount& right);

/// What is known of a value from below and from above. The same amount twice, unless both ends are known and differ.
struct Ends {
  Amount low, high;
};

/// The statistic over amounts in one unit; precondition: not empty, and the statistic is a number (not `each`). The
/// order of the amounts does not matter.
[[nodiscard]] Ends combine(syntax::StatisticKind kind, std::span<const Amount> values);

/// complies, fails or (for a bound that does not decide) not shown.
[[nodiscard]] Verdict compare_high(const Amount& value, const quantity::Threshold& threshold);
[[nodiscard]] Verdict compare_low(const Amount& value, const quantity::Threshold& threshold);

/// By the end that decides; the two never contradict each other.
[[nodiscard]] Verdict decided(const Ends& value, const quantity::Threshold& threshold,
                              Verdict (*compare)(const Amount&, const quantity::Threshold&));

/// Whether the comparison certainly holds.
[[nodiscard]] bool certainly(const Amount& left, syntax::Comparison comparison, const Amount& right);

}  // namespace plumbrule::evaluate
