#include "base/diagnose/suggest.hpp"
#include "language/check/checker.hpp"

namespace plumbrule::check {

void Checker::example_target(const syntax::Example& tree, Example& out) {
  if (const auto clause = clauses_.find(tree.target.value); clause != clauses_.end()) {
    out.requirement = clause->second;
    return;
  }
  const auto named = names_.find(tree.target.value);
  if (named != names_.end() && named->second.kind == NameKind::measure) {
    out.measure = named->second.index;
    return;
  }
  if (broken_.count(tree.target.value) > 0 || broken_.count("requirement") > 0) {
    return;
  }
  std::vector<std::string_view> known;
  for (const auto& [number, index] : clauses_) {
    known.push_back(number);
  }
  for (const Measure& measure : rules_.measures) {
    known.emplace_back(measure.name);
  }
  error(diagnose::Code::name_unknown, tree.target.span,
        "found `" + tree.target.value + "`, no requirement or measure of that name",
        diagnose::suggestion(tree.target.value, known));
}

std::optional<quantity::Amount> Checker::amount(const syntax::Quantity& tree, const Type& type) {
  Type found;
  if (!tree.sieve.empty() || type.is_word()) {
    error(diagnose::Code::limit_kind, tree.span, "found a number or a sieve where " + type_text(type) + " is needed",
          type.is_word() ? "write a word" : "write a number with its unit");
    return std::nullopt;
  }
  if (!unit(tree.unit, found) || type.broken) {
    return std::nullopt;
  }
  if (!quantity::convertible(unit_of(found), unit_of(type))) {
    error(diagnose::Code::unit_dimension, tree.span,
          "found a value in " + type_text(found) + ", expected " + type_text(type), "give it in a unit of that kind");
    return std::nullopt;
  }
  if (lacks_percent(found, type)) {
    error(diagnose::Code::unit_dimension, tree.span, "found a plain number, expected " + type_text(type),
          "write `%` behind the number");
    return std::nullopt;
  }
  if (found.basis != type.basis) {
    error(diagnose::Code::percent_basis, tree.span,
          "found a value in " + type_text(found) + ", expected " + type_text(type));
    return std::nullopt;
  }
  return quantity::Amount{tree.number, found.unit, quantity::Bound::exact};
}

std::optional<GivenValue> Checker::given_value(const std::variant<syntax::Quantity, syntax::Text>& tree,
                                               const Type& type) {
  if (const auto* word = std::get_if<syntax::Text>(&tree)) {
    if (type.text) {
      return GivenValue{{}, 0, word->span};  // any word stands for a text
    }
    if (!type.is_word()) {
      error(diagnose::Code::limit_kind, word->span, "found a word where " + type_text(type) + " is needed",
            "write a number with its unit");
      return std::nullopt;
    }
    const std::uint32_t index = find_word(type.category, *word);
    return index == none ? std::nullopt : std::optional(GivenValue{{}, index, word->span});
  }
  const auto& quantity = std::get<syntax::Quantity>(tree);
  const auto value = amount(quantity, type);
  return value ? std::optional(GivenValue{*value, none, quantity.span}) : std::nullopt;
}

void Checker::given_class(const syntax::Given& tree, CategoryId category, Example& out) {
  if (!tree.word.given()) {
    error(diagnose::Code::limit_kind, tree.span, "found no word for category `" + tree.name.value + "`",
          "write `given " + tree.name.value + "` and one of its words");
    return;
  }
  out.classes.push_back({category, find_word(category, tree.word), tree.span});
}

void Checker::given_result(const syntax::Given& tree, MeasureId measure_id, Example& out) {
  const Measure& measure = rules_.measures.at(measure_id);
  GivenResult result;
  result.measure = measure_id;
  result.job_mix = tree.job_mix;
  result.lot = tree.lot.value;
  result.conditions = condition_values(tree.conditions, measure, tree.span, none);
  result.span = tree.span;
  if (tree.word.given()) {
    if (const auto value = given_value(tree.word, measure.type)) {
      result.values.push_back(*value);
    }
  }
  for (const syntax::GivenAmount& given : tree.amounts) {
    if (auto value = given_value(given.quantity, measure.type)) {
      value->amount.bound =
          static_cast<quantity::Bound>(given.bound == syntax::GivenBound::exact      ? quantity::Bound::exact
                                       : given.bound == syntax::GivenBound::at_least ? quantity::Bound::at_least
                                       : given.bound == syntax::GivenBound::at_most  ? quantity::Bound::at_most
                                       : given.bound == syntax::GivenBound::above    ? quantity::Bound::above
                                                                                     : quantity::Bound::below);
      result.values.push_back(*value);
    }
  }
  for (const syntax::ConditionValue& condition : tree.conditions) {
    if (condition.end != syntax::ConditionEnd::exactly || condition.within) {
      error(diagnose::Code::limit_kind, condition.span, "found an end as the condition of a test",
            "say at what it was made: `under " + condition.name.value + " ...`");
    }
  }
  for (const syntax::GivenReading& given : tree.readings) {
    const auto twice = std::find_if(tree.readings.begin(), tree.readings.end(), [&](const syntax::GivenReading& one) {
      return &one < &given && one.name.value == given.name.value;
    });
    if (twice != tree.readings.end()) {
      error(diagnose::Code::name_duplicate, given.name.span, "found reading `" + given.name.value + "` twice",
            "give each reading once");
    }
    const auto at = std::find_if(measure.readings.begin(), measure.readings.end(),
                                 [&](const Reading& reading) { return reading.name == given.name.value; });
    if (at == measure.readings.end()) {
      std::vector<std::string> known;
      for (const Reading& reading : measure.readings) {
        known.push_back(reading.name);
      }
      unknown_word(given.name, known, "no reading of measure `" + measure.name + "`");
    } else if (const auto value = given_value(given.value, at->type)) {
      result.readings.emplace_back(static_cast<std::uint32_t>(at - measure.readings.begin()), *value);
    }
  }
  out.results.push_back(std::move(result));
}

void Checker::given(const syntax::Given& tree, Example& out) {
  const Named* named = find(names_, tree.name, "measure or category");
  if (named == nullptr) {
    return;
  }
  if (named->kind == NameKind::category) {
    given_class(tree, named->index, out);
  } else if (named->kind == NameKind::measure) {
    given_result(tree, named->index, out);
  } else {
    error(diagnose::Code::name_wrong_kind, tree.name.span,
          "found `" + tree.name.value + "`, a " + std::string(describe(named->kind)) +
              ", where a measure or a category is needed");
  }
}

void Checker::expectation(const syntax::Example& tree, Example& out) {
  if (tree.expect.size() != 1) {
    if (!tree.broken) {
      error(diagnose::Code::clause_missing, tree.title.span,
            "found " + std::to_string(tree.expect.size()) + " `expect` clauses in this example, expected one",
            "say what is expected: `expect complies`");
    }
    return;
  }
  const syntax::Expect& expect = tree.expect.front();
  const bool about_measure = expect.value || expect.verdict == syntax::ExpectedVerdict::refused;
  if (out.measure != none && !about_measure) {
    error(diagnose::Code::limit_kind, expect.span, "found a verdict for a measure, which has none",
          "write `expect value ...` or `expect refused`");
  } else if (out.requirement != none && about_measure) {
    error(diagnose::Code::limit_kind, expect.span, "found a value for a requirement, which has a verdict",
          "write `expect complies`, `expect fails`, `expect not shown` or `expect does not apply`");
  } else if (expect.value && out.measure != none) {
    out.value = amount(*expect.value, rules_.measures.at(out.measure).type);
  } else {
    out.verdict = expect.verdict;
  }
}

void Checker::resolve(const syntax::Example& tree) {
  Example out;
  out.title = tree.title.value;
  out.span = source::cover(tree.title.span, tree.target.span);
  example_target(tree, out);
  for (const syntax::Given& given_tree : tree.given) {
    given(given_tree, out);
  }
  expectation(tree, out);
  rules_.examples.push_back(std::move(out));
}

}  // namespace plumbrule::check
