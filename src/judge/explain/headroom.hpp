#pragma once
// How far a compared value stands from its limit, in numbers only.

#include <optional>

#include "judge/evaluate/evaluate.hpp"

namespace plumbrule::explain {

/// How a value stands to a limit.
struct Room {
  check::End end;              // the nearer one
  quantity::Decimal rounded;   // the value, by the rounding of that end
  quantity::Decimal distance;  // from it, inside the limit if positive, in its unit
  // In percent of the limit: outside of the end that is not met, inside of the end of which the distance is the smaller
  // share, which need not be the nearer one. None for bounds, for an end of zero, for a limit of one value or of a
  // temperature.
  std::optional<quantity::Decimal> headroom;
};

/// Whether the ends of the limit are temperatures, also those that a tolerance from the job mix makes. Their zero is a
/// convention, and no distance is a share of them.
[[nodiscard]] bool of_temperature(const check::Rules& rules, const check::Assertion& assertion);
/// Whether a distance from the limit is a share of it: not of temperatures, and not where one value is asked for.
[[nodiscard]] bool is_relative(const check::Rules& rules, const check::Assertion& assertion);

/// Nothing if the limit has no end. `target`: the value of the job mix, for a limit that is a tolerance from it.
/// Precondition: the amount is finite.
[[nodiscard]] std::optional<Room> room(const check::Rules& rules, const check::Assertion& assertion,
                                       const quantity::Amount& amount, const std::optional<quantity::Decimal>& target);

/// The assertion that a check of the plan was compiled from.
[[nodiscard]] const check::Assertion& assertion_of(const check::Rules& rules, const plan::Plan& plan,
                                                   std::uint32_t requirement, std::uint32_t check);

/// Of two compared values of one demand the one that decides: the worse verdict, then the smaller distance.
[[nodiscard]] bool decides_before(const check::Rules& rules, const check::Assertion& assertion,
                                  const evaluate::Step& one, const evaluate::Step& other);

/// The least headroom among the comparisons of a finding that have its verdict; none if none has a headroom, and for a
/// clause that is not shown or does not apply.
[[nodiscard]] std::optional<quantity::Decimal> least_headroom(const check::Rules& rules, const plan::Plan& plan,
                                                              const evaluate::Review& review,
                                                              const evaluate::Finding& finding);

}  // namespace plumbrule::explain
