#include "apply/contrast/exclusions.hpp"

#include <algorithm>

#include "apply/contrast/rows.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

// Whether limits on the two bind the same numbers: a mean lies between the least and the greatest of its values.
bool bind_alike(const syntax::Statistic& left, const syntax::Statistic& right) {
  using syntax::StatisticKind;
  const auto central = [](StatisticKind one) {
    return one == StatisticKind::result || one == StatisticKind::mean || one == StatisticKind::each;
  };
  return left.kind == right.kind || (central(left.kind) && central(right.kind));
}

// The first two that have no word in common; if every two have one, the first and the last of all.
void exclude_words(EnvelopeScope& scope, const Row& one, const Row& other) {
  const auto words = [&](const auto& demand) {
    return allowed_words(*scope.rules[demand.first], *demand.second->assertion);
  };
  for (const auto& left : one.all) {
    for (const auto& right : other.all) {
      if (in_both(words(left), words(right)).empty()) {
        scope.envelope.exclusions.push_back(
            {left.first, right.first, left.second, right.second, "no word is allowed by both"});
        return;
      }
    }
  }
  scope.envelope.exclusions.push_back({one.all.front().first, other.all.back().first, one.all.front().second,
                                       other.all.back().second, "no word is allowed by all"});
}

void exclude_rows(EnvelopeScope& scope, const Row& one, const Row& other) {
  if (one.words && other.words) {
    if (in_both(*one.words, *other.words).empty() && &one <= &other) {  // said once
      exclude_words(scope, one, other);
    }
    return;
  }
  if (!one.low || !other.high || !quantity::convertible(scope.unit_of(one), scope.unit_of(other))) {
    return;
  }
  const quantity::Threshold low = one.low->in_row;
  const quantity::Threshold high{quantity::convert(other.high->in_row.value, scope.unit_of(other), scope.unit_of(one)),
                                 other.high->in_row.inclusive};
  const bool none = high.value < low.value || (high.value == low.value && !(high.inclusive && low.inclusive));
  // A general case and its own exception are for different classes.
  const bool own_exception = one.low->demand->requirement == other.high->demand->requirement && &one != &other;
  if (none && !own_exception) {
    const std::string name = scope.unit_of(one).text;
    scope.envelope.exclusions.push_back(
        {one.low->specification, other.high->specification, one.low->demand, other.high->demand,
         (low.inclusive ? "at least " : "above ") + explain::show(low.value.stripped()) +
             (high.inclusive ? " and at most " : " and below ") + explain::show(high.value.stripped()) +
             (name.empty() ? "" : " ") + name});
  }
}

}  // namespace

// Rows of one subject for classes that meet: a lower end above an upper end, or no word in common.
void find_exclusions(EnvelopeScope& scope) {
  for (std::size_t left = 0; left < scope.envelope.rows.size(); ++left) {
    for (std::size_t right = left; right < scope.envelope.rows.size(); ++right) {
      const Row& one = scope.envelope.rows[left];
      const Row& other = scope.envelope.rows[right];
      const bool count = one.severity != check::Severity::advise && other.severity != check::Severity::advise;
      if (count && one.subject == other.subject &&
          bind_alike(one.demand->assertion->statistic, other.demand->assertion->statistic) &&
          (left == right || !common(scope.chosen_mixes(one), scope.chosen_mixes(other), scope.words).empty())) {
        exclude_rows(scope, one, other);
        if (left != right) {
          exclude_rows(scope, other, one);
        }
      }
    }
  }
}

}  // namespace plumbrule::contrast
