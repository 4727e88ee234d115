#pragma once
// The numbers of a comparison, gathered from the trace. Internal to explain.

#include "judge/explain/explanation.hpp"

namespace plumbrule::explain {

/// Fed every step of a check, in order; gives the values of its specimens in the unit in which it compares.
class Specimens {
 public:
  explicit Specimens(const Context& context) : context_(context) {}
  void begin(std::uint32_t check);
  void see(const evaluate::Step& step);
  [[nodiscard]] std::vector<quantity::Decimal> take();

 private:
  const Context& context_;
  std::uint32_t check_ = check::none;
  std::optional<quantity::Amount> pending_;
  std::vector<quantity::Decimal> values_;
  void keep();
};

/// Limits, unit and sieve of an assertion. `target`: what the job mix states, in the unit in which the check compares.
[[nodiscard]] Numbers numbers(const Context& context, const check::Assertion& assertion,
                              const std::optional<quantity::Decimal>& target);

}  // namespace plumbrule::explain
