#pragma once
// Checked rules: every name resolved to an index, every unit to an id, every rounding rule to a place. What stands
// here can be compiled and evaluated without any further type, unit or name error.

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/quantity/amount.hpp"
#include "base/quantity/rounding.hpp"
#include "language/syntax/tree.hpp"

namespace plumbrule::check {

using quantity::Decimal;
using quantity::UnitId;
using source::Span;

using CategoryId = std::uint32_t;
using ConditionId = std::uint32_t;
using BasisId = std::uint32_t;
using MeasureId = std::uint32_t;
using TableId = std::uint32_t;
inline constexpr std::uint32_t none = 0xFFFFFFFFU;

/// How sure a published figure is. `unstated`: the rule file does not say.
enum class Status : std::uint8_t { unstated, verified, unverified, demonstration };

struct Provenance {
  std::string source;
  Status status = Status::unstated;
  std::string status_note;
  std::string note;
};

/// At most 64 words, so that a set of words is one mask.
struct Category {
  std::string name, title;
  std::vector<std::string> words;
  Span span;
};

enum class Scale : std::uint8_t { unit, sieve, category };

struct Condition {
  std::string name, title;
  Scale scale{};
  UnitId unit = 0;             // of Scale::unit; Scale::sieve counts in mm
  CategoryId category = none;  // of Scale::category
  bool broken = false;         // its unit could not be read: already reported
  Decimal within = 0;          // a result so near to a value counts as at the value; in the condition's unit
  Span span;
};

struct Basis {
  std::string name, title;
  Span span;
};

/// What a value of a reading or measure is: a quantity in a unit (perhaps of a basis), or a word of a category.
struct Type {
  UnitId unit = 0;
  BasisId basis = none;
  CategoryId category = none;
  bool text = false;    // any text, such as the number of a certificate
  bool broken = false;  // its unit could not be read: already reported
  [[nodiscard]] bool is_word() const { return category != none || text; }
};

struct Reading {
  std::string name;
  Type type;
  Span span;
};

// Formulas: nodes by index into Rules::formulas; each with the unit of its value.
using FormulaId = std::uint32_t;
enum class FormulaKind : std::uint8_t {
  number,      // value
  reading,     // index of the reading
  result,      // the measure's own result, in the measure's unit
  lookup,      // index of the table by category, argument 0 = reading (a word)
  cumulative,  // reading summed from the largest value of the series' condition down to this row
  total,       // reading summed over the series
  graded,      // index of the table by value, argument 0 = any quantity
  greatest,
  least,
  fraction,  // a percentage as a plain ratio of unspecified basis
  add,
  subtract,
  multiply,
  divide,
};
struct Formula {
  FormulaKind kind{};
  std::uint32_t index = 0;
  Decimal value;
  std::vector<FormulaId> arguments;
  Type type;
  Span span;
};

struct Refusal {
  FormulaId left = 0, right = 0;
  syntax::Comparison comparison{};
  bool needs_readings = false;  // false: can be judged from a reported value alone
  std::string because;
  Span span;
};

/// A test condition that is no condition of the result, such as the temperature of the water bath.
struct Held {
  std::string name;
  UnitId unit = 0;
  Decimal value;
  Decimal within;  // in the unit of differences of `unit`
  Span span;
};

struct Measure {
  std::string name, title;
  Type type;
  std::optional<Decimal> reporting_place;  // in the measure's unit
  std::vector<ConditionId> conditions;
  std::string method;
  std::vector<Reading> readings;
  std::optional<FormulaId> computed;
  std::vector<Refusal> refusals;
  std::optional<Decimal> repeatability;  // the greatest range of the replicates of one result: in the measure's unit
  bool relative = false;                 // or, if this says so, as a part of their mean
  std::vector<Held> held;
  Provenance provenance;
  Span span;
};

/// The edge of a row of a table by value, in the table's unit.
struct Edge {
  syntax::TableEdge::Kind kind{};
  Decimal value;
  Span span;
};

/// By the words of a category, or by a value.
struct Table {
  std::string name, title;
  CategoryId category = none;
  bool by_value = false;
  Type key;                     // by value: of what is looked up
  std::vector<Edge> edges;      // by value: all rising or all falling
  Type type;                    // of what is found
  std::vector<Decimal> values;  // one for each word or edge; by value perhaps one more, for all other values
  std::vector<Span> spans;      // of the rows, as `values`
  Provenance provenance;
  Span span;
};

struct Section {
  std::string number, title;
};

/// True for a submittal whose class of the category is in the mask.
struct Test {
  CategoryId category = none;
  std::uint64_t words = 0;
  Span span;
};

/// A condition that the rule names: a quantity in the condition's unit (mm for sieves) or a word.
struct ConditionValue {
  ConditionId condition = none;
  Decimal value;
  std::uint32_t word = none;
  syntax::ConditionEnd end{};
  Decimal within = 0;  // in the condition's unit
  quantity::UnitId written_unit = 0;
  std::string written;  // as the rule says it: "1 h", "No. 4"
  Span span;
};

/// The rounding that a comparison uses. No place: absolute method.
struct Rounding {
  std::optional<Decimal> place;  // in the limit's unit
  quantity::Ties ties{};
};

/// One end of a limit, with the number as printed.
struct End {
  Decimal value;
  Rounding rounding;
  Span span;
};

struct Limit {
  std::optional<End> low, high;
  std::optional<End> tolerance;  // from the job mix, upwards and downwards
  UnitId unit = 0;               // both ends are in it
  std::uint64_t words = 0;       // for word measures
  std::string written;           // "at most 538 g/m2"
  Span span;
};

struct Assertion {
  MeasureId measure = none;
  std::vector<ConditionValue> conditions;
  syntax::Statistic statistic;
  Limit limit;
  std::optional<Rounding> staged;  // each specimen is rounded first, in the measure's unit
  Span span;
};

/// All of its assertions must hold: one for a plain demand, one a sieve for a grading.
struct Alternative {
  std::vector<Assertion> assertions;
  std::optional<Decimal> ends;  // the rule on consecutive sieves, as a fraction of the band
  std::string grading;          // title, if it stands for one
  Span span;
};

/// A remark that the author accepts, and why.
struct Accepted {
  std::string code, because;
  Span span;
};

enum class Severity : std::uint8_t { reject, refer, advise };

/// A case of a requirement: which classes it is for, and what it demands. No alternatives: nothing is required.
struct Case {
  std::vector<Test> where;
  std::vector<Alternative> alternatives;
  std::string cite;
  Span span;
};

struct Validity {
  std::uint32_t count = 0;  // 0: any age
  bool days = false;
};
/// The longer age lets more tests comply, and more of them fail: neither limit stands for the other.
[[nodiscard]] inline bool same_age(const Validity& left, const Validity& right) {
  return left.count == right.count && (left.days == right.days || left.count == 0);
}

struct Requirement {
  std::string number, title;
  std::uint32_t section = none;
  std::vector<Test> where;
  bool optional = false;
  Severity severity = Severity::reject;
  std::vector<Case> cases;  // narrower ones first, the general one last
  Validity validity;
  std::vector<std::string> amended_by;  // titles of the amendments that made it what it is
  std::string cite, because, mend;
  std::vector<Accepted> accepted;
  Provenance provenance;
  Span span;
};

struct GivenValue {
  quantity::Amount amount;
  std::uint32_t word = none;
  Span span;
};
/// One specimen of a result in an example: a value, or readings (index of the reading, value).
struct GivenResult {
  MeasureId measure = none;
  bool job_mix = false;
  std::string lot;
  std::vector<ConditionValue> conditions;
  std::vector<GivenValue> values;
  std::vector<std::pair<std::uint32_t, GivenValue>> readings;
  Span span;
};
struct GivenClass {
  CategoryId category = none;
  std::uint32_t word = none;
  Span span;
};
struct Example {
  std::string title;
  std::uint32_t requirement = none;  // one of these two
  MeasureId measure = none;
  std::vector<GivenResult> results;
  std::vector<GivenClass> classes;
  std::optional<syntax::ExpectedVerdict> verdict;
  std::optional<quantity::Amount> value;
  Span span;
};

struct Specification {
  std::string name, title, edition, agency, effective;
  std::vector<std::string> amendments;  // in force, in order
  std::vector<Accepted> accepted;
  std::optional<Decimal> outliers;  // significance, as a fraction
  bool certificates = false;        // required of every material
  Provenance provenance;
  Span span;
};

struct Rules {
  source::FileId file = source::no_file;
  std::optional<Specification> specification;  // none: a vocabulary on its own
  std::string vocabulary;                      // its name, then
  std::vector<source::FileId> files;           // all that were read, this one first
  quantity::UnitTable units;
  std::vector<Category> categories;
  std::vector<Condition> conditions;
  std::vector<Basis> bases;
  std::vector<Measure> measures;
  std::vector<Table> tables;
  std::vector<Formula> formulas;
  std::vector<Section> sections;
  std::vector<Requirement> requirements;
  std::vector<Example> examples;
  std::vector<syntax::Withdrawn> withdrawn;
  std::vector<std::pair<std::string, Span>> unused;  // names of this file that nothing uses
};

}  // namespace plumbrule::check
