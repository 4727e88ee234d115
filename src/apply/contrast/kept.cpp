#include "apply/contrast/kept.hpp"

#include <algorithm>

#include "apply/contrast/applying.hpp"
#include "apply/contrast/envelope_words.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

std::vector<std::string> subjects_of(const check::Rules& rules, const check::Case& one) {
  std::vector<std::string> out;
  for (const check::Alternative& alternative : one.alternatives) {
    for (const check::Assertion& assertion : alternative.assertions) {
      out.push_back(explain::subject_key(rules, assertion));
    }
  }
  return out;
}

}  // namespace

void keep_ways(EnvelopeScope& scope, std::size_t at, const Demand& demand) {
  for (const check::Alternative& alternative : demand.one->alternatives) {
    if (!alternative.grading.empty() || alternative.assertions.size() != 1) {
      scope.leave_out(at, demand, "one of several ways is a grading; it stands in the table, not in the rule file");
    }
  }
  const std::string ways = ways_text(*scope.rules[at], *demand.one);
  const Asked classes = left_open(demand.classes, scope.chosen);
  const std::vector<Asked> exceptions = exceptions_of(demand, scope.chosen);
  const std::vector<std::string> subjects = subjects_of(*scope.rules[at], *demand.one);
  const auto found = std::find_if(scope.envelope.kept.begin(), scope.envelope.kept.end(), [&](const Kept& kept) {
    return kept.demand == ways && kept.subjects == subjects && kept.classes == classes &&
           kept.exceptions == exceptions && kept.requirement->severity == demand.requirement->severity &&
           kept.requirement->optional == demand.requirement->optional &&
           check::same_age(kept.requirement->validity, demand.requirement->validity);
  });
  if (found == scope.envelope.kept.end()) {
    scope.envelope.kept.push_back({at,
                                   demand.requirement,
                                   demand.one,
                                   ways,
                                   subjects,
                                   classes,
                                   exceptions,
                                   classes_text(classes, exceptions),
                                   {{at, &demand}}});
  } else if (found->all.back().second->one != demand.one) {
    found->all.emplace_back(at, &demand);
  }
}

}  // namespace plumbrule::contrast
