#include "apply/contrast/envelope.hpp"
#include "apply/contrast/envelope_words.hpp"

namespace plumbrule::contrast {
namespace {

using Specifications = std::vector<const check::Rules*>;

std::string amount_with_unit(const quantity::Decimal& value, const std::string& unit, const std::string& basis) {
  return value.text() + (unit.empty() ? "" : " " + unit) + (basis.empty() ? "" : " of " + basis);
}

const check::Rules& rules_of(const Specifications& all, const Bound& bound) { return *all[bound.specification]; }

std::string unit_of(const Specifications& all, const Bound& bound) {
  return rules_of(all, bound).units.at(bound.demand->assertion->limit.unit).text;
}

std::string basis_of(const Specifications& all, const Bound& bound) {
  const check::Rules& rules = rules_of(all, bound);
  const check::BasisId basis = rules.measures[bound.demand->assertion->measure].type.basis;
  return basis == check::none ? "" : rules.bases[basis].name;
}

}  // namespace

std::vector<std::string> row_limits(const Row& row, const Specifications& all, bool for_people) {
  if (row.words) {
    return {row.words->empty() ? "nothing that all allow"
                               : (row.words->size() > 1 ? "one of " : "") + word_list(*row.words)};
  }
  std::vector<std::string> out;
  const auto open = [&](const Bound& bound) { return for_people && !bound.own.inclusive; };
  const auto one_end = [&](const Bound& bound) {
    return amount_with_unit(bound.own.value, unit_of(all, bound), basis_of(all, bound));
  };
  const bool band = row.low && row.high && unit_of(all, *row.low) == unit_of(all, *row.high) &&
                    row.low->own.value <= row.high->own.value && !open(*row.low) && !open(*row.high);
  const bool point = for_people && band && row.low->own.value == row.high->own.value;
  if (point) {
    out.push_back(one_end(*row.high));
  } else if (band) {
    out.push_back("between " + amount_with_unit(row.low->own.value, unit_of(all, *row.low), "") + " and " +
                  one_end(*row.high));
  } else {
    if (row.low) {
      out.push_back((open(*row.low) ? "above " : "at least ") + one_end(*row.low));
    }
    if (row.high) {
      out.push_back((open(*row.high) ? "below " : "at most ") + one_end(*row.high));
    }
  }
  if (row.tolerance) {
    const Demand& demand = *row.tolerance->demand;
    const quantity::UnitTable& units = all[row.tolerance->specification]->units;
    out.push_back("within " +
                  amount_with_unit(demand.assertion->limit.tolerance->value,
                                   units.at(units.difference(demand.assertion->limit.unit)).text,
                                   basis_of(all, *row.tolerance)) +
                  " from the job mix");
  }
  return out;
}

}  // namespace plumbrule::contrast
