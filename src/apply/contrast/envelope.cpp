#include "apply/contrast/envelope.hpp"

#include <algorithm>

#include "apply/contrast/applying.hpp"
#include "apply/contrast/exclusions.hpp"
#include "apply/contrast/kept.hpp"
#include "apply/contrast/left_out.hpp"
#include "apply/contrast/rows.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

// To the rows, to what is kept as it stands, or to what is left out.
void place_demand(EnvelopeScope& scope, RowBuilder& rows, std::size_t at, const Demand& demand) {
  if (demand.assertion == nullptr) {
    return;
  }
  const check::Rules& rules = *scope.rules[at];
  if (rules.measures[demand.assertion->measure].type.text) {
    scope.leave_out(at, demand, explain::label(rules, *demand.assertion) + " shall be stated");
    return;
  }
  leave_out_beside(scope, at, demand);
  if (demand.one->alternatives.size() > 1) {
    keep_ways(scope, at, demand);
    return;
  }
  rows.add(at, demand);
}

}  // namespace

bool declares_itself(const check::Rules& rules, const check::Assertion& assertion) {
  return rules.measures[assertion.measure].span.file == rules.file ||
         std::any_of(assertion.conditions.begin(), assertion.conditions.end(), [&](const check::ConditionValue& one) {
           return rules.conditions[one.condition].span.file == rules.file;
         });
}

Envelope envelope(const std::vector<const check::Rules*>& specifications, const Classes& classes) {
  Envelope out;
  EnvelopeScope scope{specifications, classes, words_of(specifications), out};
  RowBuilder rows(scope);
  for (const check::Rules* rules : specifications) {
    out.demands.push_back(demands(*rules));
  }
  leave_out_other_words(scope);
  for (std::size_t at = 0; at < specifications.size(); ++at) {
    const std::vector<const Demand*> all = applying(out.demands[at], classes);
    for (const Demand* demand : all) {
      place_demand(scope, rows, at, *demand);
    }
    find_uncovered(scope, at, all);
  }
  for (Row& row : out.rows) {
    mark_rounded(scope, row);
    mark_beside(scope, row);
  }
  find_exclusions(scope);
  return out;
}

}  // namespace plumbrule::contrast
