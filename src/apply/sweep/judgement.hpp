#pragma once
// The verdicts of one record against one specification, without texts.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "judge/evaluate/evaluate.hpp"
#include "language/check/rules.hpp"

namespace plumbrule::sweep {

using evaluate::Verdict;

/// A specification that an archive is held against. The rules and the plan must outlive it.
struct Against {
  std::string name, edition;
  const check::Rules* rules = nullptr;
  const plan::Plan* plan = nullptr;
};

/// The margin of a clause in thousandths of its limit, rounded down and kept within +-widest_margin: the least headroom
/// (explain/headroom.hpp) of the comparisons that stand as the clause does.
inline constexpr std::int32_t widest_margin = 2000;
inline constexpr std::int32_t no_margin = INT32_MIN;

/// One entry for each requirement of the plan.
struct Judgement {
  std::vector<Verdict> verdicts;
  std::vector<std::int32_t> margins;
  evaluate::Outcome outcome{};
};

/// Headroom in percent of the limit as a margin.
[[nodiscard]] std::int32_t margin_of(const std::optional<quantity::Decimal>& headroom);

/// By the evaluator, whatever the evidence holds. `faulty`: the evidence was reported to have errors, so that it cannot
/// comply as a whole.
void judge(const Against& against, const evidence::Evidence& evidence, bool faulty, Judgement& out);

/// The outcome of the verdicts in `out`.
void conclude(const Against& against, bool faulty, Judgement& out);

}  // namespace plumbrule::sweep
