#include "demand.hpp"

#include <algorithm>

#include "base/quantity/sieve.hpp"

namespace plumbrule::oracle {

WantedCondition DemandReader::condition(const syntax::ConditionValue& written) {
  const syntax::Condition& tree = book_.condition(written.name.value);
  WantedCondition out;
  out.name = written.name.value;
  out.end = written.end;
  if (const auto* word = std::get_if<syntax::Text>(&written.value)) {
    out.word = word->value;
    return out;
  }
  const auto& amount = std::get<syntax::Quantity>(written.value);
  if (tree.scale == syntax::Condition::Scale::sieve) {
    out.value = *quantity::sieve_opening(book_.written(amount.span));
    return out;
  }
  const quantity::UnitId unit = units_.of(tree.unit);
  out.value = units_.convert(amount.number, units_.of(amount.unit), unit);
  const auto& within = written.within ? written.within : tree.within;
  if (within) {
    out.within = units_.convert(within->number, units_.of(within->unit), units_.table().difference(unit));
  }
  return out;
}

std::vector<WantedCondition> DemandReader::conditions(const std::vector<syntax::ConditionValue>& written) {
  std::vector<WantedCondition> out;
  for (const syntax::ConditionValue& one : written) {
    if (!one.term) {
      out.push_back(condition(one));
      continue;
    }
    for (const syntax::ConditionValue& meant : book_.term(one.name.value)->conditions) {
      out.push_back(condition(meant));
    }
  }
  return out;
}

// The requirement's own way of comparing, else the one for the measure, else the general one.
Rounding DemandReader::rounding(const syntax::Quantity& limit, const syntax::Measure& measure,
                                const syntax::Requirement& requirement) const {
  const syntax::Comparing* how = nullptr;
  for (const syntax::Comparing& one : book_.specification().comparing) {
    if (one.measure.given() ? one.measure.value == measure.name.value : how == nullptr) {
      how = &one;
    }
  }
  how = requirement.comparing ? &*requirement.comparing : how;
  if (how == nullptr || how->method == syntax::Comparing::Method::absolute) {
    return {};
  }
  switch (how->place) {
    case syntax::Comparing::Place::given:
      return {how->given->number, how->ties};
    case syntax::Comparing::Place::reporting:
      return {measure.reported->number, how->ties};
    default:
      return {limit.number.last_place(), how->ties};
  }
}

void DemandReader::set_unit(Demand& demand, quantity::UnitId unit) {
  demand.unit = unit;
  demand.on_scale = unit;
  quantity::UnitTable& table = units_.table();
  if (table.at(units_.of(*demand.measure->unit)).point && !table.at(unit).point) {
    const quantity::UnitId fahrenheit = *table.find("degF");
    demand.on_scale = table.difference(fahrenheit) == unit ? fahrenheit : *table.find("degC");
  }
}

Demand DemandReader::start(const syntax::Assertion& assertion) {
  Demand out;
  out.measure = book_.measure(assertion.measure.value);
  out.conditions = conditions(assertion.conditions);
  out.statistic = assertion.statistic;
  const auto& staged = book_.specification().staged;
  if (!staged || !out.measure->unit) {
    return out;
  }
  if (staged->place != syntax::Comparing::Place::given) {
    if (out.measure->reported) {
      out.staged = Rounding{out.measure->reported->number, staged->ties};
    }
  } else if (units_.of(staged->given->unit) == units_.of(*out.measure->unit)) {
    out.staged = Rounding{staged->given->number, staged->ties};
  }
  return out;
}

void DemandReader::grading(const syntax::Assertion& assertion, const syntax::Limit& limit,
                           const syntax::Requirement& requirement, Demands& out) {
  const syntax::Grading& grading = book_.grading(limit.words.front().value);
  if (grading.ends) {
    out.ends = units_.convert(grading.ends->number, units_.of(grading.ends->unit), quantity::UnitTable::number);
  }
  for (const syntax::GradingRow& row : grading.rows) {
    const auto& tolerance = limit.tolerance == syntax::ToleranceKind::stockpile ? row.stockpile
                            : limit.tolerance == syntax::ToleranceKind::job_mix ? row.job_mix
                                                                                : std::nullopt;
    if (!row.low && !tolerance) {
      continue;
    }
    Demand demand = start(assertion);
    for (const syntax::Text& name : demand.measure->conditions) {
      if (book_.condition(name.value).scale == syntax::Condition::Scale::sieve) {
        demand.conditions.push_back({name.value, {}, *quantity::sieve_opening(book_.written(row.sieve.span)), 0, {}});
        break;
      }
    }
    if (row.low) {
      set_unit(demand, units_.of(row.high->unit));
      demand.low = Edge{row.low->number, rounding(*row.low, *demand.measure, requirement)};
      demand.high = Edge{row.high->number, rounding(*row.high, *demand.measure, requirement)};
    }
    if (tolerance) {
      set_unit(demand, units_.of(tolerance->unit));
      demand.tolerance = Edge{tolerance->number, rounding(*tolerance, *demand.measure, requirement)};
    }
    out.all.push_back(std::move(demand));
  }
  // Consecutive sieves follow each other by size, however the rows are written.
  std::stable_sort(out.all.begin(), out.all.end(), [](const Demand& left, const Demand& right) {
    return left.conditions.back().value > right.conditions.back().value;
  });
}

Demands DemandReader::read(const syntax::Assertion& assertion, const syntax::Limit& written,
                           const syntax::Requirement& requirement) {
  Demands out;
  const syntax::Term* const term = written.kind == syntax::LimitKind::words && written.words.size() == 1
                                       ? book_.term(written.words.front().value)
                                       : nullptr;
  const syntax::Limit& limit = term != nullptr && term->limit ? *term->limit : written;
  if (limit.kind == syntax::LimitKind::grading) {
    grading(assertion, limit, requirement, out);
    return out;
  }
  Demand demand = start(assertion);
  if (limit.kind == syntax::LimitKind::words) {
    for (const syntax::Text& word : limit.words) {
      demand.words.insert(word.value);
    }
    out.all.push_back(std::move(demand));
    return out;
  }
  const auto edge = [&](const syntax::Quantity& quantity) {
    return Edge{quantity.number, rounding(quantity, *demand.measure, requirement)};
  };
  set_unit(demand, units_.of(limit.quantities.back().unit));
  const syntax::Quantity& first = limit.quantities.front();
  if (limit.kind == syntax::LimitKind::tolerance) {
    demand.tolerance = edge(first);
  } else if (limit.kind != syntax::LimitKind::at_most) {
    demand.low = edge(first);
  }
  if (limit.kind == syntax::LimitKind::at_most || limit.kind == syntax::LimitKind::between) {
    demand.high = edge(limit.quantities.back());
  }
  out.all.push_back(std::move(demand));
  return out;
}

}  // namespace plumbrule::oracle
