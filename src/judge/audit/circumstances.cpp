// Test conditions, clock times and dates.

#include <algorithm>

#include "judge/audit/inspector.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::audit {
namespace {

Decimal distance(const Decimal& left, const Decimal& right) { return left < right ? right - left : left - right; }

std::string minutes_text(std::int64_t seconds) { return explain::show(Decimal{seconds} / Decimal{60}) + " min"; }

}  // namespace

void Inspector::held(const Result& result, const evidence::Circumstances& all) {
  for (const evidence::HeldStated& stated : all.held) {
    const check::Held& wanted = measure(result).held[stated.held];
    if (!exact(stated.value)) {
      continue;
    }
    const Decimal apart = distance(in_unit(stated.value.amount, wanted.unit), wanted.value);
    if (apart <= wanted.within) {
      continue;
    }
    const auto& units = evidence_.units;
    const auto amount = [&](const Decimal& value, quantity::UnitId unit) {
      return explain::show({value, unit, quantity::Bound::exact}, units);
    };
    add(diagnose::Code::audit_off_nominal, stated.value.span,
        "`" + wanted.name + "` of " + name(result) + " was " + explain::show(stated.value.amount, units),
        amount(wanted.value, wanted.unit) + " within " + amount(wanted.within, units.difference(wanted.unit)) +
            ", as the measure declares",
        "the result may not stand for the conditions of the method");
  }
}

// Times of the day say nothing about whole days: both are compared within one day.
void Inspector::clock(const Result& result, const evidence::Circumstances& all) {
  constexpr std::int64_t day = std::int64_t{24} * 3600;
  for (const evidence::Clock& one : all.clocks) {
    const auto stated = std::find_if(result.conditions.begin(), result.conditions.end(),
                                     [&](const auto& other) { return other.condition == one.condition; });
    if (stated == result.conditions.end() || !exact(stated->value)) {
      continue;
    }
    const check::Condition& condition = rules_.conditions[one.condition];
    quantity::UnitTable units;
    const quantity::Unit& seconds = units.at(*units.find("s"));
    const Decimal wanted = quantity::convert(stated->value.amount.value, evidence_.units.at(condition.unit), seconds);
    const Decimal slack =
        quantity::convert(condition.within, evidence_.units.at(condition.unit), seconds) + Decimal{60};
    const std::int64_t elapsed = ((one.ended - one.started) % day + day) % day;
    Decimal apart = distance(wanted.remainder(Decimal{day}), Decimal{elapsed});
    apart = apart > Decimal{day / 2} ? Decimal{day} - apart : apart;
    if (apart <= slack) {
      continue;
    }
    add(diagnose::Code::audit_clock, one.span,
        "from begin to end of `" + condition.name + "` the clock shows " + minutes_text(elapsed),
        explain::show(stated->value.amount, evidence_.units) + " as the result states, within a minute",
        "a time or the stated condition was noted wrongly")
        .related.push_back({stated->value.span, "the stated condition"});
  }
}

// A stated condition that is near what a requirement wants, but does not fit: the result was passed over. Where the
// test was also done as asked, a row beside it is part of a series.
void Inspector::near_miss(const Result& result) {
  if (result.declared || result.design != evidence::Design::job_mix) {
    return;
  }
  std::optional<Finding> found;
  for (const Demand& demand : demands_) {
    if (demand.check->measure != result.measure) {
      continue;
    }
    const evidence::ConditionStated* off = nullptr;
    const plan::ConditionMatch* wanted = nullptr;
    std::size_t misses = 0;
    for (const plan::ConditionMatch& one : plan::part(plan_.conditions, demand.check->conditions)) {
      const auto stated = std::find_if(result.conditions.begin(), result.conditions.end(),
                                       [&](const auto& other) { return other.condition == one.condition; });
      const bool usable = stated != result.conditions.end() && stated->value.usable();
      if (!usable || !evaluate::meets(one, stated->value)) {
        ++misses;
        off = usable ? &*stated : nullptr;
        wanted = &one;
      }
    }
    if (misses == 0) {
      return;  // it is what some requirement asks for
    }
    const check::Condition* condition = wanted == nullptr ? nullptr : &rules_.conditions[wanted->condition];
    if (misses != 1 || off == nullptr || condition->scale != check::Scale::unit || demand.tested) {
      continue;
    }
    const quantity::Unit& unit = evidence_.units.at(condition->unit);
    const Decimal tenth = unit.point ? Decimal{0} : wanted->value / Decimal{10};
    const Decimal thrice = wanted->within * Decimal{3};
    if (distance(off->value.amount.value, wanted->value) <= (tenth > thrice ? tenth : thrice)) {
      found = Finding{
          diagnose::Code::audit_off_nominal,
          off->value.span,
          "`" + condition->name + "` of " + name(result) + " is " + explain::show(off->value.amount, evidence_.units),
          explain::show({wanted->value, condition->unit, quantity::Bound::exact}, evidence_.units) +
              ", as a requirement asks; the result was passed over",
          "if the test was done as asked, correct the condition; otherwise repeat it",
          {}};
    }
  }
  if (found) {
    out_.findings.push_back(std::move(*found));
  }
}

void Inspector::circumstances(const Result& result) {
  held(result, result.record.circumstances);
  clock(result, result.record.circumstances);
  for (const Specimen& specimen : result.specimens) {
    held(result, specimen.circumstances);
    clock(result, specimen.circumstances);
  }
  near_miss(result);
}

void Inspector::dates(const Result& result) {
  const evidence::Day& tested = result.record.tested;
  const evidence::Day& made = result.record.made;
  if (result.declared) {
    return;
  }
  if (tested.day != evidence::no_date && evidence_.date != evidence::no_date && tested.day > evidence_.date) {
    Finding& one =
        add(diagnose::Code::audit_age, tested.span, "the test of " + name(result) + " is dated after the review",
            "a day before the review, or the same day", "correct the date of the test, or that of the review");
    if (evidence_.reviewed.day == evidence_.date) {
      one.related.push_back({evidence_.reviewed.span, "the date of the submittal"});
    }
  }
  if (tested.day != evidence::no_date && made.day != evidence::no_date && tested.day < made.day) {
    add(diagnose::Code::audit_age, tested.span,
        "the test of " + name(result) + " is dated before its specimens were made", "a day from then on",
        "correct one of the two dates")
        .related.push_back({made.span, "when they were made"});
  }
  too_old(result);
}

void Inspector::too_old(const Result& result) {
  for (const Demand& demand : demands_) {
    const bool about = demand.check->measure == result.measure;
    if (about &&
        evaluate::age(demand.requirement->validity, result.tested, evidence_.date) == evaluate::Reason::too_old) {
      const check::Validity& validity = demand.requirement->validity;
      add(diagnose::Code::audit_age, result.record.tested.span, "the test of " + name(result) + " is too old to count",
          "tested within " + std::to_string(validity.count) + (validity.days ? " days" : " months") +
              " before the review",
          "repeat the test, or correct its date");
      return;
    }
  }
}

}  // namespace plumbrule::audit
