#pragma once
// The requirements of a specification as single demands: one for each limit that it states, so that two specifications
// can be held against each other.

#include <set>
#include <string>
#include <vector>

#include "apply/contrast/mixes.hpp"
#include "language/check/rules.hpp"

namespace plumbrule::contrast {

/// One limit, or one case that requires nothing. Refers to the rules it was taken from, which must outlive it.
struct Demand {
  const check::Requirement* requirement = nullptr;
  const check::Case* one = nullptr;
  const check::Assertion* assertion = nullptr;  // none: this case requires nothing
  std::size_t alternative = 0;                  // which of `either ... or ...`
  std::string
      subject;  // what is limited, for comparing: measure, conditions in the unit of the condition, base of limit
  std::string measure;            // name, or empty
  std::string who;                // classes in words, empty for all
  Asked classes;                  // the words of each category that is asked about
  std::vector<Asked> exceptions;  // those of the narrower cases, which are for mixes of their own
};

/// In the order of the rule file; of a requirement the general case first.
[[nodiscard]] std::vector<Demand> demands(const check::Rules& rules);

/// The words of each category that the tests ask about.
[[nodiscard]] Asked classes_of(const check::Rules& rules, const std::vector<check::Test>& tests);

/// The words that a limit allows; none for a quantity.
[[nodiscard]] std::set<std::string> allowed_words(const check::Rules& rules, const check::Assertion& assertion);

/// In words, for comparing what is not a limit: "mean of at least 2 specimens"; what a failure leads to, as "reject";
/// "required" or "optional test"; and the last two together, as "reject, optional test".
[[nodiscard]] std::string statistic_of(const Demand& demand);
[[nodiscard]] std::string severity_of(const Demand& demand);
[[nodiscard]] std::string asked_of(const Demand& demand);
[[nodiscard]] std::string weight_of(const Demand& demand);
/// "with every digit", "rounded to 1, ties to even"; with the rules also the unit: "rounded to 1 g/m2, ties to even".
[[nodiscard]] std::string rounding_of(const check::Limit& limit);
[[nodiscard]] std::string rounding_of(const Demand& demand);
[[nodiscard]] std::string rounding_of(const check::Rules& rules, const Demand& demand);
/// The rounding of each specimen and the rule on consecutive sieves, in words.
[[nodiscard]] std::string beside_of(const check::Rules& rules, const Demand& demand);

}  // namespace plumbrule::contrast
