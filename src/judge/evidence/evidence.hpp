#pragma once
// A submittal bound to the slots of a plan: what the evaluator reads. Names are gone, but every value keeps its place.

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "base/quantity/amount.hpp"
#include "judge/evidence/document.hpp"
#include "language/plan/plan.hpp"

namespace plumbrule::evidence {

using check::none;
using source::Span;

/// The one kind of value there is: nothing, something that cannot be used (already reported), a quantity, or a word.
struct Value {
  enum class Kind : std::uint8_t { missing, unusable, quantity, word };
  Kind kind = Kind::missing;
  quantity::Amount amount;
  std::uint32_t word = none;
  Span span;
  [[nodiscard]] bool usable() const { return kind == Kind::quantity || kind == Kind::word; }
};

/// A test condition that is no condition of the result; `held` is its index among those that the measure declares.
struct HeldStated {
  std::uint32_t held = none;
  Value value;
};

/// Two times of the day between which a condition lasted: seconds since midnight.
struct Clock {
  check::ConditionId condition = none;
  std::int32_t started = 0, ended = 0;
  Span span;
};

/// What was noted beside the readings. No verdict reads it; the audit does (language.md, section 16).
struct Circumstances {
  std::vector<HeldStated> held;
  std::vector<Clock> clocks;
};

/// One specimen: the readings of the measure in order, or one value for a measure that is read directly.
struct Specimen {
  std::vector<Value> readings;
  Value direct;
  std::string label;  // empty: none
  Span label_span;
  Circumstances circumstances;
  Span span;
};

struct ConditionStated {
  check::ConditionId condition = none;
  Value value;  // a quantity is in the condition's unit; a sieve in mm
};

/// No date is stated.
inline constexpr std::int32_t no_date = INT32_MIN;

/// A date, and where it is written.
struct Day {
  std::int32_t day = no_date;
  Span span;
};

/// A text, and where it is written.
struct Note {
  std::string text;
  Span span;
  [[nodiscard]] bool given() const { return span.known(); }
};

/// One of the materials that the submittal lists. `names`: all by which a trial may name it. `entries`: what is said of
/// it, each with its key.
struct Material {
  std::string material;
  std::vector<std::string> names;
  std::vector<std::pair<std::string, Note>> entries;
  bool certified = false;
  Span span;
};

/// A material that a trial says it was made of.
struct MaterialUsed {
  std::string material;
  Note name;
};

/// What the audit and a follow-up read of a result, and no verdict does.
struct Record {
  Day made, tested;
  Value also;  // the reported value a second time, in another unit
  std::vector<MaterialUsed> materials;
  Note laboratory, accreditation, lot, note;
  Span replicates;
  Circumstances circumstances;
};

/// Where a result stands relative to the job mix. `unknown`: it names a design variable that the job mix does not.
enum class Design : std::uint8_t { job_mix, other, unknown };

/// A design value that a result states with `at`. No measure, or an unusable value: it cannot be placed.
struct DesignValue {
  check::MeasureId measure = none;
  Value value;
};

/// One result of a test: specimens with readings, or a reported value, or both.
struct Result {
  check::MeasureId measure = none;
  std::vector<ConditionStated> conditions;
  std::vector<Specimen> specimens;
  Value reported;
  std::uint32_t replicates = 0;  // specimens behind the reported value; 0: not stated
  std::uint32_t series = none;   // results of one series have the same number
  check::ConditionId series_condition = none;
  Design design = Design::job_mix;
  std::vector<DesignValue> at;    // empty: at the values that the job mix declares
  bool misnamed = false;          // a condition was misnamed: no further error about it
  bool declared = false;          // a value of the job mix, not a test
  std::int32_t tested = no_date;  // days since 1970-01-01
  std::uint32_t lot = 0;          // results of one lot have the same number; 0: no lot stated
  Record record;
  Span span;
};

/// What the job mix says of a measure, perhaps under conditions (percent passing, sieve by sieve).
struct Target {
  check::MeasureId measure = none;
  std::vector<ConditionStated> conditions;
  Value value;
};

/// What identifies the submittal, for the report. Texts as written; empty if not given.
struct Identity {
  std::string project, mix, laboratory, prepared_by, date, note;
  Span project_place, mix_place, laboratory_place, prepared_by_place, note_place;
};

struct Evidence {
  quantity::UnitTable units;   // the plan's, and those that the submittal adds
  std::vector<Value> classes;  // one for each category
  std::vector<Result> results;
  std::vector<Target> targets;
  std::int32_t date = no_date;  // of the review: that of the submittal unless another is given
  Day reviewed;                 // as the submittal says; `date` may be another
  Identity identity;
  std::vector<Material> materials;
  std::uint32_t series = 0;
};

/// The names of other rule sets that the same submittal is reviewed against: they are not unknown.
struct KnownNames {
  std::vector<std::string> measures, conditions, categories, held;
};

/// Binds a submittal to checked rules. Unknown keys and words, values that cannot be read, units of another dimension
/// and missing bases are reported with their place; a value that cannot be used stays, marked unusable, so that no
/// clause that needs it can comply. Nothing only if the submittal as a whole is not one.
[[nodiscard]] std::optional<Evidence> bind(const Node& document, const check::Rules& rules, const KnownNames& others,
                                           diagnose::Diagnostics& diagnostics);

/// The evidence that an example of a rule file gives.
[[nodiscard]] Evidence from_example(const check::Example& example, const check::Rules& rules);

}  // namespace plumbrule::evidence
