#include "check/checker.hpp"
#include "diagnose/suggest.hpp"
#include "quantity/sieve.hpp"

namespace plumbrule::check {

void Checker::resolve(const syntax::Specification& tree) {
  if (rules_.specification) {
    auto& report = diagnostics_.error(diagnose::Code::clause_conflict, tree.name.span,
                                      "found a second specification in one file", "give each specification a file");
    report.secondary.push_back({rules_.specification->span, "the first one"});
    return;
  }
  rules_.specification =
      Specification{tree.name.value, tree.title.value, tree.edition.value, tree.agency.value, {}, tree.name.span};
  rules_.specification->provenance = provenance(tree.provenance);
  comparing_ = tree.comparing;
  if (tree.broken) {
    return;
  }
  if (!tree.comparing) {
    error(diagnose::Code::clause_missing, tree.name.span, "found no `compare by` clause in the specification",
          "say how a result is compared with a limit: `compare by the rounding method, ties to even` or `compare by "
          "the absolute method`");
  }
  if (!tree.edition.given()) {
    error(diagnose::Code::clause_missing, tree.name.span, "found no `edition` clause in the specification",
          "say which edition the limits were taken from: `edition 2026-03-01`, `edition 2020-05` or `edition 2010`");
  }
}

Test Checker::resolve(const syntax::Test& tree) {
  Test out{find_kind(names_, tree.category, NameKind::category), 0, tree.span};
  if (out.category == none) {
    return out;
  }
  for (const syntax::Text& word : tree.words) {
    const std::uint32_t found = find_word(out.category, word);
    out.words |= found == none ? 0 : std::uint64_t{1} << found;
  }
  if (tree.negated) {
    const std::size_t count = rules_.categories.at(out.category).words.size();
    const std::uint64_t all = count == 64 ? ~std::uint64_t{0} : (std::uint64_t{1} << count) - 1;
    out.words = all & ~out.words;
  }
  return out;
}

std::optional<Decimal> Checker::sieve(const syntax::Quantity& tree) {
  const std::string_view written = sources_.text(tree.span);
  const auto opening = quantity::sieve_opening(written);
  if (!opening) {
    const auto names = quantity::known_sieves();
    const std::vector<std::string_view> known(names.begin(), names.end());
    error(diagnose::Code::sieve_unknown, tree.span,
          "found `" + std::string(written) + "`, no sieve of that designation", diagnose::suggestion(written, known));
  }
  return opening;
}

std::optional<ConditionValue> Checker::condition_value(const syntax::ConditionValue& tree) {
  const std::uint32_t id = find_kind(names_, tree.name, NameKind::condition);
  if (id == none) {
    return std::nullopt;
  }
  const Condition& condition = rules_.conditions.at(id);
  ConditionValue out;
  out.condition = id;
  out.span = tree.span;
  const auto* word = std::get_if<syntax::Text>(&tree.value);
  if ((word != nullptr) != (condition.scale == Scale::category)) {
    error(diagnose::Code::limit_kind, tree.span,
          word != nullptr ? "found a word as the value of condition `" + condition.name + "`"
                          : "found a number as the value of condition `" + condition.name + "`",
          condition.scale == Scale::category ? "use a word of its category" : "give a number with its unit");
    return std::nullopt;
  }
  if (word != nullptr) {
    out.written = word->value;
    out.word = condition.category == none ? none : find_word(condition.category, *word);
    return out.word == none ? std::nullopt : std::optional(out);
  }
  const auto& amount = std::get<syntax::Quantity>(tree.value);
  out.written = std::string(sources_.text(amount.span));
  if (condition.scale == Scale::sieve) {
    const auto opening = sieve(amount);
    out.value = opening.value_or(Decimal{});
    out.written_unit = condition.unit;
    return opening ? std::optional(out) : std::nullopt;
  }
  Type type;
  if (!amount.sieve.empty() || !unit(amount.unit, type)) {
    if (!amount.sieve.empty()) {
      error(diagnose::Code::limit_kind, amount.span,
            "found a sieve designation as the value of condition `" + condition.name + "`");
    }
    return std::nullopt;
  }
  const quantity::Unit& from = rules_.units.at(type.unit);
  const quantity::Unit& to = rules_.units.at(condition.unit);
  if (!quantity::convertible(from, to)) {
    error(diagnose::Code::unit_dimension, amount.span,
          "found " + type_text(type) + " as the value of condition `" + condition.name + "`, which is in " +
              unit_text(condition.unit));
    return std::nullopt;
  }
  out.value = quantity::convert(amount.number, from, to);
  out.written_unit = type.unit;
  return out;
}

std::vector<ConditionValue> Checker::condition_values(const std::vector<syntax::ConditionValue>& trees,
                                                      const Measure& measure, const Span& where, ConditionId except) {
  std::vector<ConditionValue> out;
  for (const syntax::ConditionValue& tree : trees) {
    auto value = condition_value(tree);
    if (!value) {
      continue;
    }
    const auto declared = std::find(measure.conditions.begin(), measure.conditions.end(), value->condition);
    const auto twice = std::find_if(out.begin(), out.end(),
                                    [&](const ConditionValue& other) { return other.condition == value->condition; });
    if (declared == measure.conditions.end()) {
      error(diagnose::Code::name_wrong_kind, tree.span,
            "found condition `" + tree.name.value + "`, which measure `" + measure.name + "` does not have",
            "add it to the `under` clause of the measure, or leave it out");
    } else if (twice != out.end()) {
      error(diagnose::Code::clause_duplicate, tree.span, "found condition `" + tree.name.value + "` twice");
    } else {
      out.push_back(std::move(*value));
    }
  }
  if (out.size() < trees.size()) {
    return out;  // already reported; a missing condition would be a follow-on error
  }
  for (const ConditionId id : measure.conditions) {
    const bool stated = std::any_of(out.begin(), out.end(), [&](const ConditionValue& v) { return v.condition == id; });
    if (!stated && id != except) {
      const std::string name = rules_.conditions.at(id).name;
      error(diagnose::Code::clause_missing, where,
            "found no value for condition `" + name + "` of measure `" + measure.name + "`",
            "add `under " + name + " ...`");
    }
  }
  return out;
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
  if (index == none) {
    return;
  }
  const syntax::Grading& grading = *grading_trees_.at(index);
  out.grading = grading.title.value;
  for (const syntax::GradingRow& row : grading.rows) {
    const auto opening = sieve(row.sieve);
    if (!opening || !row.low) {
      continue;  // "no limit" demands nothing
    }
    Assertion one{measure_id, others, tree.statistic, {}, row.span};
    one.conditions.push_back({*sieve_condition, *opening, none, rules_.conditions.at(*sieve_condition).unit,
                              std::string(sources_.text(row.sieve.span)), row.sieve.span});
    one.limit.span = row.span;
    if (band(row.low, row.high, measure, tree.statistic, requirement, one.limit)) {
      out.assertions.push_back(std::move(one));
    }
  }
  const auto limited = [](const syntax::GradingRow& row) { return row.low.has_value(); };
  if (std::none_of(grading.rows.begin(), grading.rows.end(), limited) && !grading.broken) {
    error(diagnose::Code::clause_missing, tree.span, "found a grading that limits no sieve", "give it a band");
  }
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
  Assertion one{id, condition_values(tree.conditions, measure, tree.span, none), tree.statistic, {}, tree.span};
  if (limit(tree.limit, measure, tree.statistic, requirement, one.limit)) {
    out.assertions.push_back(std::move(one));
  }
  return out;
}

void Checker::resolve(const syntax::Requirement& tree) {
  const auto [at, fresh] =
      clauses_.try_emplace(tree.number.value, static_cast<std::uint32_t>(rules_.requirements.size()));
  if (!fresh) {
    auto& report = diagnostics_.error(diagnose::Code::name_duplicate, tree.number.span,
                                      "found requirement `" + tree.number.value + "` a second time",
                                      "give each requirement a number of its own");
    report.secondary.push_back({rules_.requirements.at(at->second).span, "the first one"});
  }
  Requirement out;
  out.number = tree.number.value;
  out.title = tree.title.value;
  out.span = tree.number.span;
  out.section = rules_.sections.empty() ? none : static_cast<std::uint32_t>(rules_.sections.size() - 1);
  out.optional = tree.optional;
  out.cite = tree.cite.value;
  out.because = tree.because.value;
  out.mend = tree.mend.value;
  out.provenance = provenance(tree.provenance);
  if (out.provenance.status == Status::unstated && rules_.specification) {
    out.provenance.status = rules_.specification->provenance.status;
  }
  if (tree.severity.given()) {
    static const std::vector<std::string> known{"reject", "refer", "advise"};
    const auto word = std::find(known.begin(), known.end(), tree.severity.value);
    if (word == known.end()) {
      unknown_word(tree.severity, known, "no severity");
    } else {
      out.severity = static_cast<Severity>(word - known.begin());
    }
  }
  for (const syntax::Test& test : tree.where) {
    out.where.push_back(resolve(test));
  }
  for (const syntax::Assertion& assertion : tree.alternatives) {
    out.alternatives.push_back(alternative(assertion, tree));
  }
  if (tree.alternatives.empty() && !tree.broken) {
    error(diagnose::Code::clause_missing, tree.number.span,
          "found no demand in requirement `" + tree.number.value + "`",
          "add what shall hold: `MEASURE under CONDITION shall be at most ...`");
  }
  rules_.requirements.push_back(std::move(out));
}

}  // namespace plumbrule::check
