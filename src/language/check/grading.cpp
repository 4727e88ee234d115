#include "base/quantity/sieve.hpp"
#include "language/check/checker.hpp"

namespace plumbrule::check {

// The tolerance of a row that a demand asks for.
static std::optional<syntax::Quantity> row_tolerance(const syntax::Limit& limit, const syntax::GradingRow& row) {
  switch (limit.tolerance) {
    case syntax::ToleranceKind::stockpile:
      return row.stockpile;
    case syntax::ToleranceKind::job_mix:
      return row.job_mix;
    default:
      return std::nullopt;
  }
}

// Within a tolerance of the job mix: the row's own, in the unit of its band.
bool Checker::sieve_tolerance(const syntax::GradingRow& row, const syntax::Assertion& tree, const Measure& measure,
                              const syntax::Requirement& requirement, Limit& out) {
  const bool stockpile = tree.limit.tolerance == syntax::ToleranceKind::stockpile;
  const auto& tolerance = stockpile ? row.stockpile : row.job_mix;
  if (!tolerance) {
    return true;
  }
  out.written += std::string(out.low || out.high ? " and " : "") + "within " +
                 std::string(sources_.text(tolerance->span)) + " from the job mix";
  return tolerance_limit(*tolerance, measure, tree.statistic, requirement, out);
}

std::optional<Decimal> Checker::ends_fraction(const syntax::Grading& grading) {
  if (!grading.ends) {
    return std::nullopt;
  }
  const auto part = in_unit(*grading.ends, quantity::UnitTable::number, false, "the part of a band");
  if (part && (*part < Decimal{0} || !(*part < Decimal::of("0.5")))) {
    error(diagnose::Code::limit_order, grading.ends->span, "found an end of a band that is not from 0 % to below 50 %",
          "the two ends of a band must not meet");
    return std::nullopt;
  }
  return part;
}

void Checker::grading_assertions(const syntax::Assertion& tree, const syntax::Requirement& requirement,
                                 Alternative& out) {
  const std::uint32_t index = find_kind(gradings_, tree.limit.words.front(), NameKind::grading);
  const std::uint32_t measure_id = names_.find(tree.measure.value)->second.index;
  const Measure& measure = rules_.measures.at(measure_id);
  const auto sieve_condition = std::find_if(measure.conditions.begin(), measure.conditions.end(), [&](ConditionId id) {
    return rules_.conditions.at(id).scale == Scale::sieve;
  });
  if (sieve_condition == measure.conditions.end()) {
    error(diagnose::Code::limit_kind, tree.span,
          "found measure `" + measure.name + "`, which is not taken sieve by sieve, with a grading",
          "a grading limits a measure that is `under` a condition `as sieve designation`");
    return;
  }
  const auto others = condition_values(tree.conditions, measure, tree.span, *sieve_condition);
  const auto names_sieve = [&](const ConditionValue& one) { return one.condition == *sieve_condition; };
  if (std::any_of(others.begin(), others.end(), names_sieve)) {
    error(diagnose::Code::clause_conflict, tree.span, "found a sieve beside a grading, which names the sieves itself",
          "leave the sieve out of the `under` of this demand");
    return;
  }
  if (index == none) {
    return;
  }
  const syntax::Grading& grading = *grading_trees_.at(index);
  out.grading = grading.title.value;
  out.ends = ends_fraction(grading);
  bool limited = grading.broken;
  bool any_tolerance = grading.broken;
  sieves_once(grading);
  for (const syntax::GradingRow& row : grading.rows) {
    const auto opening = quantity::sieve_opening(sources_.text(row.sieve.span));
    const bool tolerated = row_tolerance(tree.limit, row).has_value();
    limited = limited || row.low || tolerated;
    any_tolerance = any_tolerance || tolerated;
    if (!opening || (!row.low && !tolerated)) {
      continue;  // "no limit" demands nothing
    }
    Assertion one{measure_id, others, tree.statistic, {}, staged(measure), row.span};
    ConditionValue at;
    at.condition = *sieve_condition;
    at.value = *opening;
    at.written_unit = rules_.conditions.at(*sieve_condition).unit;
    at.written = std::string(sources_.text(row.sieve.span));
    at.span = row.sieve.span;
    one.conditions.push_back(std::move(at));
    one.limit.span = row.span;
    const bool banded = !row.low || band(row.low, row.high, measure, tree.statistic, requirement, one.limit);
    if (banded && (!tolerated || sieve_tolerance(row, tree, measure, requirement, one.limit))) {
      out.assertions.push_back(std::move(one));
    }
  }
  grading_rules(tree, grading, limited, any_tolerance, out);
}

// What holds of a grading as a whole.
void Checker::grading_rules(const syntax::Assertion& tree, const syntax::Grading& grading, bool limited,
                            bool any_tolerance, Alternative& out) {
  if (tree.limit.tolerance != syntax::ToleranceKind::none && !any_tolerance) {
    const std::string kind = tree.limit.tolerance == syntax::ToleranceKind::stockpile ? "stockpile" : "job mix";
    error(diagnose::Code::clause_missing, tree.limit.span,
          "found grading `" + grading.name.value + "` without any " + kind + " tolerance",
          "add `" + kind + " within ...` to its rows, or leave the tolerance out");
  }
  if (out.ends) {
    // Consecutive sieves are neighbours in size, however the rows are written.
    std::stable_sort(out.assertions.begin(), out.assertions.end(), [](const Assertion& left, const Assertion& right) {
      return left.conditions.back().value > right.conditions.back().value;
    });
  }
  if (!limited) {
    error(diagnose::Code::clause_missing, tree.span, "found a grading that limits no sieve", "give it a band");
  }
}

// Every row names a sieve that is known, and each sieve once, by whatever designation.
void Checker::sieves_once(const syntax::Grading& grading) {
  std::vector<std::pair<Decimal, Span>> seen;
  for (const syntax::GradingRow& row : grading.rows) {
    const auto opening = sieve(row.sieve);
    if (!opening) {
      continue;
    }
    const auto first = std::find_if(seen.begin(), seen.end(), [&](const auto& one) { return one.first == *opening; });
    if (first != seen.end()) {
      diagnostics_
          .error(diagnose::Code::name_duplicate, row.sieve.span,
                 "found sieve `" + std::string(sources_.text(row.sieve.span)) + "` twice in grading `" +
                     grading.name.value + "`",
                 "give each sieve one row")
          .secondary.push_back({first->second, "the first one"});
    }
    seen.emplace_back(*opening, row.sieve.span);
  }
}

std::optional<Rounding> Checker::staged(const Measure& measure) {
  if (!staged_) {
    return std::nullopt;
  }
  if (staged_->place == syntax::Comparing::Place::given) {
    Type type;
    if (!unit(staged_->given->unit, type) || type.unit != measure.type.unit) {
      return std::nullopt;  // a place in another unit is not about this measure
    }
    return Rounding{staged_->given->number, staged_->ties};
  }
  return measure.reporting_place ? std::optional(Rounding{measure.reporting_place, staged_->ties}) : std::nullopt;
}

Alternative Checker::alternative(const syntax::Assertion& tree, const syntax::Requirement& requirement) {
  Alternative out;
  out.span = tree.span;
  const std::uint32_t id = find_kind(names_, tree.measure, NameKind::measure);
  if (id == none) {
    return out;
  }
  if (tree.limit.kind == syntax::LimitKind::grading) {
    grading_assertions(tree, requirement, out);
    return out;
  }
  const Measure& measure = rules_.measures.at(id);
  Assertion one{
      id, condition_values(tree.conditions, measure, tree.span, none), tree.statistic, {}, staged(measure), tree.span};
  if (limit(tree.limit, measure, tree.statistic, requirement, one.limit)) {
    out.assertions.push_back(std::move(one));
  }
  return out;
}

}  // namespace plumbrule::check
