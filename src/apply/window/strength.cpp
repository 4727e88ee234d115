// Strength build: for each clause that asks for at least so much under a time (of curing, of setting), when the series
// along that time reaches its limit for good. The condition is known by its dimension; no test has a name here.

#include <algorithm>

#include "apply/window/words.hpp"

namespace plumbrule::window {
namespace {

constexpr quantity::Dimension time_dimension{0, 0, 1, 0};

// The condition of the check that is a time; an index of plan.conditions.
std::optional<std::uint32_t> time_condition(const explain::Context& context, const plan::Check& check) {
  for (std::uint32_t at = check.conditions.begin; at < check.conditions.end; ++at) {
    const check::Condition& one = context.rules.conditions[context.plan.conditions[at].condition];
    const bool unit = one.scale == check::Scale::unit;
    if (unit && context.evidence.units.at(one.unit).dimension == time_dimension) {
      return at;
    }
  }
  return std::nullopt;
}

std::vector<Decimal> times(const explain::Context& context, const plan::Check& check, check::ConditionId condition) {
  std::vector<Decimal> out;
  for (const evidence::Result& result : context.evidence.results) {
    for (const evidence::ConditionStated& one : result.conditions) {
      if (result.measure == check.measure && one.condition == condition &&
          one.value.kind == evidence::Value::Kind::quantity) {
        out.push_back(one.value.amount.value.stripped());
      }
    }
  }
  std::sort(out.begin(), out.end(), [](const Decimal& a, const Decimal& b) { return a < b; });
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

// The same clause asked at each time that was tested.
Series along(const explain::Context& context, std::uint32_t requirement, std::uint32_t index, std::uint32_t condition) {
  const plan::Check& check = context.plan.checks[index];
  Series out;
  out.check = index;
  out.limits = evaluate::thresholds(check, std::nullopt);
  plan::Plan moved = context.plan;
  for (const Decimal& time : times(context, check, context.plan.conditions[condition].condition)) {
    plan::ConditionMatch& match = moved.conditions[condition];
    match.value = time;
    match.within = Decimal{0};
    match.end = syntax::ConditionEnd::exactly;
    if (const auto one = reading(moved, without_limits(moved), context.evidence, requirement, index, time)) {
      out.readings.push_back(*one);
    }
  }
  return out;
}

class Build {
 public:
  Build(const explain::Context& context, const Words& words, const evaluate::Finding& finding, const Series& series,
        std::uint32_t condition)
      : context_(context),
        words_(words),
        finding_(finding),
        series_(series),
        match_(context.plan.conditions[condition]) {}

  StrengthReport run() {
    const check::Requirement& requirement = context_.rules.requirements[finding_.requirement];
    const check::Assertion& demanded = explain::assertion_of(context_, finding_, series_.check);
    StrengthReport out;
    out.clause = requirement.number;
    out.title = requirement.title;
    out.limit = explain::limit_text(demanded.limit);
    out.asked = explain::conditions(context_.rules, demanded);
    out.level = finding_.verdict == evaluate::Verdict::complies ? "the mix is of this level"
                : finding_.verdict == evaluate::Verdict::fails  ? "the mix is not of this level"
                                                                : "whether the mix is of this level is not shown";
    out.build = build(demanded);
    out.verdict = finding_.verdict;
    const std::string& source = requirement.provenance.source;
    out.source = requirement.cite + (requirement.cite.empty() || source.empty() ? "" : "; ") + source;
    out.meaning = requirement.because;
    if (rises_and_falls(series_)) {
      out.cautions.emplace_back("it rises and falls with time");
    }
    for (const Reading& one : series_.readings) {
      out.readings.push_back(words_.reading(series_.check, one));
      out.readings.back().at = time(one.at);
    }
    reached(out);
    out.mend = late_ ? requirement.mend : "";
    return out;
  }

 private:
  const explain::Context& context_;
  const Words& words_;
  const evaluate::Finding& finding_;
  const Series& series_;
  const plan::ConditionMatch& match_;
  bool late_ = false;  // not reached in the time for which it is asked

  [[nodiscard]] std::string time(const Decimal& value) const {
    const quantity::UnitId unit = context_.rules.conditions[match_.condition].unit;
    return explain::show({value.stripped(), unit, quantity::Bound::exact}, context_.evidence.units);
  }

  [[nodiscard]] BuildReport build(const check::Assertion& demanded) const {
    const check::Condition& along = context_.rules.conditions[match_.condition];
    BuildReport out;
    out.measure = context_.rules.measures[demanded.measure].title;
    out.unit = words_.unit(series_.check);
    out.time = along.title.empty() ? along.name : along.title;
    out.time_unit = context_.evidence.units.at(along.unit).text;
    out.asked = match_.value.stripped().text();
    out.asked_text = time(match_.value);
    if (series_.limits.low) {
      out.level = words_.limit_end(demanded, series_.check, *series_.limits.low, false);
    }
    return out;
  }

  // Reached for good: from there to the last tested time the clause complies.
  void reached(StrengthReport& out) {
    const Profile whole = profile(series_);
    const std::vector<Stretch> good = whole.complying();
    const Decimal& first = series_.readings.front().at;
    const Decimal& last = series_.readings.back().at;
    const bool held = !good.empty() && good.back().high == last && good.back().high_inside;
    late_ = !held || match_.value < good.back().low;
    if (!held) {
      const bool open = whole.at(last) == Verdict::not_shown;
      out.reached = open ? "not shown at the last tested time, " + time(last)
                         : "not reached within the tested times, " + time(first) + " to " + time(last);
      out.reached += good.empty() ? "" : "; it complies " + between(good.back()) + ", but not for good";
      return;
    }
    const Decimal& at = good.back().low;
    const bool from_start = at == first && good.back().low_inside;
    if (from_start) {
      out.reached = "already reached at the first tested time, " + time(first) + "; when before is not known";
    } else {
      const bool line = whole.below(at) == Verdict::fails || !good.back().low_inside;
      out.reached = (line ? "reached after " : "shown from ") + time(at) +
                    (good.back().low_inside ? "" : " (just after it)") + " and held to " + time(last) +
                    ", the last tested time";
      out.reached += line ? asked(at) : "; when before is not known";
      out.exact = at.stripped().text();
      derive(at, out);
    }
  }

  [[nodiscard]] std::string between(const Stretch& one) const {
    return one.low == one.high ? "at " + time(one.low) : "from " + time(one.low) + " to " + time(one.high);
  }

  [[nodiscard]] std::string asked(const Decimal& at) const {
    if (at == match_.value) {
      return "; exactly when it is asked for";
    }
    const bool early = at < match_.value;
    return "; " + time(early ? match_.value - at : at - match_.value) + (early ? " before" : " after") +
           " the time for which it is asked";
  }

  void derive(const Decimal& at, StrengthReport& out) const {
    for (const Crossing& one : crossings(series_)) {
      if (!(one.at == at)) {
        continue;
      }
      const Reading& first = series_.readings[one.first];
      const Reading& second = series_.readings[one.first + 1];
      out.steps.push_back({0,
                           plain(first.at) + " + (" + plain(one.threshold.value) + " - " + plain(first.least) +
                               ") * (" + plain(second.at) + " - " + plain(first.at) + ") / (" + plain(second.least) +
                               " - " + plain(first.least) + ") = " + time(at),
                           ""});
    }
  }
};

StrengthReport not_followed(const explain::Context& context, const evaluate::Finding& finding, std::uint32_t check,
                            std::size_t count) {
  const check::Requirement& requirement = context.rules.requirements[finding.requirement];
  const check::Assertion& demanded = explain::assertion_of(context, finding, check);
  StrengthReport out;
  out.clause = requirement.number;
  out.title = requirement.title;
  out.limit = explain::limit_text(demanded.limit);
  out.asked = explain::conditions(context.rules, demanded);
  out.reached = "not followed: there are " + std::to_string(count) + " tested times, and at most " +
                std::to_string(most_tested) + " are followed";
  return out;
}

void clause(const explain::Context& context, const Words& words, const evaluate::Finding& finding,
            std::vector<StrengthReport>& out) {
  for (const evaluate::Step& step : plan::part(context.review.trace, finding.steps)) {
    if (step.kind != evaluate::StepKind::check) {
      continue;
    }
    const plan::Check& check = context.plan.checks[step.index];
    const auto condition = time_condition(context, check);
    if (!condition || !check.has_low || check.has_high || check.has_tolerance || check.words != 0) {
      continue;
    }
    const std::size_t count = times(context, check, context.plan.conditions[*condition].condition).size();
    if (count > most_tested) {
      out.push_back(not_followed(context, finding, step.index, count));
      continue;
    }
    const Series series = along(context, finding.requirement, step.index, *condition);
    if (series.readings.size() > 1) {
      out.push_back(Build(context, words, finding, series, *condition).run());
    }
  }
}

}  // namespace

std::vector<StrengthReport> strengths(const explain::Context& context) {
  std::vector<StrengthReport> out;
  const Window no_window;
  const Words words(context, no_window);
  for (const evaluate::Finding& finding : context.review.findings) {
    if (finding.verdict != Verdict::does_not_apply) {
      clause(context, words, finding, out);
    }
  }
  return out;
}

}  // namespace plumbrule::window
