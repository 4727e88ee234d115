#pragma once
// What one requirement demands, worked out from its words each time it is asked.

#include <set>

#include "interval.hpp"
#include "rulebook.hpp"

namespace plumbrule::oracle {

struct Edge {
  Decimal value;
  Rounding rounding;
};

struct WantedCondition {
  std::string name;
  syntax::ConditionEnd end{};
  Decimal value;
  Decimal within = 0;
  std::string word;  // of a condition among a category
};

/// One comparison: a measure under conditions, a statistic, a limit.
struct Demand {
  const syntax::Measure* measure = nullptr;
  std::vector<WantedCondition> conditions;
  syntax::Statistic statistic;
  quantity::UnitId unit = 0;      // of the limit
  quantity::UnitId on_scale = 0;  // of the values: the same, but a temperature where the limit is a difference
  std::optional<Edge> low, high, tolerance;
  std::set<std::string> words;
  std::optional<Rounding> staged;  // of each specimen, in the measure's unit
};

/// All must hold.
struct Demands {
  std::vector<Demand> all;
  std::optional<Decimal> ends;  // the rule on consecutive sieves
};

class DemandReader {
 public:
  DemandReader(const Rulebook& book, Units& units) : book_(book), units_(units) {}
  [[nodiscard]] Demands read(const syntax::Assertion& assertion, const syntax::Limit& limit,
                             const syntax::Requirement& requirement);

 private:
  const Rulebook& book_;
  Units& units_;
  [[nodiscard]] Demand start(const syntax::Assertion& assertion);
  [[nodiscard]] std::vector<WantedCondition> conditions(const std::vector<syntax::ConditionValue>& written);
  [[nodiscard]] WantedCondition condition(const syntax::ConditionValue& written);
  [[nodiscard]] Rounding rounding(const syntax::Quantity& limit, const syntax::Measure& measure,
                                  const syntax::Requirement& requirement) const;
  void set_unit(Demand& demand, quantity::UnitId unit);
  void grading(const syntax::Assertion& assertion, const syntax::Limit& limit, const syntax::Requirement& requirement,
               Demands& out);
};

}  // namespace plumbrule::oracle
