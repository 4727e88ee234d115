#include "apply/window/trials.hpp"

#include <algorithm>

namespace plumbrule::window {
namespace {

using evaluate::StepKind;
using evidence::Design;
using evidence::Result;
using evidence::Value;

bool exact(const Value& value) {
  return value.kind == Value::Kind::quantity && value.amount.bound == quantity::Bound::exact;
}

Decimal converted(const plan::Plan& plan, const Evidence& evidence, const Value& value, check::MeasureId measure) {
  return quantity::convert(value.amount.value, evidence.units.at(value.amount.unit),
                           evidence.units.at(plan.measures[measure].type.unit));
}

struct Placed {
  std::optional<Decimal> at;        // of the variable; nothing: cannot be placed
  Design others = Design::job_mix;  // where the other design values stand
};

Placed placed(const plan::Plan& plan, const Evidence& evidence, const Result& result, check::MeasureId variable) {
  Placed out;
  out.at = declared(plan, evidence, variable);
  for (const evidence::DesignValue& one : result.at) {
    if (one.measure == variable && one.measure != check::none) {
      out.at = exact(one.value) ? std::optional(converted(plan, evidence, one.value, variable)) : std::nullopt;
      continue;
    }
    const auto target = one.measure == check::none ? std::nullopt : declared(plan, evidence, one.measure);
    if (!target || !exact(one.value)) {
      out.others = out.others == Design::other ? Design::other : Design::unknown;
    } else if (!(converted(plan, evidence, one.value, one.measure) == *target)) {
      out.others = Design::other;
    }
  }
  return out;
}

void sort(std::vector<Decimal>& values) {
  std::sort(values.begin(), values.end(), [](const Decimal& a, const Decimal& b) { return a < b; });
  values.erase(std::unique(values.begin(), values.end()), values.end());
}

// What one evaluation says of a check: its verdict, and the values that it compared.
struct CheckOutcome {
  Verdict verdict = Verdict::not_shown;
  evaluate::Reason reason{};
  std::vector<quantity::Amount> compared;
  std::optional<Decimal> target;
  source::Span place;
  bool matched = false;
};

CheckOutcome outcome_of(const evaluate::Review& review, std::uint32_t check) {
  CheckOutcome out;
  bool inside = false;
  for (const evaluate::Step& step : review.trace) {
    if (step.kind == StepKind::check) {
      inside = step.index == check;
    } else if (!inside) {
      continue;
    } else if (step.kind == StepKind::result) {
      out.place = out.matched ? out.place : step.span;
      out.matched = true;
    } else if (step.kind == StepKind::target) {
      out.target = step.amount.value;
    } else if (step.kind == StepKind::compared) {
      out.compared.push_back(step.amount);
    } else if (step.kind == StepKind::check_verdict) {
      out.verdict = step.outcome;
      out.reason = step.reason;
    }
  }
  return out;
}

// Reasons of a check without a matching result that is nevertheless not without results (language.md, section 9.2).
bool is_open(evaluate::Reason reason) {
  return reason == evaluate::Reason::unusable_value || reason == evaluate::Reason::design_not_stated ||
         reason == evaluate::Reason::condition_not_stated || reason == evaluate::Reason::date_not_stated;
}

}  // namespace

std::vector<check::MeasureId> variables(const Evidence& evidence) {
  std::vector<check::MeasureId> out;
  for (const Result& result : evidence.results) {
    for (const evidence::DesignValue& one : result.at) {
      const bool known = one.measure != check::none && exact(one.value) && result.design != Design::job_mix;
      if (known && std::find(out.begin(), out.end(), one.measure) == out.end()) {
        out.push_back(one.measure);
      }
    }
  }
  return out;
}

std::optional<Decimal> declared(const plan::Plan& plan, const Evidence& evidence, check::MeasureId variable) {
  for (const evidence::Target& one : evidence.targets) {
    if (one.measure == variable && one.conditions.empty() && exact(one.value)) {
      return converted(plan, evidence, one.value, variable);
    }
  }
  return std::nullopt;
}

std::vector<Decimal> tested(const plan::Plan& plan, const Evidence& evidence, check::MeasureId variable) {
  std::vector<Decimal> out;
  for (const Result& result : evidence.results) {
    const Placed where = placed(plan, evidence, result, variable);
    if (!result.declared && result.measure != variable && where.at && where.others != Design::other) {
      out.push_back(where.at->stripped());
    }
  }
  sort(out);
  return out;
}

std::vector<Design> designs_at(const plan::Plan& plan, const Evidence& evidence, check::MeasureId variable,
                               const Decimal& value) {
  std::vector<Design> out;
  out.reserve(evidence.results.size());
  for (const Result& result : evidence.results) {
    const Placed where = placed(plan, evidence, result, variable);
    if ((where.at && !(*where.at == value)) || where.others == Design::other) {
      out.push_back(Design::other);
    } else {
      out.push_back(where.at ? where.others : Design::unknown);
    }
  }
  return out;
}

plan::Plan without_limits(const plan::Plan& plan) {
  plan::Plan out = plan;
  for (plan::Check& check : out.checks) {
    check.has_low = false;
    check.has_high = false;
    check.words = check.words == 0 ? 0 : ~std::uint64_t{0};
    // A tolerance decides which results match, so it stays; nothing lies outside this one.
    check.tolerance = Decimal::of("99999999999999999") * Decimal::of("99999999999999999");
    check.tolerance_rounding = {};
  }
  return out;
}

plan::Plan without_ages(const plan::Plan& plan) {
  plan::Plan out = plan;
  for (auto& requirement : out.requirements) {
    requirement.validity = {};
  }
  return out;
}

std::optional<Reading> reading(const plan::Plan& plan, const plan::Plan& open, const Evidence& evidence,
                               std::uint32_t requirement, std::uint32_t check, const Decimal& at) {
  const CheckOutcome judged = outcome_of(evaluate::evaluate_one(plan, evidence, requirement), check);
  if (!judged.matched && !is_open(judged.reason)) {
    return std::nullopt;
  }
  Reading out;
  out.matched = judged.matched;
  out.at = at;
  out.verdict = judged.verdict;
  out.reason = judged.reason;
  out.place = judged.place;
  const CheckOutcome all = outcome_of(evaluate::evaluate_one(open, evidence, requirement), check);
  out.target = all.target;
  const auto vague = [](const quantity::Amount& one) {
    return one.bound != quantity::Bound::exact || !one.value.finite();
  };
  out.solid = all.verdict == Verdict::complies && plan.checks[check].words == 0 && !all.compared.empty() &&
              std::none_of(all.compared.begin(), all.compared.end(), vague);
  if (out.solid) {
    const auto [least, greatest] =
        std::minmax_element(all.compared.begin(), all.compared.end(),
                            [](const auto& left, const auto& right) { return left.value < right.value; });
    out.least = least->value;
    out.greatest = greatest->value;
  }
  return out;
}

}  // namespace plumbrule::window
