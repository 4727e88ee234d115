#include <set>

#include "language/check/checker.hpp"

namespace plumbrule::check {
namespace {

template <typename... Functions>
struct Overload : Functions... {
  using Functions::operator()...;
};
template <typename... Functions>
Overload(Functions...) -> Overload<Functions...>;

constexpr std::size_t most_words = 64;

}  // namespace

void Checker::declare_category(const syntax::Category& tree) {
  declare(names_, tree.name, NameKind::category, rules_.categories.size());
  Category out{tree.name.value, tree.title.value, {}, tree.name.span};
  std::set<std::string_view> seen;
  for (const syntax::Text& word : tree.words) {
    if (!seen.insert(word.value).second) {
      error(diagnose::Code::name_duplicate, word.span, "found `" + word.value + "` twice in one category",
            "leave one of them out");
    }
    out.words.push_back(word.value);
  }
  if (out.words.size() > most_words) {
    error(diagnose::Code::syntax_number, tree.name.span, "found a category of more than 64 words",
          "split it into two categories");
    out.words.resize(most_words);
  }
  rules_.categories.push_back(std::move(out));
}

// First pass: every name gets its index, so that items may refer to later ones.
void Checker::declare_items(const syntax::RuleFile& file) {
  for (const syntax::Item& item : file.items) {
    std::visit(
        Overload{
            [&](const syntax::Category& tree) { declare_category(tree); },
            [&](const syntax::Condition& tree) {
              declare(names_, tree.name, NameKind::condition, rules_.conditions.size());
              rules_.conditions.push_back({tree.name.value, tree.title.value, {}, 0, none, false, 0, tree.name.span});
            },
            [&](const syntax::Basis& tree) {
              declare(bases_, tree.name, NameKind::basis, rules_.bases.size());
              rules_.bases.push_back({tree.name.value, tree.title.value, tree.name.span});
            },
            [&](const syntax::Measure& tree) {
              declare(names_, tree.name, NameKind::measure, rules_.measures.size());
              rules_.measures.emplace_back();
              rules_.measures.back().name = tree.name.value;
              rules_.measures.back().title = tree.title.value;
              rules_.measures.back().span = tree.name.span;
            },
            [&](const syntax::Table& tree) {
              declare(names_, tree.name, NameKind::table, rules_.tables.size());
              rules_.tables.emplace_back();
              rules_.tables.back().name = tree.name.value;
              rules_.tables.back().span = tree.name.span;
            },
            [&](const syntax::Grading& tree) {
              declare(gradings_, tree.name, NameKind::grading, grading_trees_.size());
              grading_trees_.push_back(&tree);
            },
            [&](const syntax::Term& tree) {
              declare(names_, tree.name, NameKind::term, terms_.size());
              terms_.emplace(tree.name.value, &tree);
            },
            [](const auto&) {},
        },
        item);
  }
}

// Second pass, conditions and tables; measures follow, because their formulas need both.
void Checker::resolve_items(const syntax::RuleFile& file) {
  file_ = &file;
  for (const syntax::Item& item : file.items) {
    if (const auto* condition = std::get_if<syntax::Condition>(&item)) {
      resolve(*condition);
    } else if (const auto* table = std::get_if<syntax::Table>(&item)) {
      resolve(*table);
    }
  }
  for (const syntax::Item& item : file.items) {
    if (const auto* measure = std::get_if<syntax::Measure>(&item)) {
      resolve(*measure);
    }
  }
}

void Checker::resolve(const syntax::Condition& tree) {
  // Not by its name: another item may have it too, which was reported.
  const auto own = std::find_if(rules_.conditions.begin(), rules_.conditions.end(),
                                [&](const Condition& one) { return one.span == tree.name.span; });
  Condition& out = *own;
  out.scale = static_cast<Scale>(tree.scale);
  Type type;
  if (tree.scale == syntax::Condition::Scale::category) {
    out.category = find_kind(names_, tree.category, NameKind::category);
  } else if (tree.scale == syntax::Condition::Scale::sieve) {
    out.unit = *rules_.units.find("mm");
  } else if (tree.unit.basis.given()) {
    error(diagnose::Code::percent_basis, tree.unit.span, "found a basis in the unit of condition `" + out.name + "`",
          "conditions are plain values; leave the basis out");
    out.broken = true;
  } else if (unit(tree.unit, type)) {
    out.unit = type.unit;
  } else {
    out.broken = true;
  }
  if (tree.within && !out.broken) {
    out.within = condition_tolerance(*tree.within, out).value_or(Decimal{});
  }
}

void Checker::measure_type(const syntax::Measure& tree, Measure& measure) {
  if (tree.text && (tree.unit || tree.category.given())) {
    error(diagnose::Code::clause_conflict, tree.unit ? tree.unit->span : tree.category.span,
          "found both " + std::string(tree.unit ? "a unit" : "a category") + " and a text in measure `" + measure.name +
              "`",
          "a measure is either a quantity (`in`) or a text (`as text`)");
  } else if (tree.unit && tree.category.given()) {
    error(diagnose::Code::clause_conflict, tree.category.span,
          "found both a unit and a category in measure `" + measure.name + "`",
          "a measure is either a quantity (`in`) or a word (`among`)");
  } else if (tree.text) {
    measure.type.text = true;
  } else if (tree.unit) {
    unit(*tree.unit, measure.type);
  } else if (tree.category.given()) {
    measure.type.category = find_kind(names_, tree.category, NameKind::category);
  } else if (!tree.broken) {
    error(diagnose::Code::clause_missing, tree.name.span,
          "found neither a unit nor a category in measure `" + measure.name + "`",
          "add `in` and a unit, `among` and a category, or `as text`");
  }
  if (tree.reported) {
    Type place;
    if (measure.type.broken) {
      return;
    }
    if (measure.type.is_word()) {
      error(diagnose::Code::rounding_place, tree.reported->span, "found a reporting place for a measure of words",
            "only a number is reported to a place");
      return;
    }
    if (unit(tree.reported->unit, place) && place.unit != measure.type.unit) {
      error(diagnose::Code::rounding_place, tree.reported->span,
            "found a reporting place in " + unit_text(place.unit) + " for a measure in " + unit_text(measure.type.unit),
            "write the place in the unit of the measure");
    } else if (!(tree.reported->number > Decimal{0})) {
      error(diagnose::Code::rounding_place, tree.reported->span, "found a reporting place that is not above zero",
            "write the step to which results are reported: `reported to 1 g/m2`");
    } else {
      measure.reporting_place = tree.reported->number;
    }
  }
}

void Checker::measure_readings(const syntax::Measure& tree, Measure& measure) {
  for (const syntax::Reading& reading : tree.readings) {
    Reading out{reading.name.value, {}, reading.name.span};
    for (const Reading& other : measure.readings) {
      if (other.name == out.name) {
        error(diagnose::Code::name_duplicate, reading.name.span, "found reading `" + out.name + "` twice",
              "give one of them another name");
      }
    }
    if (reading.unit) {
      unit(*reading.unit, out.type);
    } else {
      const syntax::Text& category = reading.category.given() ? reading.category : reading.name;
      out.type.category = find_kind(names_, category, NameKind::category);
    }
    measure.readings.push_back(std::move(out));
  }
}

void Checker::measure_formulas(const syntax::Measure& tree, Measure& measure) {
  if (tree.computed) {
    in_own_formula_ = true;
    measure.computed = formula(*tree.computed, measure);
    in_own_formula_ = false;
    if (measure.computed && !measure.type.broken) {
      const Formula& computed = rules_.formulas.at(*measure.computed);
      const bool basis_fits = computed.type.basis == none || computed.type.basis == measure.type.basis;
      if (measure.type.is_word() || computed.type.is_word()) {
        error(diagnose::Code::limit_kind, computed.span, "found a formula for a measure of words",
              "a word is observed, not computed");
      } else if (!quantity::convertible(unit_of(computed.type), unit_of(measure.type))) {
        error(diagnose::Code::unit_dimension, computed.span,
              "found a formula whose value is in " + type_text(computed.type) + ", for a measure in " +
                  type_text(measure.type),
              "mend the formula or the unit of the measure: a factor of it may lack its unit");
      } else if (!basis_fits) {
        error(diagnose::Code::percent_basis, computed.span,
              "found a formula whose value is " + type_text(computed.type) + ", for a measure in " +
                  type_text(measure.type),
              "use `fraction(...)` to say that a percentage is meant as a plain ratio");
      }
    }
  } else if (!measure.readings.empty() && !tree.broken) {
    error(diagnose::Code::clause_missing, tree.name.span,
          "found readings but no formula in measure `" + measure.name + "`", "add `computed as` and the formula");
  }
  for (const syntax::Refusal& refusal : tree.refusals) {
    resolve(refusal, measure);
  }
}

void Checker::resolve(const syntax::Measure& tree) {
  // Not by its name: another item may have it too, which was reported.
  const auto own = std::find_if(rules_.measures.begin(), rules_.measures.end(),
                                [&](const Measure& one) { return one.span == tree.name.span; });
  const auto index = static_cast<std::uint32_t>(own - rules_.measures.begin());
  Measure out = rules_.measures.at(index);
  measure_broken_ = tree.broken;
  out.method = tree.method.value;
  out.provenance = provenance(tree.provenance);
  measure_type(tree, out);
  measure_readings(tree, out);
  for (const syntax::Text& condition : tree.conditions) {
    const std::uint32_t found = find_kind(names_, condition, NameKind::condition);
    if (std::find(out.conditions.begin(), out.conditions.end(), found) != out.conditions.end()) {
      error(diagnose::Code::clause_duplicate, condition.span, "found condition `" + condition.value + "` twice",
            "name each condition once");
    } else if (found != none) {
      out.conditions.push_back(found);
    }
  }
  measure_formulas(tree, out);
  if (tree.repeatability && !out.type.broken) {
    repeatability(*tree.repeatability, out);
  }
  for (const syntax::Held& one : tree.held) {
    held(one, out);
  }
  rules_.measures.at(index) = std::move(out);
}

namespace {

bool needs_readings(const std::vector<Formula>& formulas, FormulaId id) {
  const Formula& formula = formulas.at(id);
  if (formula.kind == FormulaKind::reading || formula.kind == FormulaKind::cumulative ||
      formula.kind == FormulaKind::total) {
    return true;
  }
  return std::any_of(formula.arguments.begin(), formula.arguments.end(),
                     [&](FormulaId argument) { return needs_readings(formulas, argument); });
}

}  // namespace

void Checker::resolve(const syntax::Refusal& tree, Measure& measure) {
  const auto left = formula(tree.left, measure);
  const auto right = formula(tree.right, measure);
  if (!left || !right || !comparable(rules_.formulas.at(*left).type, rules_.formulas.at(*right).type, tree.span)) {
    return;
  }
  const bool readings = needs_readings(rules_.formulas, *left) || needs_readings(rules_.formulas, *right);
  measure.refusals.push_back({*left, *right, tree.comparison, readings, tree.because.value, tree.span});
}

}  // namespace plumbrule::check
