#pragma once
// Formulas walked as they were written, and the value of one specimen of a trial.

#include "record.hpp"

namespace plumbrule::oracle {

/// Why there is no value, or no verdict. The texts are those of the reports for programs (explain::reason_code).
enum class Why : std::uint8_t {
  none,
  class_not_stated,
  class_excluded,
  exempted,
  no_result,
  other_conditions,
  condition_not_stated,
  other_design,
  lot_not_stated,
  too_old,
  date_not_stated,
  no_target,
  design_not_stated,
  unusable_value,
  missing_reading,
  refused,
  no_value,
  too_few_specimens,
  replicates_not_stated,
  specimens_needed,
  only_a_bound,
  series_needed,
  end_to_end,
  beyond_table,
  not_computable,
};

/// A value with its unit (or a word), or the reason why there is none.
struct Value {
  Why why = Why::none;
  Interval amount;
  quantity::UnitId unit = 0;
  std::string word;
  [[nodiscard]] bool good() const { return why == Why::none; }
};

class Valuer {
 public:
  Valuer(const Rulebook& book, Units& units, const Record& record, Lost& lost)
      : book_(book), units_(units), record_(record), lost_(lost) {}

  [[nodiscard]] Value sample(const Trial& trial, const Sample& sample);
  [[nodiscard]] Value reported(const Trial& trial);

 private:
  const Rulebook& book_;
  Units& units_;
  const Record& record_;
  Lost& lost_;

  /// What a formula may speak of.
  struct Scope {
    const syntax::Measure& measure;
    const syntax::RuleFile& file;
    const Trial& trial;
    const Sample* sample = nullptr;  // none: only the result itself is known
    const Value* result = nullptr;
  };
  [[nodiscard]] Value walk(syntax::ExprId id, const Scope& scope);
  [[nodiscard]] Value name(const std::string& name, const Scope& scope);
  [[nodiscard]] Value call(const syntax::CallExpr& node, const Scope& scope);
  [[nodiscard]] Value binary(const syntax::BinaryExpr& node, const Scope& scope);
  [[nodiscard]] Value lookup(const syntax::Table& table, const syntax::CallExpr& node, const Scope& scope);
  [[nodiscard]] Value graded(const syntax::Table& table, const syntax::CallExpr& node, const Scope& scope);
  [[nodiscard]] Value summed(const std::string& reading, bool cumulative, const Scope& scope);
  [[nodiscard]] Value reading(const Sample& sample, const syntax::Reading& tree);
  [[nodiscard]] Value in_unit(Value value, quantity::UnitId unit);
  [[nodiscard]] bool needs_readings(syntax::ExprId id, const Scope& scope) const;
  [[nodiscard]] bool certainly(const Value& left, syntax::Comparison comparison, const Value& right);
  [[nodiscard]] Value unless_refused(const Value& value, const Scope& scope);
};

/// What a statement in the submittal is worth by itself.
[[nodiscard]] Value stated_value(const Stated& stated, Why if_missing);

}  // namespace plumbrule::oracle
