#pragma once
// The state of one check: scopes, and the rules as they grow. Internal to this folder.

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>

#include "language/check/check.hpp"

namespace plumbrule::check {

enum class NameKind : std::uint8_t { category, condition, measure, table, basis, grading, term };
[[nodiscard]] std::string_view describe(NameKind kind);

struct Named {
  NameKind kind{};
  std::uint32_t index = 0;
  Span span;
};

class Checker {
 public:
  Checker(const source::SourceMap& sources, diagnose::Diagnostics& diagnostics)
      : sources_(sources), diagnostics_(diagnostics) {}
  Rules run(const std::vector<syntax::RuleFile>& files);

 private:
  const source::SourceMap& sources_;
  diagnose::Diagnostics& diagnostics_;
  Rules rules_;
  const syntax::RuleFile* file_ = nullptr;              // the one whose formulas are being read
  std::map<std::string, Named, std::less<>> names_;     // categories, conditions, measures, tables
  std::map<std::string, Named, std::less<>> bases_;     // bases of percentages
  std::map<std::string, Named, std::less<>> gradings_;  // gradings
  std::map<std::string, std::uint32_t, std::less<>> clauses_;
  std::vector<const syntax::Grading*> grading_trees_;
  std::vector<syntax::Comparing> comparing_;
  std::optional<syntax::Comparing> staged_;
  Validity validity_;
  std::map<std::string, const syntax::Term*, std::less<>> terms_;

  using Scope = std::map<std::string, Named, std::less<>>;

  // names.cpp
  [[nodiscard]] bool of_library(source::FileId file) const;
  void declare(Scope& scope, const syntax::Text& name, NameKind kind, std::size_t index);
  const Named* find(const Scope& scope, const syntax::Text& name, std::string_view wanted);
  std::uint32_t find_kind(const Scope& scope, const syntax::Text& name, NameKind kind);
  std::uint32_t find_word(CategoryId category, const syntax::Text& word);
  void unknown_word(const syntax::Text& word, const std::vector<std::string>& known, const std::string& what);
  Provenance provenance(const syntax::Provenance& tree);
  bool unit(const syntax::WrittenUnit& written, Type& out);
  [[nodiscard]] bool lacks_percent(const Type& found, const Type& wanted) const;
  [[nodiscard]] std::string unit_text(UnitId unit) const;
  [[nodiscard]] std::string type_text(const Type& type) const;
  void error(diagnose::Code code, const Span& span, const std::string& message, const std::string& help = {}) {
    diagnostics_.error(code, span, message, help);
  }

  // vocabulary.cpp
  void declare_items(const syntax::RuleFile& file);
  void declare_category(const syntax::Category& tree);
  void resolve_items(const syntax::RuleFile& file);
  void resolve(const syntax::Condition& tree);
  void resolve(const syntax::Measure& tree);
  void measure_type(const syntax::Measure& tree, Measure& measure);
  void measure_readings(const syntax::Measure& tree, Measure& measure);
  void measure_formulas(const syntax::Measure& tree, Measure& measure);

  // audited.cpp
  void repeatability(const syntax::Quantity& tree, Measure& measure);
  void held(const syntax::Held& tree, Measure& measure);
  void outliers(const syntax::Quantity& tree);
  void resolve(const syntax::Refusal& tree, Measure& measure);

  // table.cpp
  void resolve(const syntax::Table& tree);
  void word_rows(const syntax::Table& tree, Table& table);
  void value_rows(const syntax::Table& tree, Table& table);
  void otherwise(const syntax::Table& tree, const syntax::TableRow& row, Table& table);
  bool edge_in_unit(const syntax::TableEdge& edge, const Table& table);
  bool edge_in_order(const syntax::TableRow& row, const Table& table);
  std::optional<FormulaId> lookup(const syntax::CallExpr& node, TableId table, const Measure& measure,
                                  const Span& span);
  bool key_fits(const Formula& key, const Table& table);

  // formula.cpp
  std::optional<FormulaId> formula(syntax::ExprId id, const Measure& measure);
  std::optional<FormulaId> number(const syntax::NumberExpr& node, const Span& span);
  std::optional<FormulaId> name(const syntax::NameExpr& node, const Measure& measure, const Span& span);
  std::optional<FormulaId> call(const syntax::CallExpr& node, const Measure& measure, const Span& span);
  void unknown_function(const syntax::Text& name);
  bool applicable(const Formula& call, const std::string& name);
  std::optional<FormulaId> function(const syntax::CallExpr& node, const Measure& measure, const Span& span);
  std::optional<FormulaId> binary(const syntax::BinaryExpr& node, const Measure& measure, const Span& span);
  std::optional<Type> sum_type(bool subtract, const Type& left, const Type& right, const Span& span);
  std::optional<Type> product_type(bool divide, const Type& left, const Type& right, const Span& span);
  bool comparable(const Type& left, const Type& right, const Span& span);
  FormulaId add(Formula formula);
  [[nodiscard]] const quantity::Unit& unit_of(const Type& type) const { return rules_.units.at(type.unit); }

