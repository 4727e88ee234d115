#pragma once
// The evaluator: plan and evidence in, verdicts and a trace out. Pure, thread-safe, without texts.

#include <cstdint>
#include <optional>
#include <vector>

#include "judge/evidence/evidence.hpp"
#include "language/plan/plan.hpp"

namespace plumbrule::evaluate {

using plan::Decimal;
using source::Span;

/// language.md, section 10.1.
enum class Verdict : std::uint8_t { complies, fails, not_shown, does_not_apply };

/// Why a verdict is what it is, where the value alone does not say it.
enum class Reason : std::uint8_t {
  none,
  class_not_stated,      // the submittal does not say the class that decides whether the clause applies
  class_excluded,        // the class excludes it
  exempted,              // an exception frees the class
  no_result,             // no result for the measure at all
  other_conditions,      // results, but under other conditions
  condition_not_stated,  // results that do not say a condition
  other_design,          // results, but not at the job mix
  lot_not_stated,        // the result does not say its lot
  too_old,               // results, but older than the clause allows
  date_not_stated,       // the date of a test, or of the review, is not stated, or the test is dated after it
  no_target,             // the job mix does not state the value that the tolerance is from
  design_not_stated,     // the job mix does not say the design variable of the result
  unusable_value,        // a value was reported as unreadable
  missing_reading,       // a specimen lacks a reading
  refused,               // a reading that cannot be right
  no_value,              // a result without a value
  too_few_specimens,
  replicates_not_stated,  // a reported mean that does not say of how many
  specimens_needed,       // the statistic needs single specimens
  only_a_bound,           // the reading is a bound that does not decide
  series_needed,          // the formula sums over a series, and the result stands alone
  end_to_end,             // the grading runs from one end of its band to the other on consecutive sieves
  beyond_table,           // no row of a table takes the value, or some value that it allows
  not_computable,         // division by zero, or a number out of range
};

enum class StepKind : std::uint8_t {
  class_tested,  // index: test; outcome; value word: class stated
  case_tested,   // as class_tested, for an exception
  case_chosen,   // index: case
  group,         // index: group (alternative) begins
  check,         // index: check begins
  result,        // index: result considered
  specimen,      // index: specimen of the result
  reading,       // index: reading of the measure; amount or word as submitted
  lookup,        // index: table; amount: the row's value; other: word
  graded,        // index: table; amount: what was looked up; other: row, none if that is not known
  summed,        // index: reading; amount: sum over rows of a series; other: number of rows
  computed,      // amount: value of the formula
  reported,      // amount or word: the value as reported
  refusal,       // index: refusal; outcome fails: refused
  rounded,       // amount: rounded before the statistic
  target,        // amount: what the job mix states
  end_to_end,    // index: check of the coarser of the two sieves; other: of the finer
  converted,     // amount: in the unit of the limit
  combined,      // index: statistic; other: number of specimens; amount
  compared,      // index: check; amount compared (unrounded); outcome
  result_verdict,
  check_verdict,
  group_verdict,
};

struct Step {
  StepKind kind{};
  Verdict outcome{};
  Reason reason{};
  std::uint32_t index = 0;
  std::uint32_t other = 0;
  quantity::Amount amount;
  Span span;
};

struct Finding {
  std::uint32_t requirement = 0;
  Verdict verdict = Verdict::not_shown;
  Reason reason = Reason::none;
  plan::Range steps;  // of Review::trace
};

struct Review {
  std::vector<Finding> findings;  // one for each requirement, in order
  std::vector<Step> trace;
};

/// The thresholds of a check, in the unit of the value that it compares. `target`: what the job mix states, for a
/// tolerance from it, in check.value_unit. Neither: a limit of words.
struct Thresholds {
  std::optional<plan::Threshold> low, high;
};
[[nodiscard]] Thresholds thresholds(const plan::Check& check, const std::optional<Decimal>& target);

[[nodiscard]] Review evaluate(const plan::Plan& plan, const evidence::Evidence& evidence);

/// One requirement only, for the examples of a rule file.
[[nodiscard]] Review evaluate_one(const plan::Plan& plan, const evidence::Evidence& evidence,
                                  std::uint32_t requirement);

/// Which results a check of a requirement is about. `open`: there is one more that may be, but it does not say enough.
struct Placed {
  std::vector<std::uint32_t> results;
  bool open = false;
};
[[nodiscard]] Placed placed(const plan::Plan& plan, const evidence::Evidence& evidence, std::uint32_t requirement,
                            std::uint32_t check);

/// The value of a measure for one result, as an example of a vocabulary asks for it: in the unit of its formula (or as
/// reported), with the trace. Verdict complies: there is a value.
struct MeasureValue {
  Verdict outcome = Verdict::not_shown;
  Reason reason = Reason::none;
  quantity::Amount amount;
  std::uint32_t word = check::none;
};
[[nodiscard]] MeasureValue measure_value(const plan::Plan& plan, const evidence::Evidence& evidence,
                                         std::uint32_t result);

/// The value of one specimen, and the value as reported, as the audit asks for them. `reason` refused: the measure
/// refuses the readings, and `refusal` is the number of the clause.
struct SpecimenValue {
  Reason reason = Reason::none;
  quantity::Amount amount;
  std::uint32_t refusal = check::none;
  [[nodiscard]] bool good() const { return reason == Reason::none; }
};
[[nodiscard]] SpecimenValue specimen_value(const plan::Plan& plan, const evidence::Evidence& evidence,
                                           const evidence::Result& result, std::uint32_t specimen);
[[nodiscard]] SpecimenValue reported_value(const plan::Plan& plan, const evidence::Evidence& evidence,
                                           const evidence::Result& result);

/// Whether a stated condition is one that the rule asks for; precondition: it is usable.
[[nodiscard]] bool meets(const plan::ConditionMatch& wanted, const evidence::Value& stated);
/// Whether a test still counts on the day of the review: none, too_old or date_not_stated.
[[nodiscard]] Reason age(const check::Validity& validity, std::int32_t tested, std::int32_t reviewed);

/// The outcome over all findings (language.md, section 10.5).
enum class Outcome : std::uint8_t { no_exception_taken, refer_to_engineer, revise_and_resubmit, incomplete };

/// The outcome, from the verdicts one after the other. Here so that it is inlined: a sweep asks for it with every
/// record.
class Together {
 public:
  void add(const plan::Requirement& requirement, Verdict verdict) {
    if (requirement.severity == check::Severity::advise) {
      return;
    }
    rejected_ |= verdict == Verdict::fails && requirement.severity == check::Severity::reject;
    referred_ |= verdict == Verdict::fails && requirement.severity == check::Severity::refer;
    open_ |= verdict == Verdict::not_shown && !requirement.optional;
    complies_ |= verdict == Verdict::complies;
  }
  /// `faulty`: the submittal has errors; it never complies as a whole, as what was misread might have failed.
  [[nodiscard]] Outcome outcome(bool faulty) const {
    return rejected_                       ? Outcome::revise_and_resubmit
           : referred_                     ? Outcome::refer_to_engineer
           : open_ || !complies_ || faulty ? Outcome::incomplete
                                           : Outcome::no_exception_taken;
  }

 private:
  bool rejected_ = false, referred_ = false, open_ = false, complies_ = false;
};
[[nodiscard]] Outcome outcome(const plan::Plan& plan, const std::vector<Finding>& findings, bool faulty);

}  // namespace plumbrule::evaluate
