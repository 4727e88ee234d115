#include "judge/explain/headroom.hpp"

#include <cstdlib>

namespace plumbrule::explain {
namespace {

using evaluate::Step;
using evaluate::StepKind;
using evaluate::Verdict;
using quantity::Decimal;

// The ends of a limit as numbers: printed ones, and those that a tolerance from the job mix makes. True: the upper one.
std::vector<std::pair<check::End, bool>> ends_of(const check::Limit& limit, const std::optional<Decimal>& target) {
  std::vector<std::pair<check::End, bool>> out;
  if (limit.low) {
    out.emplace_back(*limit.low, false);
  }
  if (limit.high) {
    out.emplace_back(*limit.high, true);
  }
  if (limit.tolerance && target) {
    check::End low = *limit.tolerance;
    check::End high = *limit.tolerance;
    low.value = *target - low.value;
    high.value = *target + high.value;
    out.emplace_back(low, false);
    out.emplace_back(high, true);
  }
  return out;
}

int rank(Verdict verdict) { return verdict == Verdict::fails ? 2 : verdict == Verdict::not_shown ? 1 : 0; }

std::optional<Decimal> smaller(const std::optional<Decimal>& one, const std::optional<Decimal>& other) {
  return !one || (other && *other < *one) ? other : one;
}

}  // namespace

bool of_temperature(const check::Rules& rules, const check::Assertion& assertion) {
  const check::Limit& limit = assertion.limit;
  const quantity::UnitId ends = limit.tolerance ? rules.measures[assertion.measure].type.unit : limit.unit;
  return rules.units.at(ends).point;
}

bool is_relative(const check::Rules& rules, const check::Assertion& assertion) {
  const check::Limit& limit = assertion.limit;
  const bool one_value = limit.low && limit.high && limit.low->value == limit.high->value;
  return !one_value && !of_temperature(rules, assertion);
}

std::optional<Room> room(const check::Rules& rules, const check::Assertion& assertion, const quantity::Amount& amount,
                         const std::optional<Decimal>& target) {
  const check::Limit& limit = assertion.limit;
  const bool relative = amount.bound == quantity::Bound::exact && is_relative(rules, assertion);
  std::optional<Room> out;
  std::optional<Decimal> least;
  for (const auto& [end, high] : ends_of(limit, target)) {
    const Decimal rounded = end.rounding.place
                                ? quantity::round_to(amount.value, *end.rounding.place, end.rounding.ties)
                                : amount.value.stripped();
    const Decimal distance = high ? end.value - rounded : rounded - end.value;
    std::optional<Decimal> share;
    if (relative && !end.value.zero()) {
      share = distance * Decimal{100} / (end.value < Decimal{0} ? -end.value : end.value);
    }
    least = smaller(least, share);
    if (!out || distance < out->distance) {
      out = Room{end, rounded, distance, share};
    }
  }
  if (out && out->distance >= Decimal{0}) {
    out->headroom = least;
  }
  return out;
}

const check::Assertion& assertion_of(const check::Rules& rules, const plan::Plan& plan, std::uint32_t requirement,
                                     std::uint32_t check) {
  const plan::Requirement& compiled = plan.requirements[requirement];
  const auto& cases = rules.requirements[requirement].cases;
  for (std::uint32_t at = compiled.cases.begin; at < compiled.cases.end; ++at) {
    const plan::Range groups = plan.cases[at].groups;
    for (std::uint32_t group = groups.begin; group < groups.end; ++group) {
      const plan::Range checks = plan.groups[group].checks;
      if (check >= checks.begin && check < checks.end) {
        return cases[at - compiled.cases.begin].alternatives[group - groups.begin].assertions[check - checks.begin];
      }
    }
  }
  std::abort();  // every check belongs to a group of the requirement that it was compiled from
}

bool decides_before(const check::Rules& rules, const check::Assertion& assertion, const Step& one, const Step& other) {
  if (rank(one.outcome) != rank(other.outcome)) {
    return rank(one.outcome) > rank(other.outcome);
  }
  if (rules.measures[assertion.measure].type.is_word() || !one.amount.value.finite() || !other.amount.value.finite()) {
    return false;
  }
  const auto distance = [&](const Step& step) {
    const auto nearest = room(rules, assertion, step.amount, std::nullopt);
    return nearest ? nearest->distance : Decimal{};
  };
  return distance(one) < distance(other);
}

std::optional<Decimal> least_headroom(const check::Rules& rules, const plan::Plan& plan, const evaluate::Review& review,
                                      const evaluate::Finding& finding) {
  std::optional<Decimal> out;
  if (finding.verdict != Verdict::complies && finding.verdict != Verdict::fails) {
    return out;
  }
  std::optional<Step> deciding;
  std::optional<Decimal> target;
  const check::Assertion* current = nullptr;
  for (const Step& step : plan::part(review.trace, finding.steps)) {
    if (step.kind == StepKind::check) {
      deciding.reset();
      target.reset();
      current = &assertion_of(rules, plan, finding.requirement, step.index);
    } else if (step.kind == StepKind::target) {
      target = step.amount.value;
    } else if (step.kind == StepKind::compared && current != nullptr) {
      deciding = deciding && !decides_before(rules, *current, step, *deciding) ? deciding : step;
    } else if (step.kind == StepKind::check_verdict && deciding && step.outcome == finding.verdict &&
               !rules.measures[current->measure].type.is_word() && deciding->amount.value.finite()) {
      const auto nearest = room(rules, *current, deciding->amount, target);
      out = smaller(out, nearest ? nearest->headroom : std::nullopt);
    }
  }
  return out;
}

}  // namespace plumbrule::explain
