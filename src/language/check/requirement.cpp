#include "base/diagnose/suggest.hpp"
#include "base/quantity/sieve.hpp"
#include "language/check/checker.hpp"

namespace plumbrule::check {

void Checker::resolve(const syntax::Specification& tree) {
  if (rules_.specification) {
    auto& report = diagnostics_.error(diagnose::Code::clause_conflict, tree.name.span,
                                      "found a second specification in one file", "give each specification a file");
    report.secondary.push_back({rules_.specification->span, "the first one"});
    return;
  }
  rules_.specification = Specification{};
  rules_.specification->name = tree.name.value;
  rules_.specification->title = tree.title.value;
  rules_.specification->edition = tree.edition.value;
  rules_.specification->agency = tree.agency.value;
  rules_.specification->effective = tree.effective.value;
  rules_.specification->span = tree.name.span;
  rules_.specification->provenance = provenance(tree.provenance);
  comparing_ = tree.comparing;
  staged_ = tree.staged;
  if (staged_ && staged_->given && !(staged_->given->number > Decimal{0})) {
    error(diagnose::Code::rounding_place, staged_->given->span, "found a rounding place that is not above zero",
          "such as `0.1 kg-cm`");
  }
  if (tree.validity) {
    validity_ = {tree.validity->count, tree.validity->days};
  }
  check_comparing();
  rules_.specification->accepted = accepted(tree.accepted);
  rules_.specification->certificates = tree.certificates;
  if (tree.outliers) {
    outliers(*tree.outliers);
  }
  if (tree.broken) {
    return;
  }
  const bool general = std::any_of(tree.comparing.begin(), tree.comparing.end(),
                                   [](const syntax::Comparing& one) { return !one.measure.given(); });
  if (!general) {
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

// A quantity in a given unit; a difference for a tolerance, so that `within 1 Cdeg` fits a temperature.
std::optional<Decimal> Checker::in_unit(const syntax::Quantity& tree, UnitId unit_id, bool difference,
                                        const std::string& what) {
  Type type;
  if (!tree.sieve.empty()) {
    error(diagnose::Code::limit_kind, tree.span, "found a sieve designation as " + what,
          "write a number with its unit");
    return std::nullopt;
  }
  if (!unit(tree.unit, type)) {
    return std::nullopt;
  }
  const UnitId wanted = difference ? rules_.units.difference(unit_id) : unit_id;
  if (!quantity::convertible(rules_.units.at(type.unit), rules_.units.at(wanted))) {
    error(diagnose::Code::unit_dimension, tree.span,
          "found " + type_text(type) + " as " + what + ", which is in " + unit_text(wanted),
          "write it in a unit of that kind");
    return std::nullopt;
  }
  return quantity::convert(tree.number, rules_.units.at(type.unit), rules_.units.at(wanted));
}

std::optional<Decimal> Checker::condition_tolerance(const syntax::Quantity& tree, const Condition& condition) {
  if (condition.scale != Scale::unit) {
    error(diagnose::Code::limit_kind, tree.span, "found a tolerance for a condition that is not measured",
          "only a condition `in` a unit has a tolerance");
    return std::nullopt;
  }
  if (below_zero(tree)) {
    return std::nullopt;
  }
  return in_unit(tree, condition.unit, true, "the tolerance of condition `" + condition.name + "`");
}

bool Checker::condition_quantity(const syntax::ConditionValue& tree, const Condition& condition, ConditionValue& out) {
  const auto& amount = std::get<syntax::Quantity>(tree.value);
  const std::string what = "the value of condition `" + condition.name + "`";
  std::optional<Decimal> value;
  if (condition.scale == Scale::sieve) {
    value = sieve(amount);
  } else {
    value = in_unit(amount, condition.unit, false, what);
  }
  out.within = condition.within;
  if (value && tree.within) {
    const auto within = condition_tolerance(*tree.within, condition);
    value = within ? value : std::nullopt;
    out.within = within.value_or(Decimal{});
  }
  out.value = value.value_or(Decimal{});
  return value.has_value();
}

std::optional<ConditionValue> Checker::condition_value(const syntax::ConditionValue& tree) {
  const std::uint32_t id = find_kind(names_, tree.name, NameKind::condition);
  if (id == none) {
    return std::nullopt;
  }
  const Condition& condition = rules_.conditions.at(id);
  if (condition.broken) {
    return std::nullopt;
  }
  ConditionValue out;
  out.condition = id;
  out.span = tree.span;
  out.end = tree.end;
  out.written_unit = condition.unit;
  out.written = std::string(sources_.text(tree.span).substr(tree.name.value.size()));
  out.written.erase(0, out.written.find_first_not_of(" \t\r\n"));
  const auto* word = std::get_if<syntax::Text>(&tree.value);
  if ((word != nullptr) != (condition.scale == Scale::category)) {
    error(diagnose::Code::limit_kind, tree.span,
          word != nullptr ? "found a word as the value of condition `" + condition.name + "`"
                          : "found a number as the value of condition `" + condition.name + "`",
          condition.scale == Scale::category ? "use a word of its category" : "give a number with its unit");
    return std::nullopt;
  }
  if (word != nullptr && tree.within) {
    condition_tolerance(*tree.within, condition);
    return std::nullopt;
  }
  if (word == nullptr) {
    return condition_quantity(tree, condition, out) ? std::optional(out) : std::nullopt;
  }
  out.word = condition.category == none ? none : find_word(condition.category, *word);
  return out.word == none ? std::nullopt : std::optional(out);
}

// Terms that stand for conditions are replaced by what they mean.
std::vector<syntax::ConditionValue> Checker::without_terms(const std::vector<syntax::ConditionValue>& trees) {
  std::vector<syntax::ConditionValue> out;
  for (const syntax::ConditionValue& tree : trees) {
    if (!tree.term) {
      out.push_back(tree);
      continue;
    }
    if (find_kind(names_, tree.name, NameKind::term) == none) {
      continue;
    }
    const syntax::Term& term = *terms_.find(tree.name.value)->second;
    if (term.conditions.empty()) {
      error(diagnose::Code::name_wrong_kind, tree.span,
            "found term `" + tree.name.value + "`, which stands for a limit, among conditions",
            "a term for a limit stands behind `shall be`");
    }
    for (const syntax::ConditionValue& meant : term.conditions) {
      if (meant.term) {
        error(diagnose::Code::name_wrong_kind, meant.span, "found a term inside a term", "write its conditions out");
      } else {
        out.push_back(meant);
      }
    }
  }
  return out;
}

std::vector<ConditionValue> Checker::condition_values(const std::vector<syntax::ConditionValue>& written,
                                                      const Measure& measure, const Span& where, ConditionId except) {
  std::vector<ConditionValue> out;
  const std::vector<syntax::ConditionValue> trees = without_terms(written);
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
      error(diagnose::Code::clause_duplicate, tree.span, "found condition `" + tree.name.value + "` twice",
            "leave one of them out");
    } else {
      out.push_back(std::move(*value));
    }
  }
  if (out.size() < trees.size() || trees.size() < written.size()) {
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

void Checker::resolve(const syntax::Requirement& tree) {
  const auto [at, fresh] =
      clauses_.try_emplace(tree.number.value, static_cast<std::uint32_t>(rules_.requirements.size()));
  if (!fresh) {
    auto& report = diagnostics_.error(diagnose::Code::name_duplicate, tree.number.span,
                                      "found requirement `" + tree.number.value + "` a second time",
                                      "give each requirement a number of its own");
    report.secondary.push_back({rules_.requirements.at(at->second).span, "the first one"});
  }
  if (tree.comparing && tree.comparing->measure.given()) {
    error(diagnose::Code::clause_conflict, tree.comparing->measure.span,
          "found a measure in the `compare` clause of a requirement",
          "a requirement compares its own; leave the name out");
  }
  Requirement out;
  requirement_head(tree, out);
  for (const syntax::Test& test : tree.where) {
    out.where.push_back(resolve(test));
  }
  out.cases.push_back({{}, alternatives(tree), tree.cite.value, tree.number.span});
  exceptions(tree, out);
  if (tree.alternatives.empty() && !tree.broken) {
    error(diagnose::Code::clause_missing, tree.number.span,
          "found no demand in requirement `" + tree.number.value + "`",
          "add what shall hold: `MEASURE under CONDITION shall be at most ...`");
  }
  rules_.requirements.push_back(std::move(out));
}

std::vector<Alternative> Checker::alternatives(const syntax::Requirement& tree) {
  std::vector<Alternative> out;
  for (const syntax::Assertion& assertion : tree.alternatives) {
    out.push_back(alternative(assertion, tree));
  }
  return out;
}

void Checker::requirement_head(const syntax::Requirement& tree, Requirement& out) {
  out.number = tree.number.value;
  out.title = tree.title.value;
  out.span = tree.number.span;
  out.section = rules_.sections.empty() ? none : static_cast<std::uint32_t>(rules_.sections.size() - 1);
  out.optional = tree.optional;
  out.cite = tree.cite.value;
  out.because = tree.because.value;
  out.mend = tree.mend.value;
  out.amended_by = tree.amended_by;
  out.accepted = accepted(tree.accepted);
  out.validity = tree.validity ? Validity{tree.validity->count, tree.validity->days} : validity_;
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
}

std::vector<Accepted> Checker::accepted(const std::vector<syntax::Accepted>& trees) {
  std::vector<Accepted> out;
  for (const syntax::Accepted& tree : trees) {
    const bool known =
        std::any_of(diagnose::code_texts.begin(), diagnose::code_texts.end(), [&](std::string_view text) {
          return text == tree.code.value && text.starts_with("lint.") && text != "lint.accept";
        });
    if (!known) {
      error(diagnose::Code::lint_accept, tree.code.span,
            "found `" + tree.code.value + "`, no remark that can be accepted",
            "the codes of remarks begin with `lint.`, such as `lint.citation`");
    }
    out.push_back({tree.code.value, tree.because.value, tree.code.span});
  }
  return out;
}

// A `compare MEASURE by` clause must name a measure, and each measure once.
void Checker::check_comparing() {
  for (std::size_t at = 0; at < comparing_.size(); ++at) {
    const syntax::Comparing& one = comparing_[at];
    if (one.measure.given()) {
      find_kind(names_, one.measure, NameKind::measure);
    }
    const auto same = [&](const syntax::Comparing& other) { return other.measure.value == one.measure.value; };
    const auto first = std::find_if(comparing_.begin(), comparing_.begin() + static_cast<std::ptrdiff_t>(at), same);
    if (first != comparing_.begin() + static_cast<std::ptrdiff_t>(at)) {
      auto& report = diagnostics_.error(diagnose::Code::clause_duplicate, one.span,
                                        "found a second `compare` clause for the same", "keep one of them");
      report.secondary.push_back({first->span, "the first one"});
    }
  }
}

}  // namespace plumbrule::check
