#include "apply/contrast/applying.hpp"

#include <algorithm>

namespace plumbrule::contrast {
namespace {

enum class Holds : std::uint8_t { yes, no, open };

Holds holds(const std::map<std::string, std::set<std::string>>& wanted, const Classes& chosen) {
  Holds out = Holds::yes;
  for (const auto& [category, words] : wanted) {
    const auto own = chosen.find(category);
    if (own == chosen.end()) {
      out = Holds::open;
    } else if (words.count(own->second) == 0) {
      return Holds::no;
    }
  }
  return out;
}

// The place of a case among those of its requirement: the narrower, the smaller.
std::ptrdiff_t place_of(const Demand& demand) { return demand.one - demand.requirement->cases.data(); }

}  // namespace

// The demands of one specification that may apply, in order. The narrowest case that holds hides all broader ones;
// narrower ones that may hold stay beside it.
std::vector<const Demand*> applying(const std::vector<Demand>& demands, const Classes& chosen) {
  std::map<const check::Requirement*, std::ptrdiff_t> decided;
  for (const Demand& demand : demands) {
    if (holds(demand.classes, chosen) == Holds::yes) {
      const auto [at, fresh] = decided.emplace(demand.requirement, place_of(demand));
      at->second = std::min(at->second, place_of(demand));
    }
  }
  std::vector<const Demand*> out;
  for (const Demand& demand : demands) {
    const auto found = decided.find(demand.requirement);
    const bool hidden = found != decided.end() && place_of(demand) > found->second;
    if (!hidden && holds(demand.classes, chosen) != Holds::no) {
      out.push_back(&demand);
    }
  }
  return out;
}

Asked left_open(const Asked& asked, const Classes& chosen) {
  Asked out;
  for (const auto& [category, words] : asked) {
    if (chosen.count(category) == 0) {
      out.emplace(category, words);
    }
  }
  return out;
}

// The exceptions that may hold, in an order that does not depend on the document.
std::vector<Asked> exceptions_of(const Demand& demand, const Classes& chosen) {
  std::vector<Asked> out;
  for (const Asked& one : demand.exceptions) {
    if (holds(one, chosen) != Holds::no) {
      out.push_back(left_open(one, chosen));
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace plumbrule::contrast
