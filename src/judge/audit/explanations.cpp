#include "judge/audit/explanations.hpp"

#include <algorithm>

#include "base/quantity/symbols.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::audit {
namespace {

using explain::Context;
using quantity::UnitId;

struct Lookup {
  std::uint32_t table = 0;
  std::uint32_t reading = 0;
};

void find_lookups(const check::Rules& rules, check::FormulaId id, std::vector<Lookup>& out) {
  const check::Formula& formula = rules.formulas.at(id);
  if (formula.kind == check::FormulaKind::lookup) {
    out.push_back({formula.index, rules.formulas.at(formula.arguments.front()).index});
  }
  for (const check::FormulaId argument : formula.arguments) {
    find_lookups(rules, argument, out);
  }
}

// The mean of the specimens in the unit of the report; nothing if one has no exact value.
std::optional<Decimal> mean(const Context& context, const evidence::Result& result) {
  Decimal sum;
  for (std::uint32_t at = 0; at < result.specimens.size(); ++at) {
    const auto value = evaluate::specimen_value(context.plan, context.evidence, result, at);
    if (!value.good() || value.amount.bound != quantity::Bound::exact) {
      return std::nullopt;
    }
    sum = sum + quantity::convert(value.amount.value, context.evidence.units.at(value.amount.unit),
                                  context.evidence.units.at(result.reported.amount.unit));
  }
  return sum / Decimal{static_cast<std::int64_t>(result.specimens.size())};
}

// The result with another word of the table for all of its specimens; nothing if it is that word already.
std::optional<evidence::Result> with_word(const evidence::Result& result, std::uint32_t reading, std::uint32_t word) {
  evidence::Result out = result;
  bool other = false;
  for (evidence::Specimen& specimen : out.specimens) {
    if (reading >= specimen.readings.size() || specimen.readings[reading].kind != evidence::Value::Kind::word) {
      return std::nullopt;
    }
    other = other || specimen.readings[reading].word != word;
    specimen.readings[reading].word = word;
  }
  return other ? std::optional(out) : std::nullopt;
}

std::optional<Slip> other_factor(const Context& context, const Mismatch& mismatch) {
  const check::Measure& measure = context.rules.measures[mismatch.result.measure];
  std::vector<Lookup> lookups;
  if (measure.computed) {
    find_lookups(context.rules, *measure.computed, lookups);
  }
  for (const Lookup& lookup : lookups) {
    const check::Table& table = context.rules.tables[lookup.table];
    const check::Category& category = context.rules.categories[table.category];
    for (std::uint32_t word = 0; word < category.words.size(); ++word) {
      const auto changed = with_word(mismatch.result, lookup.reading, word);
      const auto value = changed ? mean(context, *changed) : std::nullopt;
      if (value && mismatch.near(*value)) {
        const std::uint32_t own = mismatch.result.specimens.front().readings[lookup.reading].word;
        return Slip{diagnose::Code::audit_other_factor,
                    "the value of `" + table.name + "` for `" + category.words[word] +
                        "` gives the reported value; the readings say `" + category.words[own] + "`"};
      }
    }
  }
  return std::nullopt;
}

// Units of the same dimension in which each factor is replaced by another symbol of its kind: g/m2 as g/ft2.
void vary(quantity::UnitTable& units, UnitId unit, const std::vector<quantity::UnitFactor>& factors, std::size_t at,
          std::vector<UnitId>& out) {
  if (at == factors.size()) {
    out.push_back(unit);
    return;
  }
  const auto symbols = quantity::symbols();
  const quantity::Symbol& own = symbols[factors[at].symbol];
  for (const quantity::Symbol& other : symbols) {
    if (!(other.dimension == own.dimension) || !other.difference.empty()) {
      continue;
    }
    const auto from = units.find(own.text);
    const auto to = units.find(other.text);
    std::optional<UnitId> varied = unit;
    for (int power = std::abs(factors[at].power); power > 0 && varied && from && to; --power) {
      const bool above = factors[at].power > 0;
      varied = units.quotient(*varied, above ? *from : *to);
      varied = varied ? units.product(*varied, above ? *to : *from) : varied;
    }
    if (varied && from && to) {
      vary(units, *varied, factors, at + 1, out);
    }
  }
}

std::optional<Slip> other_unit(const Context& context, const Mismatch& mismatch) {
  quantity::UnitTable units = context.evidence.units;
  const UnitId own = mismatch.result.reported.amount.unit;
  std::vector<UnitId> candidates;
  for (std::size_t at = 0; at < context.evidence.units.size(); ++at) {
    candidates.push_back(static_cast<UnitId>(at));
  }
  constexpr std::size_t most_factors = 2;
  const quantity::Unit unit = units.at(own);
  if (!unit.point && !unit.factors.empty() && unit.factors.size() <= most_factors &&
      !(unit.dimension == quantity::Dimension{})) {
    vary(units, own, unit.factors, 0, candidates);
  }
  const Decimal half = mismatch.reported.last_place() / Decimal{2};
  for (const UnitId candidate : candidates) {
    const quantity::Unit& other = units.at(candidate);
    if (candidate == own || !quantity::convertible(unit, other) || mismatch.reported.zero() ||
        (unit.dimension == quantity::Dimension{} && (unit.text == "%") == (other.text == "%"))) {
      continue;
    }
    const Decimal there = quantity::convert(mismatch.computed, unit, other);
    const Decimal apart = there - mismatch.reported;
    if (apart <= half && apart >= -half && !(there == mismatch.computed)) {
      const std::string text = other.text.empty() ? "a plain number" : "`" + other.text + "`";
      return Slip{diagnose::Code::audit_unit,
                  "the reported number is the computed value in " + text + "; it is written with `" + unit.text + "`"};
    }
  }
  return std::nullopt;
}

// Two neighbouring digits that changed places, or the sign.
std::optional<std::string> slip_of_the_pen(const Mismatch& mismatch, const std::function<bool(const Decimal&)>& is) {
  if (is(-mismatch.reported)) {
    return "the sign is turned round";
  }
  const std::string written = mismatch.reported.text();
  for (std::size_t at = 0; at + 1 < written.size(); ++at) {
    const std::size_t next = written[at + 1] == '.' ? at + 2 : at + 1;
    if (next >= written.size() || written[at] == '.' || written[at] == '-' || written[at] == written[next]) {
      continue;
    }
    std::string turned = written;
    std::swap(turned[at], turned[next]);
    const auto value = Decimal::parse(turned);
    if (value && is(*value)) {
      return std::string("two digits changed places: `").append(written).append("` for `").append(turned).append("`");
    }
  }
  return std::nullopt;
}

}  // namespace