  // requirement.cpp
  void resolve(const syntax::Specification& tree);
  void check_comparing();
  std::vector<Accepted> accepted(const std::vector<syntax::Accepted>& trees);
  void note_unused();
  bool in_own_formula_ = false;                // the formula of a measure is read, not a refusal
  bool measure_broken_ = false;                // a clause of the measure that is resolved could not be read
  std::set<std::string, std::less<>> broken_;  // names that items may have had which could not be read
  std::vector<std::string> used_;              // names of gradings and terms that were looked up
  void resolve(const syntax::Requirement& tree);
  Test resolve(const syntax::Test& tree);
  void requirement_head(const syntax::Requirement& tree, Requirement& out);
  std::vector<Alternative> alternatives(const syntax::Requirement& tree);
  Alternative alternative(const syntax::Assertion& tree, const syntax::Requirement& requirement);
  std::optional<Rounding> staged(const Measure& measure);
  void grading_assertions(const syntax::Assertion& tree, const syntax::Requirement& requirement, Alternative& out);
  std::vector<ConditionValue> condition_values(const std::vector<syntax::ConditionValue>& trees, const Measure& measure,
                                               const Span& where, ConditionId except);
  std::optional<ConditionValue> condition_value(const syntax::ConditionValue& tree);
  std::optional<Decimal> sieve(const syntax::Quantity& tree);
  std::optional<Decimal> condition_tolerance(const syntax::Quantity& tree, const Condition& condition);
  bool condition_quantity(const syntax::ConditionValue& tree, const Condition& condition, ConditionValue& out);
  std::optional<Decimal> in_unit(const syntax::Quantity& tree, UnitId unit, bool difference, const std::string& what);
  std::vector<syntax::ConditionValue> without_terms(const std::vector<syntax::ConditionValue>& trees);
  syntax::Limit without_terms(const syntax::Limit& tree);
  void grading_rules(const syntax::Assertion& tree, const syntax::Grading& grading, bool limited, bool any_tolerance,
                     Alternative& out);
  void sieves_once(const syntax::Grading& grading);
  bool sieve_tolerance(const syntax::GradingRow& row, const syntax::Assertion& tree, const Measure& measure,
                       const syntax::Requirement& requirement, Limit& out);
  std::optional<Decimal> ends_fraction(const syntax::Grading& grading);

  // exception.cpp
  void exceptions(const syntax::Requirement& tree, Requirement& out);
  void order_cases(const syntax::Requirement& tree, Requirement& out);

  // limit.cpp
  bool limit(const syntax::Limit& tree, const Measure& measure, const syntax::Statistic& statistic,
             const syntax::Requirement& requirement, Limit& out);
  bool tolerance_limit(const syntax::Quantity& tree, const Measure& measure, const syntax::Statistic& statistic,
                       const syntax::Requirement& requirement, Limit& out);
  bool below_zero(const syntax::Quantity& tolerance);
  bool word_limit(const syntax::Limit& tree, const Measure& measure, Limit& out);
  bool limit_type(const syntax::Quantity& tree, const Measure& measure, const syntax::Statistic& statistic, Type& type);
  bool band(const std::optional<syntax::Quantity>& low, const std::optional<syntax::Quantity>& high,
            const Measure& measure, const syntax::Statistic& statistic, const syntax::Requirement& requirement,
            Limit& out);
  [[nodiscard]] const syntax::Comparing* comparing(const Measure& measure,
                                                   const syntax::Requirement& requirement) const;
  std::optional<Rounding> rounding(const syntax::Quantity& limit, UnitId unit, const Measure& measure,
                                   const syntax::Requirement& requirement);
  std::optional<Decimal> given_place(const syntax::Quantity& place, UnitId unit, const Span& limit);

  // example.cpp
  void resolve(const syntax::Example& tree);
  void example_target(const syntax::Example& tree, Example& out);
  void given(const syntax::Given& tree, Example& out);
  void given_class(const syntax::Given& tree, CategoryId category, Example& out);
  void given_result(const syntax::Given& tree, MeasureId measure, Example& out);
  std::optional<GivenValue> given_value(const std::variant<syntax::Quantity, syntax::Text>& tree, const Type& type);
  std::optional<quantity::Amount> amount(const syntax::Quantity& tree, const Type& type);
  void expectation(const syntax::Example& tree, Example& out);
};

}  // namespace plumbrule::check
