#include "value_maker.hpp"

#include <chrono>
#include <cstdio>

namespace plumbrule::property {
namespace {

using quantity::Decimal;

const std::string& unit_key(const std::string& unit) {
  static const std::string plain;
  return unit == "number" ? plain : unit;
}

// Readable again: not too many digits.
bool writable(const Decimal& value) { return value.finite() && Decimal::parse(value.text()).has_value(); }

}  // namespace

ValueMaker::ValueMaker(Random& random, const Catalog& catalog, const Faults& faults)
    : random_(random), catalog_(catalog), faults_(faults) {}

std::optional<Decimal> ValueMaker::converted(const Decimal& value, const std::string& from, const std::string& to) {
  if (from == to) {
    return value;
  }
  const quantity::Unit& source = units_.at(*units_.find(unit_key(from)));
  const quantity::Unit& target = units_.at(*units_.find(unit_key(to)));
  const Decimal out = quantity::convert(value, source, target).stripped();
  // Only what comes back as it was: a number beside the limit is made on purpose, not by a conversion.
  const bool same = writable(out) && quantity::convert(out, target, source) == value;
  return same ? std::optional(out) : std::nullopt;
}

Decimal ValueMaker::small() {
  const Decimal whole{static_cast<std::int64_t>(random_.below(14))};
  return random_.chance(30) ? whole + Decimal::of("0.5") : whole;
}

Decimal ValueMaker::offset(const std::string& number, const std::string& reported) {
  const Decimal last = Decimal::of(number).last_place();
  const Decimal place = !reported.empty() && random_.chance(30) ? Decimal::of(reported)
                        : random_.chance(80)                    ? last
                                                                : Decimal::of(random_.pick(Texts{"0.1", "1", "5"}));
  const Decimal half = place * Decimal::of("0.5");
  const Decimal hair = place * Decimal::of("0.0001");
  Decimal out = 0;
  switch (random_.below(8)) {
    case 0:
    case 1:
      return out;
    case 2:
    case 3:
      out = half;
      break;
    case 4:
      out = half + hair;
      break;
    case 5:
      out = half - hair;
      break;
    case 6:
      out = place;
      break;
    default:
      out = hair;
  }
  return random_.chance(50) ? out : -out;
}

Decimal ValueMaker::number_near(const Measure& measure, const std::string& what) {
  const auto near = catalog_.near.find(what);
  if (near == catalog_.near.end() || near->second.empty() || random_.chance(10)) {
    return small();
  }
  const Written& limit = random_.pick(near->second);
  const Decimal value = Decimal::of(limit.number) + offset(limit.number, measure.reported);
  const bool convertible = limit.unit != "Cdeg" && limit.unit != "Fdeg" ? true : measure.family != "temperature";
  return convertible ? converted(value, limit.unit, measure.unit).value_or(value) : value;
}

std::string ValueMaker::bounded(const std::string& number, const std::string& unit) {
  const std::string whole = number + unit;
  switch (random_.below(8)) {
    case 0:
      return whole + " or more";
    case 1:
      return whole + " or less";
    case 2:
      return "at least " + whole;
    case 3:
      return "at most " + whole;
    case 4:
      return "> " + whole;
    case 5:
      return "< " + whole;
    case 6:
      return "more than " + whole;
    default:
      return number + "+" + unit;
  }
}

std::string ValueMaker::written(const Decimal& value, const std::string& of_family, const std::string& unit,
                                const std::string& basis) {
  if (random_.chance(faults_.unreadable)) {
    const std::string foreign = of_family == "mass" ? " mm" : " g";
    return random_.pick(Texts{"n/a", "5,5" + (unit.empty() ? "" : " " + unit), "7" + foreign, "", "about 5 " + unit,
                              "5 % of total mix", "3 parsecs"});
  }
  std::string shown = unit;
  Decimal number = value;
  if (random_.chance(35)) {
    const std::string& other = random_.pick(family(of_family).units);
    if (const auto exact = converted(value, unit, other)) {
      shown = other;
      number = *exact;
    }
  }
  const std::string text = writable(number) ? number.text() : "5";
  const std::string spoken = basis.empty() ? "" : random_.chance(50) ? " of dry aggregate" : " of dry_aggregate";
  const std::string behind = (unit_key(shown).empty() ? "" : " " + shown) + spoken;
  return random_.chance(faults_.bounds) ? bounded(text, behind) : text + behind;
}

std::string ValueMaker::word(const Category& category) {
  if (random_.chance(faults_.unreadable)) {
    return "something else";
  }
  std::string out = random_.pick(category.words);
  for (char& letter : out) {
    letter = (letter == '_' || letter == '-') && random_.chance(50) ? ' ' : letter;
  }
  return out;
}

std::string ValueMaker::of(const Measure& measure, const std::string& near) {
  if (measure.text) {
    return random_.pick(Texts{"No. 4711", "see annex", "5"});
  }
  if (measure.is_word()) {
    return word(catalog_.category(measure.category));
  }
  return written(number_near(measure, near), measure.family, measure.unit, measure.basis);
}

std::string ValueMaker::reading(const Reading& reading, const Decimal& value) {
  if (!reading.category.empty()) {
    return word(catalog_.category(reading.category));
  }
  return written(value, reading.family, reading.unit, "");
}

std::vector<std::pair<std::string, std::string>> ValueMaker::readings(const Measure& measure) {
  std::vector<std::pair<std::string, std::string>> out;
  const Decimal base = small();
  const Decimal aim =
      measure.shape == Shape::free || measure.shape == Shape::passing ? small() : number_near(measure, measure.name);
  for (const Reading& one : measure.readings) {
    Decimal value = small();
    if (measure.shape == Shape::difference) {
      value = &one == measure.readings.data() ? aim + base : converted(base, measure.unit, one.unit).value_or(base);
    } else if (measure.shape == Shape::each_alike) {
      const Decimal own = random_.chance(50) ? aim : number_near(measure, measure.name);
      value = converted(own, measure.unit, one.unit).value_or(own);
    } else if (measure.shape == Shape::passing) {
      value = Decimal{static_cast<std::int64_t>(random_.below(8) * 5)};
    }
    if (!random_.chance(faults_.missing)) {
      out.emplace_back(one.name, reading(one, value));
    }
  }
  return out;
}

std::string ValueMaker::condition(const Condition& condition, const Written* asked) {
  if (random_.chance(faults_.unreadable)) {
    return random_.pick(Texts{"?", "7 parsecs", "30 min or more"});
  }
  Written value = asked != nullptr && random_.chance(80) ? *asked : random_.pick(condition.values);
  if (condition.family.empty()) {
    return value.number;
  }
  if (random_.chance(20)) {
    const Decimal moved = Decimal::of(value.number) + Decimal::of(random_.pick(Texts{"1", "5", "0.1", "2", "5.1"})) *
                                                          Decimal{random_.chance(50) ? 1 : -1};
    value.number = moved.text();
  }
  const std::string& other = random_.pick(family(condition.family).units);
  if (const auto exact = converted(Decimal::of(value.number), value.unit, other); exact && random_.chance(40)) {
    value = {exact->text(), other};
  }
  return phrase(value, "");
}

std::string ValueMaker::day(int offset) {
  namespace chrono = std::chrono;
  const chrono::sys_days base = chrono::year(2026) / chrono::June / 1;
  const chrono::year_month_day day{base + chrono::days(offset)};
  char text[32];
  std::snprintf(text, sizeof text, "%04d-%02u-%02u", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                static_cast<unsigned>(day.day()));
  return text;
}

std::string ValueMaker::test_day() {
  if (random_.chance(faults_.unreadable)) {
    return random_.pick(Texts{"2026-02-30", "May 2026"});
  }
  return day(-static_cast<int>(random_.chance(60) ? random_.below(40) : random_.below(800)));
}

}  // namespace plumbrule::property
