#include "apply/window/clauses.hpp"

#include <algorithm>

namespace plumbrule::window {

ClauseFinder::ClauseFinder(const plan::Plan& plan, const Evidence& evidence, check::MeasureId variable,
                           std::vector<Decimal> tested)
    : plan_(plan),
      evidence_(evidence),
      variable_(variable),
      open_(without_limits(plan)),
      ageless_(without_ages(plan)),
      tested_(std::move(tested)),
      moved_(evidence) {
  for (const Decimal& value : tested_) {
    designs_.push_back(designs_at(plan, evidence, variable, value));
  }
}

const Evidence& ClauseFinder::placed(std::size_t tested) {
  for (std::size_t at = 0; at < moved_.results.size(); ++at) {
    moved_.results[at].design = designs_[tested][at];
  }
  return moved_;
}

Series ClauseFinder::series(std::uint32_t requirement, std::uint32_t check) {
  Series out;
  out.check = check;
  std::optional<Decimal> target;
  for (std::size_t at = 0; at < tested_.size(); ++at) {
    if (const auto one = reading(plan_, open_, placed(at), requirement, check, tested_[at])) {
      target = one->target ? one->target : target;
      out.readings.push_back(*one);
    }
  }
  out.limits = evaluate::thresholds(plan_.checks[check], target);
  return out;
}

// The results that would stand at a tested value if tests of any age counted.
void ClauseFinder::pass_over(std::uint32_t check, Clause& clause) {
  const check::Validity& validity = plan_.requirements[clause.requirement].validity;
  for (std::size_t at = 0; at < tested_.size() && validity.count != 0; ++at) {
    const Evidence& there = placed(at);
    for (const std::uint32_t result : evaluate::placed(ageless_, there, clause.requirement, check).results) {
      const auto known = [&](const TooOld& one) { return one.result == result && one.at == tested_[at]; };
      if (evaluate::age(validity, there.results[result].tested, there.date) == evaluate::Reason::too_old &&
          std::none_of(clause.too_old.begin(), clause.too_old.end(), known)) {
        clause.too_old.push_back({tested_[at], result});
      }
    }
  }
}

// A limit of the variable itself: its value at 7 % is 7 %. No test is needed for that.
Series ClauseFinder::limits_of_variable(std::uint32_t index) const {
  const plan::Check& check = plan_.checks[index];
  Series out;
  out.check = index;
  out.limits = evaluate::thresholds(check, std::nullopt);
  const auto& units = evidence_.units;
  for (const Decimal& value : tested_) {
    Reading exact;
    exact.at = value;
    exact.least = quantity::convert(value, units.at(plan_.measures[variable_].type.unit), units.at(check.value_unit));
    exact.greatest = exact.least;
    exact.matched = true;
    exact.solid = true;
    const bool low = !out.limits.low || passes(exact.least, *out.limits.low, false);
    const bool high = !out.limits.high || passes(exact.least, *out.limits.high, true);
    exact.verdict = low && high ? Verdict::complies : Verdict::fails;
    out.readings.push_back(exact);
  }
  return out;
}

// What a grading's rule on consecutive sieves says between tested values is not known.
Profile ClauseFinder::with_ends_rule(const Profile& profile, std::uint32_t group, std::uint32_t requirement) {
  std::vector<Profile::Point> points = profile.points();
  for (Profile::Point& point : points) {
    const auto at = std::find(tested_.begin(), tested_.end(), point.at);
    point.here = point.here == Verdict::complies && at == tested_.end() ? Verdict::not_shown : point.here;
    point.after = point.after == Verdict::complies ? Verdict::not_shown : point.after;
    if (at == tested_.end()) {
      continue;
    }
    const Evidence& there = placed(static_cast<std::size_t>(at - tested_.begin()));
    for (const evaluate::Step& step : evaluate::evaluate_one(plan_, there, requirement).trace) {
      const bool of_group = step.kind == evaluate::StepKind::group_verdict && step.index == group;
      point.here = of_group ? step.outcome : point.here;
    }
  }
  return Profile(std::move(points));
}

Profile ClauseFinder::group(std::uint32_t index, Clause& clause) {
  const plan::Group& group = plan_.groups[index];
  Profile out;
  for (std::uint32_t at = group.checks.begin; at < group.checks.end; ++at) {
    const plan::Check& check = plan_.checks[at];
    const bool spread =
        check.statistic == syntax::StatisticKind::range || check.statistic == syntax::StatisticKind::standard_deviation;
    const bool limits_variable = check.measure == variable_ && !check.has_tolerance && check.words == 0 && !spread &&
                                 check.conditions.size() == 0;
    Series one = limits_variable ? limits_of_variable(at) : series(clause.requirement, at);
    const Profile part = profile(one);
    out = at == group.checks.begin ? part : all_of(out, part);
    if (!limits_variable) {
      pass_over(at, clause);
    }
    if (!one.readings.empty()) {
      clause.series.push_back(std::move(one));
    }
  }
  return group.has_ends ? with_ends_rule(out, index, clause.requirement) : out;
}

// The check by which the clause is nothing but a tolerance of the variable from the job mix.
std::uint32_t ClauseFinder::tolerance_check(const plan::Case& chosen) const {
  std::uint32_t out = check::none;
  for (const plan::Group& group : plan::part(plan_.groups, chosen.groups)) {
    for (std::uint32_t at = group.checks.begin; at < group.checks.end; ++at) {
      const plan::Check& check = plan_.checks[at];
      if (check.measure != variable_ || !check.has_tolerance || check.has_low || check.has_high) {
        return check::none;
      }
      out = at;
    }
  }
  return out;
}

Role ClauseFinder::role(const Clause& clause) const {
  if (clause.tolerance_check != check::none) {
    return Role::tolerance;
  }
  const auto of_variable = [&](const Series& one) { return plan_.checks[one.check].measure == variable_; };
  const auto varied = [&](const Series& one) {
    const auto tests =
        std::count_if(one.readings.begin(), one.readings.end(), [](const Reading& part) { return part.matched; });
    return !of_variable(one) && tests > 1;
  };
  if (std::any_of(clause.series.begin(), clause.series.end(), varied)) {
    return Role::varies;
  }
  const bool only_limits_it =
      !clause.series.empty() && std::all_of(clause.series.begin(), clause.series.end(), of_variable);
  return only_limits_it ? Role::own_limit : Role::constant;
}

std::optional<Clause> ClauseFinder::clause(const evaluate::Review& review, const evaluate::Finding& finding) {
  Clause out;
  out.requirement = finding.requirement;
  out.finding = finding;
  out.role = Role::constant;
  out.counts = plan_.requirements[finding.requirement].severity != check::Severity::advise;
  if (finding.verdict == Verdict::does_not_apply) {
    return std::nullopt;
  }
  for (const evaluate::Step& step : plan::part(review.trace, finding.steps)) {
    if (step.kind != evaluate::StepKind::case_chosen) {
      continue;
    }
    const plan::Case& chosen = plan_.cases[step.index];
    for (std::uint32_t at = chosen.groups.begin; at < chosen.groups.end; ++at) {
      const Profile way = group(at, out);
      out.profile = at == chosen.groups.begin ? way : any_of(out.profile, way);
    }
    out.tolerance_check = tolerance_check(chosen);
    out.role = role(out);
  }
  return out;
}

}  // namespace plumbrule::window
