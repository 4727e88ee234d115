// What the audit holds readings against (language.md, sections 16.5 and 16.6).

#include "language/check/checker.hpp"

namespace plumbrule::check {

// `%` for a measure that is no percentage is a part of the mean; anything else is in the unit of the measure.
void Checker::repeatability(const syntax::Quantity& tree, Measure& measure) {
  Type type;
  if (measure.type.is_word()) {
    error(diagnose::Code::limit_kind, tree.span, "found a repeatability for a measure of words",
          "only numbers have a range");
    return;
  }
  if (!unit(tree.unit, type)) {
    return;
  }
  if (!(tree.number > Decimal{0})) {
    error(diagnose::Code::limit_kind, tree.span, "found a repeatability that is not above zero",
          "write how far apart the specimens of one result may be: `repeatability 60 g/m2`");
    return;
  }
  const UnitId percent = *rules_.units.find("%");
  if (type.unit == percent && type.basis == none && measure.type.unit != percent) {
    measure.relative = true;
    measure.repeatability = tree.number / Decimal{100};
    return;
  }
  const UnitId wanted = rules_.units.difference(measure.type.unit);
  const bool fits = quantity::convertible(rules_.units.at(type.unit), rules_.units.at(wanted)) &&
                    quantity::same_kind_of_number(rules_.units.at(type.unit), rules_.units.at(wanted));
  if (!fits) {
    error(diagnose::Code::unit_dimension, tree.span,
          "found " + type_text(type) + " as the repeatability of a measure in " + type_text(measure.type),
          "write it in the unit of the measure, or as a percentage of the mean");
  } else if (type.basis != measure.type.basis) {
    error(diagnose::Code::percent_basis, tree.span,
          "found " + type_text(type) + " as the repeatability of a measure in " + type_text(measure.type),
          "name the basis of the measure: `% of ...`");
  } else {
    measure.repeatability = quantity::convert(tree.number, rules_.units.at(type.unit), rules_.units.at(wanted));
  }
}

void Checker::held(const syntax::Held& tree, Measure& measure) {
  for (const Held& other : measure.held) {
    if (other.name == tree.name.value) {
      error(diagnose::Code::name_duplicate, tree.name.span, "found `" + tree.name.value + "` held twice",
            "leave one of them out");
      return;
    }
  }
  Type type;
  if (!unit(tree.value.unit, type) || below_zero(tree.within)) {
    return;
  }
  if (type.basis != none) {
    error(diagnose::Code::percent_basis, tree.value.span, "found a basis in what is held",
          "test conditions are plain values; leave the basis out");
    return;
  }
  const auto within = in_unit(tree.within, type.unit, true, "how far `" + tree.name.value + "` may be off");
  if (within) {
    measure.held.push_back({tree.name.value, type.unit, tree.value.number, *within, tree.span});
  }
}

void Checker::outliers(const syntax::Quantity& tree) {
  Type type;
  if (!unit(tree.unit, type)) {
    return;
  }
  const Decimal part = tree.number / Decimal{100};
  const bool percent = rules_.units.at(type.unit).text == "%" && type.basis == none;
  if (!percent || !(part > Decimal{0}) || !(part < Decimal::of("0.5"))) {
    error(diagnose::Code::limit_kind, tree.span, "found no significance for the test of outliers",
          "write a percentage above 0 % and below 50 %, such as `outliers at 5 %`");
    return;
  }
  rules_.specification->outliers = part;
}

}  // namespace plumbrule::check
