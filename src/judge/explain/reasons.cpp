#include <algorithm>
#include <array>

#include "judge/explain/wording.hpp"

namespace plumbrule::explain {
namespace {

struct ReasonWords {
  std::string_view code;
  std::string_view text;
};

// In the order of evaluate::Reason.
constexpr std::array<ReasonWords, 24> reasons{{
    {"none", ""},
    {"class_not_stated", "the submittal does not state the class that decides whether this clause applies"},
    {"class_excluded", "the class of the mix excludes this clause"},
    {"exempted", "an exception of the clause frees this class"},
    {"no_result", "there is no result for this test"},
    {"other_conditions", "there are results for this test, but under other conditions"},
    {"condition_not_stated", "there is a result for this test that does not say its conditions"},
    {"other_design", "there are results for this test, but not at the job mix"},
    {"lot_not_stated", "there is a result for this test that does not say its lot"},
    {"too_old", "there are results for this test, but older than the clause allows"},
    {"date_not_stated",
     "the date of the test, or of the submittal, is not stated, or the test is dated after the review"},
    {"no_target", "the job mix does not state the value that the tolerance is from"},
    {"design_not_stated", "the result is at a design value that the job mix does not state"},
    {"unusable_value", "a value cannot be used; see the errors of the submittal"},
    {"missing_reading", "a specimen lacks a reading"},
    {"refused", "a reading is refused: it cannot be right"},
    {"no_value", "the result has no value"},
    {"too_few_specimens", "there are fewer specimens or results than the clause asks for"},
    {"replicates_not_stated", "the reported value does not say of how many specimens it is the mean"},
    {"specimens_needed", "the clause is about single specimens, and only one reported value is given"},
    {"only_a_bound", "the reading is only a bound, and it does not decide"},
    {"series_needed", "the value follows from a whole series, and this result stands alone"},
    {"end_to_end", "the grading runs from one end of its band to the other on consecutive sieves"},
    {"beyond_table", "no row of a table takes the value, or some value that its bound allows"},
}};
constexpr ReasonWords not_computable{"not_computable",
                                     "the formula has no value here (a division by zero, or a number out of range)"};

const ReasonWords& of(Reason reason) {
  const auto index = static_cast<std::size_t>(reason);
  return index < reasons.size() ? reasons.at(index) : not_computable;
}

}  // namespace

std::string reason_text(Reason reason) { return std::string(of(reason).text); }
std::string_view reason_code(Reason reason) { return of(reason).code; }

std::string submit_text(const Context& context, const check::Assertion& assertion, Reason reason) {
  const check::Measure& measure = context.rules.measures[assertion.measure];
  const std::string what = label(context.rules, assertion);
  const std::string method = measure.method.empty() ? "" : " (" + measure.method + ")";
  const bool spread = assertion.statistic.kind == syntax::StatisticKind::range ||
                      assertion.statistic.kind == syntax::StatisticKind::standard_deviation;
  const std::uint32_t least = std::max(assertion.statistic.at_least, spread ? 2U : 1U);
  const char* const noun = assertion.statistic.over == syntax::Over::specimens ? " specimens" : " results";
  const std::string count = least > 1 ? ", at least " + std::to_string(least) + noun : "";
  switch (reason) {
    case Reason::class_not_stated:
      return "state the class under `classes`";
    case Reason::only_a_bound:
      return "repeat the test and read the value itself: " + what + method;
    case Reason::replicates_not_stated:
      return "state `replicates`, or submit the specimens: " + what + count;
    case Reason::specimens_needed:
      return "submit the value of each specimen: " + what + count;
    case Reason::too_old:
      return "repeat the test: " + what + method + count;
    case Reason::lot_not_stated:
      return "state `lot` of the result: " + what;
    case Reason::date_not_stated:
      return "state `date` of the submittal and `tested` of the result, the test before the review: " + what;
    case Reason::no_target:
      return "state `" + measure.name + "` under `job_mix`";
    case Reason::design_not_stated:
      return "state the design value of the job mix under `job_mix`";
    case Reason::refused:
    case Reason::unusable_value:
    case Reason::missing_reading:
    case Reason::beyond_table:
    case Reason::not_computable:
      return "check the readings and correct or repeat the test: " + what + method;
    case Reason::condition_not_stated:
      return "state the conditions of the result under `under`: " + what;
    default:
      return "submit a result: " + what + method + count;
  }
}

std::string_view verdict_text(Verdict verdict) {
  constexpr std::array<std::string_view, 4> texts{"complies", "fails", "not shown", "does not apply"};
  return texts.at(static_cast<std::size_t>(verdict));
}

std::string_view outcome_text(evaluate::Outcome outcome) {
  constexpr std::array<std::string_view, 4> texts{"No exception taken", "Refer to the engineer", "Revise and resubmit",
                                                  "Incomplete"};
  return texts.at(static_cast<std::size_t>(outcome));
}

std::string_view status_text(check::Status status) {
  constexpr std::array<std::string_view, 4> texts{"unstated", "verified", "unverified", "demonstration"};
  return texts.at(static_cast<std::size_t>(status));
}

std::string_view severity_text(check::Severity severity) {
  constexpr std::array<std::string_view, 3> texts{"reject", "refer", "advise"};
  return texts.at(static_cast<std::size_t>(severity));
}

}  // namespace plumbrule::explain
