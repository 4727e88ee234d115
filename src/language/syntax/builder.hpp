#pragma once
// From branches to the syntax tree: one function per kind of part. Internal to this folder.

#include <span>

#include "language/syntax/branch.hpp"
#include "language/syntax/tree.hpp"

namespace plumbrule::syntax {

class Builder {
 public:
  Builder(const source::SourceMap& sources, RuleFile& out, diagnose::Diagnostics& diagnostics)
      : sources_(sources), out_(out), diagnostics_(diagnostics) {}

  void item(const Branch& branch);
  void broken(const Branch& branch);

  // parts.cpp
  [[nodiscard]] std::string_view written(const Branch& branch) const { return sources_.text(branch.span); }
  /// A fixed phrase with its inner blanks made single.
  [[nodiscard]] std::string phrase(const Branch& branch) const;
  [[nodiscard]] Text name(const Branch& branch) const;
  [[nodiscard]] Text text(const Branch& branch) const;
  [[nodiscard]] std::vector<Text> words(const Branch& branch) const;
  [[nodiscard]] quantity::Decimal number(const Branch& branch);
  [[nodiscard]] std::uint32_t integer(const Branch& branch);
  /// Reads a unit at the front of the branches and removes what it read.
  [[nodiscard]] WrittenUnit unit(std::span<const Branch>& rest) const;
  [[nodiscard]] Quantity quantity(const Branch& branch);
  /// A quantity, a bare sieve designation, or a word.
  [[nodiscard]] std::variant<Quantity, Text> amount_or_word(const Branch& branch);
  [[nodiscard]] std::vector<ConditionValue> conditions(const Branch& branch);
  [[nodiscard]] ExprId expression(const Branch& branch);
  [[nodiscard]] Assertion assertion(const Branch& branch);
  [[nodiscard]] Comparing comparing(std::span<const Branch> parts);
  [[nodiscard]] ConditionValue condition_value(const Branch& branch);
  [[nodiscard]] Limit limit(const Branch& branch);
  [[nodiscard]] Validity validity(const Branch& clause);
  [[nodiscard]] Accepted accepted(const Branch& clause) const;

  /// Puts a text into a slot that may be filled once.
  void once(Text& slot, const Branch& clause, std::size_t part = 1);
  /// True if the slot is free; otherwise reports the second clause.
  void calendar(const Branch& mark);
  bool free_slot(bool taken, const Branch& clause);
  bool provenance(Provenance& out, const Branch& clause);

 private:
  const source::SourceMap& sources_;
  RuleFile& out_;
  diagnose::Diagnostics& diagnostics_;

  using Parts = std::span<const Branch>;
  ExprId add(Expr expr);
  ExprId fold(const Branch& branch);
  Statistic statistic(const Branch& branch);
  // vocabulary.cpp
  void vocabulary(const Branch& item);
  void category(const Branch& item);
  void condition(const Branch& item);
  void basis(const Branch& item);
  void measure(const Branch& item);
  void measure_clause(Measure& out, const Branch& clause);
  [[nodiscard]] Reading reading(const Branch& branch) const;
  Refusal refusal(const Branch& clause);
  void table(const Branch& item);
  TableRow table_row(const Branch& row);
  void grading(const Branch& item);
  GradingRow grading_row(const Branch& row);
  // specification.cpp
  void specification(const Branch& item);
  void specification_clause(Specification& out, const Branch& clause);
  void section(const Branch& item);
  void requirement(const Branch& item);
  void requirement_clause(Requirement& out, const Branch& clause);
  void term(const Branch& item);
  void amendment(const Branch& item);
  void amendment_clause(Amendment& out, const Branch& clause);
  Change change(const Branch& clause);
  Requirement requirement_tree(const Branch& item);
  bool shared_clause(Requirement& out, const Branch& clause);
  Exception exception(const Branch& clause);
  [[nodiscard]] Test test(const Branch& branch) const;
  void example(const Branch& item);
  Given given(const Branch& clause);
  Expect expect(const Branch& clause);
};

}  // namespace plumbrule::syntax
