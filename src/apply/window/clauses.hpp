#pragma once
// The clauses of a window, each with its profile over the variable. Internal to this folder.

#include "apply/window/find.hpp"

namespace plumbrule::window {

class ClauseFinder {
 public:
  ClauseFinder(const plan::Plan& plan, const Evidence& evidence, check::MeasureId variable,
               std::vector<Decimal> tested);
  /// Nothing for a clause that does not apply.
  [[nodiscard]] std::optional<Clause> clause(const evaluate::Review& review, const evaluate::Finding& finding);

 private:
  const plan::Plan& plan_;
  const Evidence& evidence_;
  check::MeasureId variable_;
  plan::Plan open_;
  plan::Plan ageless_;  // of which tests of any age count
  std::vector<Decimal> tested_;
  std::vector<std::vector<evidence::Design>> designs_;  // of the results, at each tested value
  Evidence moved_;                                      // the one copy that is placed at them in turn

  const Evidence& placed(std::size_t tested);

  [[nodiscard]] Series series(std::uint32_t requirement, std::uint32_t check);
  [[nodiscard]] Series limits_of_variable(std::uint32_t check) const;
  void pass_over(std::uint32_t check, Clause& clause);
  [[nodiscard]] Profile group(std::uint32_t index, Clause& clause);
  [[nodiscard]] Profile with_ends_rule(const Profile& profile, std::uint32_t group, std::uint32_t requirement);
  [[nodiscard]] std::uint32_t tolerance_check(const plan::Case& chosen) const;
  [[nodiscard]] Role role(const Clause& clause) const;
};

}  // namespace plumbrule::window
