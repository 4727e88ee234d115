#include "apply/contrast/left_out.hpp"

#include <map>
#include <set>

#include "apply/contrast/applying.hpp"
#include "apply/contrast/envelope_words.hpp"

namespace plumbrule::contrast {

// A category that two specifications declare with other words: what one calls a class is unknown to the other.
void leave_out_other_words(EnvelopeScope& scope) {
  std::map<std::string, std::pair<std::size_t, std::set<std::string>>> known;
  for (std::size_t at = 0; at < scope.rules.size(); ++at) {
    for (const check::Category& category : scope.rules[at]->categories) {
      const std::set<std::string> words(category.words.begin(), category.words.end());
      const auto [one, fresh] = known.emplace(category.name, std::pair(at, words));
      if (!fresh && one->second.second != words) {
        scope.envelope.left_out.push_back(scope.rules[at]->specification->name + ": the category `" + category.name +
                                          "` has other words in " +
                                          scope.rules[one->second.first]->specification->name);
      }
    }
  }
}

// What is asked beside the limit: said once for a clause, since the envelope does not hold it.
void leave_out_beside(EnvelopeScope& scope, std::size_t at, const Demand& demand) {
  const check::Limit& limit = demand.assertion->limit;
  if (demand.one->alternatives[demand.alternative].ends) {
    scope.leave_out(at, demand, "the rule on consecutive sieves");
  }
  if (demand.assertion->staged) {
    scope.leave_out(at, demand, "the rounding of each specimen");
  }
  if (rounding_matters(limit)) {
    scope.leave_out(at, demand, "a rounding that lets less pass than the limit as printed");
  }
  if (declares_itself(*scope.rules[at], *demand.assertion)) {
    scope.leave_out(
        at, demand,
        "a measure or condition that the specification declares itself; it stands in the table, not in the rule "
        "file");
  }
}

// Optional tests and advice make no submittal comply.
void find_uncovered(EnvelopeScope& scope, std::size_t at, const std::vector<const Demand*>& demands) {
  Mixes rest{scope.chosen_classes()};
  std::set<std::pair<Asked, std::vector<Asked>>> taken;
  for (const Demand* demand : demands) {
    const bool counts = demand->assertion != nullptr && !demand->requirement->optional &&
                        demand->requirement->severity != check::Severity::advise;
    if (counts && taken.emplace(demand->classes, demand->exceptions).second) {
      rest = without(rest, mixes_of(demand->classes, demand->exceptions, scope.words), scope.words);
    }
  }
  for (const Asked& one : rest) {
    const Asked classes = left_open(one, scope.chosen);
    scope.envelope.uncovered.push_back({at, classes, classes_text(classes)});
  }
}

}  // namespace plumbrule::contrast
