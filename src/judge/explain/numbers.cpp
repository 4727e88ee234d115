#include "judge/explain/numbers.hpp"

#include "judge/explain/wording.hpp"

namespace plumbrule::explain {

using evaluate::StepKind;

void Specimens::begin(std::uint32_t check) {
  check_ = check;
  pending_.reset();
  values_.clear();
}

// The last amount that the trace notes of a specimen is its value; one that is refused, or only a bound, has none.
void Specimens::see(const evaluate::Step& step) {
  switch (step.kind) {
    case StepKind::reported:
    case StepKind::computed:
      if (step.outcome == Verdict::not_shown) {
        pending_.reset();
        return;
      }
      pending_ = step.amount;
      return;
    case StepKind::rounded:
    case StepKind::converted:
      pending_ = step.amount;
      return;
    case StepKind::refusal:
      pending_.reset();
      return;
    case StepKind::specimen:
    case StepKind::result:
    case StepKind::combined:
    case StepKind::compared:
    case StepKind::check_verdict:
      return keep();
    default:
      return;
  }
}

void Specimens::keep() {
  if (pending_ && pending_->bound == quantity::Bound::exact && pending_->value.finite()) {
    const quantity::UnitTable& units = context_.evidence.units;
    const quantity::UnitId unit = context_.plan.checks[check_].value_unit;
    values_.push_back(quantity::convert(pending_->value, units.at(pending_->unit), units.at(unit)));
  }
  pending_.reset();
}

std::vector<quantity::Decimal> Specimens::take() { return std::move(values_); }

Numbers numbers(const Context& context, const check::Assertion& assertion,
                const std::optional<quantity::Decimal>& target) {
  Numbers out;
  const check::Limit& limit = assertion.limit;
  if (context.rules.measures[assertion.measure].type.is_word()) {
    return out;
  }
  out.unit = context.evidence.units.at(limit.unit).text;
  out.statistic = statistic_name(assertion.statistic.kind);
  out.spread = assertion.statistic.kind == syntax::StatisticKind::range ||
               assertion.statistic.kind == syntax::StatisticKind::standard_deviation;
  if (limit.low) {
    out.low = limit.low->value;
  }
  if (limit.high) {
    out.high = limit.high->value;
  }
  if (limit.tolerance && target) {
    out.tolerance_low = *target - limit.tolerance->value;
    out.tolerance_high = *target + limit.tolerance->value;
  }
  for (const check::ConditionValue& one : assertion.conditions) {
    if (context.rules.conditions[one.condition].scale == check::Scale::sieve) {
      out.sieve = one.value;
      out.sieve_name = one.written;
    }
  }
  return out;
}

}  // namespace plumbrule::explain
