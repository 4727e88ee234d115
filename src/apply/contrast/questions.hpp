#pragma once
// Which classes a submittal must state so that a clause can be judged: not those that its verdict hangs on, but those
// that it asks for.

#include <map>
#include <string>
#include <vector>

#include "apply/contrast/contrast.hpp"

namespace plumbrule::contrast {

/// Whether the class must be stated for all of the mixes, or only for some of them.
enum class Stated : std::uint8_t { by_some, by_all };

/// By category.
using Questions = std::map<std::string, Stated>;

/// Of the mixes that a demand is for (language.md, 10.4): without the class, the demand's clause is not
/// shown, whatever the other classes are.
[[nodiscard]] Questions must_state(const check::Rules& rules, const Demand& demand, const Mixes& mixes,
                                   const Words& words);

/// "class to be stated: traffic, course (for some)", "no class to be stated".
[[nodiscard]] std::string to_state(const Questions& classes);

/// Two agencies ask about other classes almost everywhere: told once for each class, with the clauses of either side
/// that ask for it where their counterpart does not.
class AskedOtherwise {
 public:
  void add(const Questions& before, const Demand& left, const Questions& after, const Demand& right);
  [[nodiscard]] std::vector<General> told() const;

 private:
  struct Clauses {
    std::vector<std::string> before, after;
  };
  std::map<std::string, Clauses> by_class_;
};

}  // namespace plumbrule::contrast
