#pragma once
// The derivation of one finding, line by line. Internal to explain.

#include "judge/explain/wording.hpp"

namespace plumbrule::explain {

[[nodiscard]] std::vector<Line> derivation(const Context& context, const evaluate::Finding& finding);

}  // namespace plumbrule::explain
