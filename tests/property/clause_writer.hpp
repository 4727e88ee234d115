#pragma once
// Random requirements, each made from its own seed so that a failing set can be shrunk clause by clause.

#include "catalog.hpp"

namespace plumbrule::property {

/// How the specification compares, as far as a clause must know it to stay well typed.
struct House {
  bool by_reporting_place = false;  // limits must be in the unit of the measure, which must have a place
};

class ClauseWriter {
 public:
  ClauseWriter(Random& random, Catalog& catalog, const House& house)
      : random_(random), catalog_(catalog), house_(house) {}

  /// A whole requirement.
  [[nodiscard]] std::string requirement(const std::string& number);
  /// "at least 5 g": a limit for any measure that `requirement` used last, for amendments; empty if it has none.
  [[nodiscard]] std::string new_limit();
  [[nodiscard]] std::string rounding_rule(const Measure& measure);

 private:
  Random& random_;
  Catalog& catalog_;
  House house_;
  const Measure* last_ = nullptr;  // of a plain demand
  bool last_spread_ = false;
  Use use_;                  // of the demand that is written
  std::string forced_unit_;  // of the requirement's own rounding place

  const Measure& any_measure();
  std::string assertion(const Measure& measure, bool alone);
  std::string demand(const Measure& measure, bool alone);
  std::string grading_assertion(const Measure& measure);
  std::string under(const Measure& measure, const std::string& except);
  std::string statistic(const Measure& measure, bool& spread);
  std::string limit(const Measure& measure, bool spread);
  std::string words(const Measure& measure);
  std::string number(const Measure& measure, bool spread);
  std::string unit_for(const Measure& measure, bool spread);
  std::string tests(const std::string& category);
  std::string exceptions(const Measure& measure, bool other_limits);
};

}  // namespace plumbrule::property
