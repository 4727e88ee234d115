#pragma once
// Under which conditions a demand asks for results, held against another.

#include <string>

#include "language/check/rules.hpp"

namespace plumbrule::contrast {

/// Whether both ask for the same results: the same conditions, with ends, values and tolerances that are the same in
/// whatever unit they are written.
[[nodiscard]] bool same_conditions(const check::Rules& before, const check::Assertion& left, const check::Rules& after,
                                   const check::Assertion& right);

/// "under cure 60 min within 1 min", also where the tolerance is that of the condition itself; "under no condition".
[[nodiscard]] std::string under(const check::Rules& rules, const check::Assertion& assertion);

}  // namespace plumbrule::contrast
