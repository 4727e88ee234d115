#include "judge/audit/inspector.hpp"

#include <algorithm>

#include "judge/explain/wording.hpp"

namespace plumbrule::audit {

std::string Inspector::name(const Result& result) const { return "`" + measure(result).name + "`"; }

std::string Inspector::shown(const Result& result, const Decimal& value, quantity::UnitId unit) const {
  return explain::show(context_, {value, unit, quantity::Bound::exact}, measure(result).type.basis);
}

std::string Inspector::shown(const Result& result, const Decimal& value) const {
  return shown(result, value, measure(result).type.unit);
}

Decimal Inspector::in_unit(const quantity::Amount& amount, quantity::UnitId unit) const {
  return quantity::convert(amount.value, evidence_.units.at(amount.unit), evidence_.units.at(unit));
}

bool Inspector::exact(const Value& value) {
  return value.kind == Value::Kind::quantity && value.amount.bound == quantity::Bound::exact;
}

bool Inspector::stands_as_asked(const plan::Check& check, const Result& result) const {
  const auto conditions = plan::part(plan_.conditions, check.conditions);
  return result.measure == check.measure && result.design == evidence::Design::job_mix &&
         std::all_of(conditions.begin(), conditions.end(), [&](const plan::ConditionMatch& one) {
           return std::any_of(result.conditions.begin(), result.conditions.end(), [&](const auto& stated) {
             return stated.condition == one.condition && stated.value.usable() && evaluate::meets(one, stated.value);
           });
         });
}

// The checks that the evaluator came to: those of requirements that apply, in the case that was chosen.
void Inspector::find_demands() {
  for (const evaluate::Finding& finding : context_.review.findings) {
    for (const evaluate::Step& step : plan::part(context_.review.trace, finding.steps)) {
      if (step.kind == evaluate::StepKind::check) {
        const plan::Check& check = plan_.checks[step.index];
        const bool tested = std::any_of(evidence_.results.begin(), evidence_.results.end(),
                                        [&](const Result& result) { return stands_as_asked(check, result); });
        demands_.push_back({&check, &plan_.requirements[finding.requirement], tested});
      }
    }
  }
}

std::optional<Replicates> Inspector::replicates(const Result& result) const {
  Replicates out;
  Decimal sum;
  if (result.specimens.empty() || measure(result).type.is_word()) {
    return std::nullopt;
  }
  for (std::uint32_t at = 0; at < result.specimens.size(); ++at) {
    const auto value = evaluate::specimen_value(plan_, evidence_, result, at);
    if (!value.good() || value.amount.bound != quantity::Bound::exact) {
      return std::nullopt;
    }
    out.values.push_back(in_unit(value.amount, measure(result).type.unit));
    sum = sum + out.values.back();
  }
  out.mean = sum / Decimal{static_cast<std::int64_t>(out.values.size())};
  return out.mean.finite() ? std::optional(out) : std::nullopt;
}

void Inspector::run() {
  find_demands();
  out_.outliers = rules_.specification && rules_.specification->outliers;
  for (const Result& result : evidence_.results) {
    refused(result);
    circumstances(result);
    dates(result);
    materials(result);
    pair(result);
    too_few(result);
    miscounted(result);
    if (result.declared) {
      declared(result);
      continue;
    }
    if (const auto known = replicates(result)) {
      if (measure(result).computed) {
        out_.recomputed.push_back(result.span);
      }
      reported(result, *known);
      spread(result, *known);
      outlier(result, *known);
    }
  }
  fewer_than_others();
  duplicates();
  certificates();
  gradings();
}

Inspection inspect(const explain::Context& context) {
  Inspection out;
  Inspector(context, out).run();
  join(out, {});
  return out;
}

namespace {

bool before(const Span& left, const Span& right) {
  return std::tie(left.file, left.begin, left.end) < std::tie(right.file, right.begin, right.end);
}

void join(std::vector<Span>& all, const std::vector<Span>& other) {
  all.insert(all.end(), other.begin(), other.end());
  std::sort(all.begin(), all.end(), before);
  all.erase(std::unique(all.begin(), all.end()), all.end());
}

}  // namespace

void join(Inspection& all, Inspection other) {
  all.findings.insert(all.findings.end(), std::make_move_iterator(other.findings.begin()),
                      std::make_move_iterator(other.findings.end()));
  const auto key = [](const Finding& one) {
    return std::tuple(one.place.file, one.place.begin, one.place.end, one.code, one.found, one.expected);
  };
  std::stable_sort(all.findings.begin(), all.findings.end(),
                   [&](const Finding& left, const Finding& right) { return key(left) < key(right); });
  const auto same = [&](const Finding& left, const Finding& right) { return key(left) == key(right); };
  all.findings.erase(std::unique(all.findings.begin(), all.findings.end(), same), all.findings.end());
  join(all.recomputed, other.recomputed);
  join(all.compared, other.compared);
  join(all.tested, other.tested);
  all.outliers = all.outliers || other.outliers;
}

}  // namespace plumbrule::audit
