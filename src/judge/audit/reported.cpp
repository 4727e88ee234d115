// Reported values against what their readings give.

#include <algorithm>

#include "judge/audit/explanations.hpp"
#include "judge/audit/inspector.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::audit {
namespace {

// Half a unit of the last digit as written, or of the reporting place if that is coarser; in the unit of the report.
Decimal half_unit(const explain::Context& context, const Result& result, const Value& value) {
  const check::Measure& measure = context.rules.measures[result.measure];
  Decimal place = value.amount.value.last_place();
  if (measure.reporting_place) {
    const auto& units = context.evidence.units;
    const quantity::Unit& own = units.at(measure.type.unit);
    const quantity::Unit& there = units.at(value.amount.unit);
    const Decimal coarse =
        quantity::convert(*measure.reporting_place, own, there) - quantity::convert(Decimal{0}, own, there);
    place = coarse > place ? coarse : place;
  }
  return place / Decimal{2};
}

bool within(const Decimal& left, const Decimal& right, const Decimal& slack) {
  return left - right <= slack && right - left <= slack;
}

// A laboratory may have taken the mean of values that it had rounded: as staged rounding asks, or else to the reporting
// place.
std::optional<Decimal> staged_mean(const plan::Plan& plan, const check::Measure& measure, const Result& result,
                                   const Replicates& replicates) {
  check::Rounding rule{measure.reporting_place, quantity::Ties::to_even};
  for (const plan::Check& check : plan.checks) {
    rule = check.measure == result.measure && check.is_staged && check.staged.place ? check.staged : rule;
  }
  if (!rule.place) {
    return std::nullopt;
  }
  Decimal sum;
  for (const Decimal& value : replicates.values) {
    sum = sum + quantity::round_to(value, *rule.place, rule.ties);
  }
  return sum / Decimal{static_cast<std::int64_t>(replicates.values.size())};
}

std::string specimens_or_mean(std::size_t count) {
  return count == 1 ? "the specimen" : "the mean of the " + std::to_string(count) + " specimens";
}

}  // namespace

void Inspector::reported(const Result& result, const Replicates& replicates) {
  if (!exact(result.reported)) {
    return;
  }
  out_.compared.push_back(result.span);
  const quantity::UnitId unit = result.reported.amount.unit;
  const Decimal& stated = result.reported.amount.value;
  const auto in_report = [&](const Decimal& value) {
    return in_unit({value, measure(result).type.unit, quantity::Bound::exact}, unit);
  };
  const Decimal computed = in_report(replicates.mean);
  const Decimal slack = half_unit(context_, result, result.reported);
  const auto near = [&](const Decimal& value) { return within(value, stated, slack); };
  const auto staged = near(computed) ? std::nullopt : staged_mean(plan_, measure(result), result, replicates);
  if (near(computed) || (staged && within(in_report(*staged), stated, stated.last_place() / Decimal{2}))) {
    return;
  }
  const auto known = slip(context_, {result, computed, stated, near});
  Finding& one = add(
      known ? known->code : diagnose::Code::audit_arithmetic, result.reported.span,
      "reported " + shown(result, stated, unit) + " for " + name(result) + ", which does not follow from its readings",
      specimens_or_mean(replicates.values.size()) + " is " + shown(result, computed.stripped(), unit),
      known ? known->text : "check the sums, and that these are the readings of this result");
  one.related.push_back({result.specimens.front().span, "the readings begin here"});
}

void Inspector::pair(const Result& result) {
  if (!exact(result.reported) || !exact(result.record.also)) {
    return;
  }
  const quantity::UnitId unit = result.reported.amount.unit;
  const auto& also = result.record.also.amount;
  const Decimal there = in_unit(also, unit);
  const Decimal digit = in_unit({also.value + also.value.last_place(), also.unit, also.bound}, unit) - there;
  const Decimal slack = (result.reported.amount.value.last_place() + digit) / Decimal{2};
  if (within(result.reported.amount.value, there, slack)) {
    return;
  }
  add(diagnose::Code::audit_pair, result.record.also.span,
      "`also` says " + shown(result, also.value, also.unit) + ", which is " + shown(result, there, unit),
      "the same value as reported, " + shown(result, result.reported.amount.value, unit) +
          ", within half a unit of the last digit of each",
      "one of the two was converted or copied wrongly")
      .related.push_back({result.reported.span, "the reported value"});
}

// A value of the job mix that is the computed one taken of another base.
void Inspector::declared(const Result& result) {
  const quantity::UnitId unit = result.reported.amount.unit;
  if (!exact(result.reported) || !result.conditions.empty() || evidence_.units.at(unit).text != "%") {
    return;
  }
  for (const Result& other : evidence_.results) {
    const bool comparable = other.measure == result.measure && !other.declared && other.conditions.empty() &&
                            other.design == evidence::Design::job_mix && measure(other).computed;
    const auto known = comparable ? replicates(other) : std::nullopt;
    if (!known) {
      continue;
    }
    const Decimal computed = in_unit({known->mean, measure(result).type.unit, quantity::Bound::exact}, unit);
    const Decimal slack = half_unit(context_, result, result.reported);
    const auto near = [&](const Decimal& value) { return within(value, result.reported.amount.value, slack); };
    const auto basis = near(computed) ? std::nullopt : other_basis(computed, near);
    if (basis) {
      add(diagnose::Code::audit_basis, result.reported.span,
          "the job mix declares " + shown(result, result.reported.amount.value, unit) + " for " + name(result),
          "its own readings give " + shown(result, computed.stripped(), unit), *basis)
          .related.push_back({other.span, "the readings"});
      return;
    }
  }
}

}  // namespace plumbrule::audit