std::optional<std::string> other_basis(const Decimal& percent, const std::function<bool(const Decimal&)>& near) {
  const Decimal hundred{100};
  if (near(hundred * percent / (hundred + percent))) {
    return "it is x / (100 + x) of the computed x: a part of the whole instead of a part of the rest";
  }
  if (near(hundred * percent / (hundred - percent))) {
    return "it is x / (100 - x) of the computed x: a part of the rest instead of a part of the whole";
  }
  return std::nullopt;
}

std::optional<Slip> slip(const Context& context, const Mismatch& mismatch) {
  if (auto factor = other_factor(context, mismatch)) {
    return factor;
  }
  if (auto unit = other_unit(context, mismatch)) {
    return unit;
  }
  const quantity::Unit& unit = context.evidence.units.at(mismatch.result.reported.amount.unit);
  if (unit.text == "%") {
    if (auto basis = other_basis(mismatch.computed, mismatch.near)) {
      return Slip{diagnose::Code::audit_basis, *basis};
    }
  }
  // Whether this would be the computed value, reported as it was.
  const Decimal slack = mismatch.reported.last_place() / Decimal{2};
  const auto is = [&](const Decimal& value) {
    return value - mismatch.computed <= slack && mismatch.computed - value <= slack;
  };
  if (auto pen = slip_of_the_pen(mismatch, is)) {
    return Slip{diagnose::Code::audit_arithmetic, *pen};
  }
  return std::nullopt;
}

}  // namespace plumbrule::audit
