#include "language/check/checker.hpp"

namespace plumbrule::check {

bool Checker::below_zero(const syntax::Quantity& tolerance) {
  const bool below = tolerance.number < Decimal{0};
  if (below) {
    error(diagnose::Code::limit_order, tolerance.span, "found a tolerance below zero", "nothing would be within it");
  }
  return below;
}

// A limit that is the name of a term is replaced by what it means.
syntax::Limit Checker::without_terms(const syntax::Limit& tree) {
  if (tree.kind != syntax::LimitKind::words || tree.words.size() != 1) {
    return tree;
  }
  const auto term = terms_.find(tree.words.front().value);
  if (term == terms_.end() || !term->second->limit) {
    return tree;
  }
  used_.push_back(term->first);
  return *term->second->limit;
}

bool Checker::word_limit(const syntax::Limit& tree, const Measure& measure, Limit& out) {
  if (measure.type.text) {
    if (tree.words.size() != 1 || tree.words.front().value != "stated") {
      error(diagnose::Code::limit_kind, tree.span,
            "found words as the limit of measure `" + measure.name + "`, which is a text", "write `shall be stated`");
      return false;
    }
    out.words = 1;
    return true;
  }
  if (!measure.type.is_word()) {
    error(diagnose::Code::limit_kind, tree.span,
          "found words as the limit of measure `" + measure.name + "`, which is in " + type_text(measure.type),
          "write `at most`, `at least` or `between` with a number and its unit");
    return false;
  }
  bool good = true;
  for (const syntax::Text& word : tree.words) {
    const std::uint32_t found = find_word(measure.type.category, word);
    good = good && found != none;
    out.words |= found == none ? 0 : std::uint64_t{1} << found;
  }
  return good;
}

// The type that a limit must have: the measure's; for a range or a standard deviation of temperatures, a difference.
bool Checker::limit_type(const syntax::Quantity& tree, const Measure& measure, const syntax::Statistic& statistic,
                         Type& type) {
  if (!tree.sieve.empty()) {
    error(diagnose::Code::limit_kind, tree.span, "found a sieve designation as a limit",
          "write a number with the unit of the measure");
    return false;
  }
  if (!unit(tree.unit, type) || measure.type.broken) {
    return false;
  }
  const bool spread =
      statistic.kind == syntax::StatisticKind::range || statistic.kind == syntax::StatisticKind::standard_deviation;
  Type wanted = measure.type;
  if (spread) {
    wanted.unit = rules_.units.difference(wanted.unit);
  }
  if (!quantity::convertible(unit_of(type), unit_of(wanted))) {
    const bool same_dimension = unit_of(type).dimension == unit_of(wanted).dimension;
    const std::string found = "found a limit in " + type_text(type);
    if (same_dimension) {
      error(diagnose::Code::unit_temperature, tree.span,
            found + " for measure `" + measure.name + "`, where " + quantity::describe(unit_of(wanted)) + " is wanted",
            "write it in " + unit_text(wanted.unit) +
                "; `degC` and `degF` are temperatures, `Cdeg` and `Fdeg` are differences of temperatures");
    } else {
      error(diagnose::Code::unit_dimension, tree.span,
            found + " for measure `" + measure.name + "`, which is in " + type_text(wanted),
            "write the limit in a unit of the same kind, such as " + unit_text(wanted.unit));
    }
    return false;
  }
  if (lacks_percent(type, wanted)) {
    error(diagnose::Code::unit_dimension, tree.span,
          "found a limit in a plain number for measure `" + measure.name + "`, which is in " + type_text(wanted),
          "write `%` behind the number");
    return false;
  }
  if (type.basis != wanted.basis) {
    error(
        diagnose::Code::percent_basis, tree.span,
        "found a limit in " + type_text(type) + " for measure `" + measure.name + "`, which is in " + type_text(wanted),
        wanted.basis == none ? "leave the basis out, or give the measure its basis"
                             : "say of what: `% of " + rules_.bases.at(wanted.basis).name + "`");
    return false;
  }
  return true;
}

std::optional<Decimal> Checker::given_place(const syntax::Quantity& place, UnitId unit_id, const Span& limit) {
  Type type;
  if (!unit(place.unit, type)) {
    return std::nullopt;
  }
  if (type.unit != unit_id) {
    auto& report = diagnostics_.error(
        diagnose::Code::rounding_place, place.span,
        "found a rounding place in " + unit_text(type.unit) + " for a limit in " + unit_text(unit_id),
        "write the place in the unit of the limit");
    report.secondary.push_back({limit, "the limit"});
    return std::nullopt;
  }
  if (!(place.number > Decimal{0})) {
    error(diagnose::Code::rounding_place, place.span, "found a rounding place that is not above zero",
          "write the step to which results are rounded: `to 0.1 %`");
    return std::nullopt;
  }
  return place.number;
}

// The requirement's own way of comparing, else the specification's for the measure, else its general one.
const syntax::Comparing* Checker::comparing(const Measure& measure, const syntax::Requirement& requirement) const {
  if (requirement.comparing) {
    return &*requirement.comparing;
  }
  const syntax::Comparing* general = nullptr;
  for (const syntax::Comparing& one : comparing_) {
    if (one.measure.value == measure.name) {
      return &one;
    }
    general = one.measure.given() ? general : &one;
  }
  return general;
}

std::optional<Rounding> Checker::rounding(const syntax::Quantity& limit, UnitId unit_id, const Measure& measure,
                                          const syntax::Requirement& requirement) {
  const syntax::Comparing* const how = comparing(measure, requirement);
  if (how == nullptr || how->method == syntax::Comparing::Method::absolute) {
    return Rounding{};
  }
  Rounding out{limit.number.last_place(), how->ties};
  if (how->place == syntax::Comparing::Place::given) {
    out.place = given_place(*how->given, unit_id, limit.span);
  } else if (how->place == syntax::Comparing::Place::reporting) {
    if (!measure.reporting_place || measure.type.unit != unit_id) {
      error(diagnose::Code::rounding_place, limit.span,
            measure.reporting_place ? "found a limit in " + unit_text(unit_id) + ", while measure `" + measure.name +
                                          "` is reported in " + unit_text(measure.type.unit)
                                    : "found no reporting place in measure `" + measure.name + "`",
            "give the requirement a `compare by` clause of its own, with the place in the unit of the limit");
      return std::nullopt;
    }
    out.place = measure.reporting_place;
  }
  return out.place ? std::optional(out) : std::nullopt;
}

// "between 7.0 and 8.5 % of dry_aggregate": the first number takes the unit, or the basis, of the second.
static syntax::Quantity with_unit_of(syntax::Quantity first, const syntax::Quantity& second) {
  if (!first.unit.span.known()) {
    first.unit = second.unit;
  } else if (first.unit.text == second.unit.text && !first.unit.basis.given()) {
    first.unit.basis = second.unit.basis;
  }
  return first;
}

bool Checker::band(const std::optional<syntax::Quantity>& low, const std::optional<syntax::Quantity>& high,
                   const Measure& measure, const syntax::Statistic& statistic, const syntax::Requirement& requirement,
                   Limit& out) {
  const auto first = low && high ? std::optional(with_unit_of(*low, *high)) : low;
  const auto end = [&](const std::optional<syntax::Quantity>& tree, std::optional<End>& slot) {
    if (!tree) {
      return true;
    }
    Type type;
    if (measure.type.is_word()) {
      error(diagnose::Code::limit_kind, tree->span,
            "found a number as the limit of measure `" + measure.name + "`, which is " + type_text(measure.type),
            measure.type.text ? "write `shall be stated`" : "write `shall be one of` and the words");
      return false;
    }
    if (!limit_type(*tree, measure, statistic, type)) {
      return false;
    }
    const auto rule = rounding(*tree, type.unit, measure, requirement);
    if (!rule) {
      return false;
    }
    out.unit = type.unit;
    slot = End{tree->number, *rule, tree->span};
    return true;
  };
  // A unit that both ends share is judged where it stands, or is missing: behind the second.
  const bool shared = low && high && !low->unit.span.known();
  const bool good = shared ? end(high, out.high) && end(first, out.low) : end(first, out.low) && end(high, out.high);
  out.written = std::string(sources_.text(source::cover(low ? low->span : Span{}, high ? high->span : Span{})));
  if (good && out.low && out.high) {
    if (first->unit.text != high->unit.text) {
      error(diagnose::Code::unit_dimension, high->span, "found a range whose ends are in different units",
            "write both ends in one unit");
      return false;
    }
    if (out.low->value > out.high->value) {
      error(diagnose::Code::limit_order, source::cover(low->span, high->span),
            "found a range from " + out.low->value.text() + " to " + out.high->value.text() + ", which nothing meets",
            "write the lower end first");
      return false;
    }
  }
  return good;
}

bool Checker::tolerance_limit(const syntax::Quantity& tree, const Measure& measure, const syntax::Statistic& statistic,
                              const syntax::Requirement& requirement, Limit& out) {
  // The tolerance of a temperature is a difference, of anything else a value like the measure's own.
  syntax::Statistic as_difference = statistic;
  as_difference.kind = syntax::StatisticKind::range;
  Type type;
  if (measure.type.is_word()) {
    error(diagnose::Code::limit_kind, tree.span,
          "found a tolerance for measure `" + measure.name + "`, which is " + type_text(measure.type),
          "a word has no tolerance; write `one of` and the words");
    return false;
  }
  if (!limit_type(tree, measure, as_difference, type)) {
    return false;
  }
  const auto rule = rounding(tree, type.unit, measure, requirement);
  if (!rule || below_zero(tree)) {
    return false;
  }
  if ((out.low || out.high) && out.unit != type.unit) {
    error(diagnose::Code::unit_dimension, tree.span, "found a tolerance in another unit than its band",
          "write both in one unit");
    return false;
  }
  out.unit = type.unit;
  out.tolerance = End{tree.number, *rule, tree.span};
  return true;
}

bool Checker::limit(const syntax::Limit& written, const Measure& measure, const syntax::Statistic& statistic,
                    const syntax::Requirement& requirement, Limit& out) {
  const syntax::Limit tree = without_terms(written);
  out.span = written.span;
  bool good = false;
  if (tree.kind == syntax::LimitKind::words) {
    good = word_limit(tree, measure, out);
    if (good && statistic.span.known() && statistic.kind != syntax::StatisticKind::each) {
      error(diagnose::Code::limit_kind, statistic.span, "found a statistic over words",
            "words can be judged by `each`");
      good = false;
    }
  } else if (tree.kind == syntax::LimitKind::at_most) {
    good = band(std::nullopt, tree.quantities.at(0), measure, statistic, requirement, out);
  } else if (tree.kind == syntax::LimitKind::tolerance) {
    good = tolerance_limit(tree.quantities.at(0), measure, statistic, requirement, out);
  } else if (tree.kind == syntax::LimitKind::at_least) {
    good = band(tree.quantities.at(0), std::nullopt, measure, statistic, requirement, out);
  } else {
    good = band(tree.quantities.at(0), tree.quantities.at(1), measure, statistic, requirement, out);
  }
  out.written = std::string(sources_.text(tree.span));
  out.written += tree.kind == syntax::LimitKind::tolerance ? " from the job mix" : "";
  return good;
}

}  // namespace plumbrule::check
