#pragma once
// Random written values, crowded where verdicts turn: at limits, at ties of their rounding, and a hair beside them.

#include "catalog.hpp"

namespace plumbrule::property {

/// How often things go wrong, in percent.
struct Faults {
  unsigned bounds = 10;     // only a bound was noted
  unsigned unreadable = 2;  // "n/a", a decimal comma, a unit of another kind, a basis left out
  unsigned missing = 3;     // of what is left out
};

class ValueMaker {
 public:
  ValueMaker(Random& random, const Catalog& catalog, const Faults& faults);

  /// Of a measure: a quantity, a word or a text, as a submittal writes it.
  /// `near`: of what the numbers are; the measure itself, or one of its sieves.
  [[nodiscard]] std::string of(const Measure& measure, const std::string& near);
  /// The readings of one specimen, by name; some may be missing.
  [[nodiscard]] std::vector<std::pair<std::string, std::string>> readings(const Measure& measure);
  /// `asked`: the value that a demand asks for, if one does.
  [[nodiscard]] std::string condition(const Condition& condition, const Written* asked);
  [[nodiscard]] std::string word(const Category& category);
  /// A day so many days from 2026-06-01.
  [[nodiscard]] static std::string day(int offset);
  [[nodiscard]] std::string test_day();

 private:
  Random& random_;
  const Catalog& catalog_;
  Faults faults_;
  quantity::UnitTable units_;

  [[nodiscard]] quantity::Decimal number_near(const Measure& measure, const std::string& near);
  [[nodiscard]] quantity::Decimal offset(const std::string& number, const std::string& reported);
  [[nodiscard]] std::optional<quantity::Decimal> converted(const quantity::Decimal& value, const std::string& from,
                                                           const std::string& to);
  [[nodiscard]] std::string written(const quantity::Decimal& value, const std::string& of_family,
                                    const std::string& unit, const std::string& basis);
  [[nodiscard]] std::string bounded(const std::string& number, const std::string& unit);
  [[nodiscard]] std::string reading(const Reading& reading, const quantity::Decimal& value);
  [[nodiscard]] quantity::Decimal small();
};

}  // namespace plumbrule::property
