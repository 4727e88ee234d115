#pragma once
// The compiled rules: flat arrays over slots. Names are gone; a limit and its rounding rule are one exact threshold
// (quantity/rounding.hpp); formulas are postfix code. A plan is immutable and may be shared between threads.

#include <cstdint>
#include <span>
#include <vector>

#include "language/check/rules.hpp"

namespace plumbrule::plan {

using check::none;
using quantity::Decimal;
using quantity::Threshold;
using quantity::UnitId;

/// A stretch of one of the arrays below.
struct Range {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  [[nodiscard]] std::uint32_t size() const { return end - begin; }
};

template <typename Element>
[[nodiscard]] std::span<const Element> part(const std::vector<Element>& all, Range range) {
  return std::span(all).subspan(range.begin, range.size());
}

enum class OpCode : std::uint8_t {
  number,      // push numbers[index]
  reading,     // push reading `index` of the specimen, in its declared unit
  result,      // push the result itself, in the measure's unit
  lookup,      // push the value of table `index` for the word of reading `reading`
  grade,       // the top, in the key unit of table `index`, becomes the value of its row there
  cumulative,  // push reading `index` summed from the largest row of the series down to this one
  total,       // push reading `index` summed over the series
  convert,     // the top from unit `from` to unit `to`
  add,
  subtract,
  multiply,
  divide,
  larger,
  smaller,
};

struct Op {
  OpCode code{};
  std::uint32_t index = 0;
  std::uint32_t reading = 0;
  UnitId from = 0, to = 0;
};

/// Postfix code; `unit` is the unit of the value that it leaves.
struct Program {
  Range ops;
  UnitId unit = 0;
};

/// A table: one value for each word, or for each edge, and then perhaps one for all other values.
struct Table {
  std::vector<Decimal> values;
  std::vector<Threshold> edges;  // in order; a row takes what meets its edge and none before
  bool rising = false;           // a value meets an edge from below
  UnitId unit = 0;               // of the values
  [[nodiscard]] bool total() const { return values.size() > edges.size(); }
};

struct Refusal {
  Program left, right;  // right is already in the unit of left
  syntax::Comparison comparison{};
  bool needs_readings = false;
};

struct Measure {
  check::Type type;
  bool computed = false;
  Program formula;
  Range readings;  // of reading_types
  Range refusals;
};

struct ConditionMatch {
  check::ConditionId condition = none;
  Decimal value;
  std::uint32_t word = none;
  syntax::ConditionEnd end{};
  Decimal within = 0;
};

/// One comparison: the statistic of a measure under conditions against thresholds or a set of words.
struct Check {
  check::MeasureId measure = none;
  Range conditions;
  syntax::StatisticKind statistic{};
  std::uint32_t specimens = 1;  // at least so many
  UnitId unit = 0;              // of the limit
  UnitId value_unit = 0;        // specimens are converted to it: the limit's, or the point scale of a difference
  bool has_low = false, has_high = false;
  Threshold low, high;
  Decimal printed_low, printed_high;  // the ends of the band as printed, for the rule on consecutive sieves
  std::uint64_t words = 0;            // not 0: a word measure
  syntax::Over over{};
  // A tolerance from the job mix becomes thresholds when the job mix is known.
  bool has_tolerance = false;
  Decimal tolerance;
  check::Rounding tolerance_rounding;
  bool is_staged = false;
  check::Rounding staged;  // each specimen first, in the measure's unit
};

struct Group {
  Range checks;  // all must hold
  bool has_ends = false;
  Decimal ends;  // the rule on consecutive sieves
};

struct ClassTest {
  check::CategoryId category = none;
  std::uint64_t words = 0;
};

/// A case of a requirement. No groups: nothing is required.
struct Case {
  Range tests;
  Range groups;  // one must hold
};

struct Requirement {
  Range tests;
  Range cases;  // the first that matches counts; the last has no tests
  check::Validity validity;
  bool optional = false;
  check::Severity severity{};
};

struct Plan {
  quantity::UnitTable units;
  std::vector<Decimal> numbers;
  std::vector<Op> ops;
  std::vector<Table> tables;
  std::vector<check::Type> reading_types;
  std::vector<Refusal> refusals;
  std::vector<Measure> measures;
  std::vector<ConditionMatch> conditions;
  std::vector<Check> checks;
  std::vector<Group> groups;
  std::vector<ClassTest> tests;
  std::vector<Case> cases;
  std::vector<Requirement> requirements;
  std::size_t categories = 0;
  std::size_t deepest_stack = 0;
};

/// Total: checked rules always compile.
[[nodiscard]] Plan compile(const check::Rules& rules);

}  // namespace plumbrule::plan
