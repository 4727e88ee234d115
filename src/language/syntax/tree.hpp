#pragma once
// The syntax tree of one rule file: what was written, with the place of every part. Nothing is resolved here; names
// are texts, units are texts. Trees are flat: lists of items, and formulas as nodes that refer to each other by index.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/diagnose/diagnostic.hpp"
#include "base/quantity/decimal.hpp"
#include "base/source/source.hpp"

namespace plumbrule::syntax {

using source::Span;

/// A name, a word or a text (quotes removed, adjacent texts joined by a blank), and where it stands.
struct Text {
  std::string value;
  Span span;
  [[nodiscard]] bool given() const { return span.known(); }
};

/// A written unit: "g/m2", "%" with its basis, "number", or nothing ("" with an unknown span).
struct WrittenUnit {
  std::string text;
  Text basis;  // given only behind "% of"
  Span span;
};

/// A number with its unit as written, or a sieve designation ("No. 4"), whose number is empty.
struct Quantity {
  quantity::Decimal number;
  std::string sieve;
  WrittenUnit unit;
  Span span;
};

// Formulas.
using ExprId = std::uint32_t;
enum class Operator : std::uint8_t { add, subtract, multiply, divide };
struct NumberExpr {
  Quantity quantity;
};
struct NameExpr {
  Text name;
};
struct CallExpr {
  Text name;
  std::vector<ExprId> arguments;
};
struct BinaryExpr {
  Operator op{};
  ExprId left = 0;
  ExprId right = 0;
};
struct Expr {
  std::variant<NumberExpr, NameExpr, CallExpr, BinaryExpr> node;
  Span span;
};
enum class Comparison : std::uint8_t { less, less_or_equal, greater, greater_or_equal, equal };

// Vocabulary items.
struct Provenance {
  Text source;
  Text status;       // verified, unverified, demonstration
  Text status_note;  // why
  Text note;
};
struct Vocabulary {
  Text name, title;
  Provenance provenance;
};
struct Category {
  Text name, title;
  std::vector<Text> words;
};
struct Condition {
  Text name, title;
  enum class Scale : std::uint8_t { unit, sieve, category } scale{};
  WrittenUnit unit;
  Text category;
  std::optional<Quantity> within;  // results within this of the value count as at the value
};
struct Basis {
  Text name, title;
};
struct Reading {
  Text name;
  std::optional<WrittenUnit> unit;
  Text category;  // given: `name among category`; neither unit nor category: the category of that name
};
struct Refusal {
  ExprId left = 0, right = 0;
  Comparison comparison{};
  Text because;
  Span span;
};
/// A test condition that is no condition of the result: what it should be, and how far it may be off.
struct Held {
  Text name;
  Quantity value, within;
  Span span;
};
struct Measure {
  Text name, title;
  std::optional<WrittenUnit> unit;
  Text category;
  bool text = false;  // `as text`: any text, such as the number of a certificate
  std::optional<Quantity> reported;
  std::vector<Text> conditions;
  Text method;
  std::vector<Reading> readings;
  std::optional<ExprId> computed;
  std::vector<Refusal> refusals;
  std::optional<Quantity> repeatability;
  std::vector<Held> held;
  Provenance provenance;
  bool broken = false;  // part of it could not be read: no follow-on errors
};
/// The edge of a row of a table by value: "at most 0.7 g".
struct TableEdge {
  enum class Kind : std::uint8_t { at_most, below, at_least, above } kind{};
  Quantity quantity;
  Span span;
};
struct TableRow {
  Text word;  // given if the row has no edge; `otherwise` is one
  std::optional<TableEdge> edge;
  quantity::Decimal value;
  Span span;
};
struct Table {
  Text name, title;
  Text category;                       // one of these two
  std::optional<WrittenUnit> by_unit;  // `by value in g`
  WrittenUnit unit;
  std::vector<TableRow> rows;
  Provenance provenance;
  bool broken = false;
};
struct GradingRow {
  Quantity sieve;
  std::optional<Quantity> low, high;           // neither: no limit
  std::optional<Quantity> stockpile, job_mix;  // tolerances against the job mix
  Span span;
};
struct Grading {
  Text name, title;
  std::vector<GradingRow> rows;
  std::optional<Quantity> ends;  // the rule on consecutive sieves: this part of the band counts as its end
  Text cite;
  Provenance provenance;
  bool broken = false;
};

// Specification items.
struct Comparing {
  Text measure;  // given: only for this measure
  enum class Method : std::uint8_t { absolute, rounding } method{};
  enum class Place : std::uint8_t { limit, reporting, given } place{};
  std::optional<Quantity> given;
  quantity::Ties ties{};
  Span span;
};
/// How long a test counts: so many months or days from its date to the date of the review.
struct Validity {
  std::uint32_t count = 0;
  bool days = false;
  Span span;
};
/// A remark that the author has looked at and accepts, with the reason.
struct Accepted {
  Text code, because;
};
struct Specification {
  Text name, title;
  Text edition;
  Text effective;
  std::vector<Text> uses;
  Text agency;
  std::vector<Comparing> comparing;
  std::optional<Comparing> staged;  // each specimen is rounded before the statistic
  std::optional<Validity> validity;
  std::vector<Accepted> accepted;
  std::optional<Quantity> outliers;  // the significance at which replicates are tested
  bool certificates = false;         // required of every material
  Provenance provenance;
  bool broken = false;
};
struct Section {
  Text number, title;
};
struct Test {
  Text category;
  bool negated = false;
  std::vector<Text> words;
  Span span;
};
enum class ConditionEnd : std::uint8_t { exactly, at_most, at_least };
struct ConditionValue {
  Text name;  // of a condition, or of a term that stands for conditions
  bool term = false;
  ConditionEnd end{};
  std::variant<Quantity, Text> value;
  std::optional<Quantity> within;
  Span span;
};
enum class StatisticKind : std::uint8_t { result, mean, each, least, greatest, range, standard_deviation };
/// What a statistic is taken over: the specimens of a result, the results, or the results of each lot.
enum class Over : std::uint8_t { specimens, results, results_of_lot };
struct Statistic {
  StatisticKind kind = StatisticKind::result;
  Over over{};
  std::uint32_t at_least = 1;
  Span span;
};
enum class LimitKind : std::uint8_t { at_most, at_least, between, words, grading, tolerance };
enum class ToleranceKind : std::uint8_t { none, stockpile, job_mix };
struct Limit {
  LimitKind kind{};
  std::vector<Quantity> quantities;  // one, or two for between
  std::vector<Text> words;           // words, the name of a grading, or the name of a term
  ToleranceKind tolerance{};         // of a grading
  Span span;
};
struct Assertion {
  Text measure;
  std::vector<ConditionValue> conditions;
  Statistic statistic;
  Limit limit;
  Span span;
};
/// A narrower case of a requirement: another limit, or none.
struct Exception {
  std::vector<Test> where;
  std::optional<Limit> limit;  // none: not required
  Text cite;
  Span span;
};
struct Requirement {
  Text number, title;
  std::vector<Test> where;
  bool optional = false;
  Text severity;
  std::optional<Comparing> comparing;
  std::optional<Validity> validity;
  std::vector<Accepted> accepted;
  std::vector<Exception> exceptions;
  std::vector<Assertion> alternatives;  // one, or two and more behind `either`
  Text cite, because, mend;
  std::vector<std::string> amended_by;  // filled in when amendments are applied
  Provenance provenance;
  bool broken = false;
};
struct GivenReading {
  Text name;
  std::variant<Quantity, Text> value;
};
enum class GivenBound : std::uint8_t { exact, at_least, at_most, above, below };
struct GivenAmount {
  GivenBound bound{};
  Quantity quantity;
};
struct Given {
  bool job_mix = false;  // what the job mix states, not a test
  Text lot;
  Text name;  // a measure or a category
  std::vector<GivenAmount> amounts;
  std::vector<GivenReading> readings;
  Text word;
  std::vector<ConditionValue> conditions;
  Span span;
};
enum class ExpectedVerdict : std::uint8_t { complies, fails, not_shown, does_not_apply, refused };
struct Expect {
  std::optional<ExpectedVerdict> verdict;
  std::optional<Quantity> value;
  Span span;
};
struct Example {
  Text title, target;
  std::vector<Given> given;
  std::vector<Expect> expect;
  Span span;
  bool broken = false;
};

/// A name for conditions or for a limit.
struct Term {
  Text name, title;
  std::vector<ConditionValue> conditions;
  std::optional<Limit> limit;
  Span span;
};
struct Change {
  enum class Kind : std::uint8_t { limit, whole, add, withdraw, retitle } kind{};
  Text number;
  Text title;                              // retitle
  std::optional<Limit> limit;              // limit
  std::optional<Requirement> requirement;  // whole, add
  Text because, cite;
  Span span;
};
struct Amendment {
  Text name, title;
  Text specification, edition, effective;
  std::vector<Change> changes;
  Provenance provenance;
  bool broken = false;
};

using Item = std::variant<Vocabulary, Category, Condition, Basis, Measure, Table, Grading, Specification, Section,
                          Requirement, Example, Term, Amendment>;

/// A clause that an amendment took out.
struct Withdrawn {
  std::string number, title, by, because;
};

struct RuleFile {
  source::FileId file = source::no_file;
  std::vector<std::string> amended_by;  // titles, filled in when amendments are applied
  std::vector<Withdrawn> withdrawn;
  std::vector<std::string> broken;  // words at the beginning of items that could not be read: names that may be meant
  std::vector<Item> items;
  std::vector<Expr> exprs;
};

/// The only language version there is.
inline constexpr std::string_view language_version = "1";

/// Reads one rule file. All errors are reported, and what could be read is returned, so that the checks can go on.
/// Never throws.
[[nodiscard]] RuleFile parse(const source::SourceMap& sources, source::FileId file, diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::syntax
