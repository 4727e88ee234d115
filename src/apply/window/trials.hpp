#pragma once
// The trials of a submittal along one design variable, or along one condition: what the evaluator compares at each
// tested value. The evaluator is asked with the evidence placed at that value; nothing is measured anew here.

#include <optional>
#include <vector>

#include "judge/evaluate/evaluate.hpp"

namespace plumbrule::window {

using evaluate::Verdict;
using evidence::Evidence;
using quantity::Decimal;

/// What a check found at one tested value of the variable.
struct Reading {
  Decimal at;
  Verdict verdict = Verdict::not_shown;
  evaluate::Reason reason{};
  bool matched = false;  // false: only results that may be meant but cannot be placed
  /// The evidence is in order, and the compared values are exact: lines may be drawn to it.
  bool solid = false;
  /// The compared values, unrounded, in the unit in which the check compares; several if several results match or each
  /// specimen is judged. Meaningless unless solid.
  Decimal least, greatest;
  std::optional<Decimal> target;  // of the job mix, for a tolerance from it
  source::Span place;             // of the first result
};

/// The measures that results vary with `at`, in order.
[[nodiscard]] std::vector<check::MeasureId> variables(const Evidence& evidence);

/// The value that the job mix declares of the measure, in the measure's unit; nothing if it is not stated as a value.
[[nodiscard]] std::optional<Decimal> declared(const plan::Plan& plan, const Evidence& evidence,
                                              check::MeasureId variable);

/// The values of the variable at which there are results, in rising order, in the measure's unit. Results that differ
/// from the job mix in another design variable do not count.
[[nodiscard]] std::vector<Decimal> tested(const plan::Plan& plan, const Evidence& evidence, check::MeasureId variable);

/// Where each result stands if the job mix stood at the value: those tested there are at the job mix, others are not.
[[nodiscard]] std::vector<evidence::Design> designs_at(const plan::Plan& plan, const Evidence& evidence,
                                                       check::MeasureId variable, const Decimal& value);

/// The plan with every limit taken away: a check then complies exactly if its evidence is in order.
[[nodiscard]] plan::Plan without_limits(const plan::Plan& plan);
/// The plan for which a test of any age counts.
[[nodiscard]] plan::Plan without_ages(const plan::Plan& plan);

/// What the check found, from the evidence placed at `at`; nothing if no result matches it or may be meant. `open`: the
/// plan without limits.
[[nodiscard]] std::optional<Reading> reading(const plan::Plan& plan, const plan::Plan& open, const Evidence& evidence,
                                             std::uint32_t requirement, std::uint32_t check, const Decimal& at);

}  // namespace plumbrule::window
