#include "apply/contrast/rows.hpp"

#include <algorithm>
#include <iterator>

#include "apply/contrast/applying.hpp"
#include "apply/contrast/envelope_words.hpp"
#include "apply/contrast/limits.hpp"

namespace plumbrule::contrast {
namespace {

using quantity::Decimal;

// What is sure to pass: the limit as printed, or less where rounding lets less pass.
quantity::Threshold sure_to_pass(const check::End& end, bool upper) {
  const quantity::Threshold printed{end.value, true};
  const quantity::Threshold rounded = threshold_of(end, upper);
  return stricter(rounded, printed, upper) ? quantity::Threshold{rounded.value.stripped(), rounded.inclusive} : printed;
}

}  // namespace

void RowBuilder::add(std::size_t at, const Demand& demand) {
  Row& row = row_for(at, demand);
  const bool words = scope_.rules[at]->measures[demand.assertion->measure].type.is_word();
  const bool comparable = words ? row.words.has_value() || row.all.empty()
                                : !row.words && quantity::convertible(scope_.unit(at, demand), scope_.unit_of(row));
  if (!comparable) {
    scope_.envelope.incomparable.push_back({row.specification, at, row.demand, &demand, "the units or kinds differ"});
    scope_.leave_out(at, demand, "a limit that could not be held against the others");
    return;
  }
  row.all.emplace_back(at, &demand);
  row.optional = row.optional && demand.requirement->optional;
  words ? allow(row, at, demand) : tighten(row, at, demand);
}

Row& RowBuilder::row_for(std::size_t at, const Demand& demand) {
  const Asked classes = left_open(demand.classes, scope_.chosen);
  const std::vector<Asked> exceptions = exceptions_of(demand, scope_.chosen);
  const std::string statistic = statistic_of(demand);
  const auto found = std::find_if(scope_.envelope.rows.begin(), scope_.envelope.rows.end(), [&](const Row& row) {
    return row.subject == demand.subject && row.classes == classes && row.exceptions == exceptions &&
           row.statistic == statistic && row.severity == demand.requirement->severity &&
           check::same_age(row.validity, demand.requirement->validity);
  });
  if (found != scope_.envelope.rows.end()) {
    return *found;
  }
  Row row;
  row.subject = demand.subject;
  row.who = classes_text(classes, exceptions);
  row.classes = classes;
  row.exceptions = exceptions;
  row.statistic = statistic;
  row.severity = demand.requirement->severity;
  row.validity = demand.requirement->validity;
  row.specification = at;
  row.demand = &demand;
  return scope_.envelope.rows.emplace_back(std::move(row));
}

void RowBuilder::allow(Row& row, std::size_t at, const Demand& demand) const {
  const std::set<std::string> own = allowed_words(*scope_.rules[at], *demand.assertion);
  row.words = row.words ? in_both(*row.words, own) : own;
}

void RowBuilder::tighten(Row& row, std::size_t at, const Demand& demand) const {
  const check::Limit& limit = demand.assertion->limit;
  tighten(row, row.low, limit.low, false, false, at, demand);
  tighten(row, row.high, limit.high, true, false, at, demand);
  tighten(row, row.tolerance, limit.tolerance, true, true, at, demand);
}

void RowBuilder::tighten(const Row& row, std::optional<Bound>& end, const std::optional<check::End>& asked, bool upper,
                         bool interval, std::size_t at, const Demand& demand) const {
  if (!asked) {
    return;
  }
  const auto in = [&](std::size_t specification, const Demand& of) {
    const quantity::UnitTable& units = scope_.rules[specification]->units;
    const quantity::UnitId id = of.assertion->limit.unit;
    return units.at(interval ? units.difference(id) : id);
  };
  const quantity::Threshold bound = interval ? quantity::Threshold{asked->value, true} : sure_to_pass(*asked, upper);
  const quantity::Threshold in_row{quantity::convert(bound.value, in(at, demand), in(row.specification, *row.demand)),
                                   bound.inclusive};
  if (!end || stricter(in_row, end->in_row, upper)) {
    end = Bound{in_row, bound, bound.value != asked->value || !bound.inclusive, at, &demand};
  }
}

// An end from the job mix loses less than half a place by rounding.
void mark_rounded(const EnvelopeScope& scope, Row& row) {
  if (!row.tolerance) {
    return;
  }
  for (const auto& [at, demand] : row.all) {
    const auto& own = demand->assertion->limit.tolerance;
    if (!own || !own->rounding.place) {
      continue;
    }
    const auto difference = [&](std::size_t specification, const Demand& of) {
      const quantity::UnitTable& units = scope.rules[specification]->units;
      return units.at(units.difference(of.assertion->limit.unit));
    };
    const Decimal least = own->value - *own->rounding.place / Decimal{2};
    if (quantity::convert(least, difference(at, *demand), difference(row.specification, *row.demand)) <
        row.tolerance->in_row.value) {
      row.rounded.emplace_back(at, demand);
    }
  }
}

// An exception stands in a row of its own, for mixes of its own.
void mark_beside(const EnvelopeScope& scope, Row& row) {
  const Mixes own = scope.chosen_mixes(row);
  for (const Row& other : scope.envelope.rows) {
    if (row.subject != other.subject || row.who == other.who) {
      continue;
    }
    const bool with = !common(own, scope.chosen_mixes(other), scope.words).empty();
    const bool within = without({other.classes}, {row.classes}, scope.words).empty();
    const std::string text =
        (with ? "with the row for " : "another row for ") + (other.who.empty() ? "all" : other.who);
    if ((with || within) && std::find(row.beside.begin(), row.beside.end(), text) == row.beside.end()) {
      row.beside.push_back(text);
    }
  }
}

std::set<std::string> in_both(const std::set<std::string>& left, const std::set<std::string>& right) {
  std::set<std::string> out;
  std::set_intersection(left.begin(), left.end(), right.begin(), right.end(), std::inserter(out, out.begin()));
  return out;
}

}  // namespace plumbrule::contrast
