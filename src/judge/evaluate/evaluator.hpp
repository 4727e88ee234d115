#pragma once
// The evaluator at work: one object for one review. Internal to this folder; its parts stand in placing.cpp (which
// results a check is about), comparing.cpp (from results to a verdict) and evaluate.cpp (checks, groups, requirements).

#include <vector>

#include "judge/evaluate/bounds.hpp"
#include "judge/evaluate/evaluate.hpp"
#include "judge/evaluate/measuring.hpp"

namespace plumbrule::evaluate {

struct Judged {
  Verdict verdict = Verdict::complies;
  Reason reason = Reason::none;
};

// language.md, section 10.2: of verdicts that must all hold.
inline void also(Judged& whole, const Judged& part) {
  const auto rank = [](Verdict verdict) {
    return verdict == Verdict::fails ? 2 : verdict == Verdict::not_shown ? 1 : 0;
  };
  if (rank(part.verdict) > rank(whole.verdict)) {
    whole = part;
  }
}

class Evaluator {
 public:
  Evaluator(const plan::Plan& plan, const Evidence& evidence, Review& review)
      : plan_(plan), evidence_(evidence), measuring_(plan, evidence, review.trace), review_(review) {}

  void requirement(std::uint32_t index);
  /// Which results a check of the requirement is about.
  [[nodiscard]] Placed placed(std::uint32_t requirement, std::uint32_t check);

 private:
  const plan::Plan& plan_;
  const Evidence& evidence_;
  Measuring measuring_;
  Review& review_;
  std::vector<Amount> values_;
  std::vector<Span> places_;            // of the values
  check::Validity validity_;            // of the requirement that is judged
  std::vector<std::uint32_t> matched_;  // results that the check is about
  // Of the group, check by check, with the sample that each is of: for the rule on consecutive sieves.
  std::vector<std::vector<std::pair<std::uint32_t, Amount>>> compared_;
  std::uint32_t sample_ = check::none;

  Judged applies(plan::Range tests, StepKind kind);
  Judged demands(plan::Range groups);
  Judged group(std::uint32_t index);
  Judged consecutive(const plan::Group& group);
  Judged check(std::uint32_t index);
  // Fills matched_ with the results that the check is about; of the others, the most telling reason why they are not.
  Reason place(const plan::Check& check);
  Judged matched(const plan::Check& check, std::uint32_t index);
  Judged over_results(const plan::Check& check, std::uint32_t index);
  Judged words_over_results(const plan::Check& check, std::uint32_t index);
  Judged over_results(const plan::Check& check, std::uint32_t index, std::uint32_t lot);
  Measured result_value(const plan::Check& check, const Result& result);
  Judged result(const plan::Check& check, std::uint32_t index, const Result& result);
  Judged words(const plan::Check& check, std::uint32_t index, const Result& result);
  Judged word(const plan::Check& check, std::uint32_t index, const Measured& value);
  Judged reported(const plan::Check& check, std::uint32_t index, const Result& result);
  Reason collect(const plan::Check& check, const Result& result);
  Amount convert(const plan::Check& check, const Measured& value);
  Ends statistic(const plan::Check& check);
  Judged compare(const plan::Check& check, std::uint32_t index, const Amount& value, const Span& span);
  Judged compare(const plan::Check& check, std::uint32_t index, const Ends& value, const Span& span);
  Judged tolerance(const plan::Check& check, const Ends& value);
  Judged each(const plan::Check& check, std::uint32_t index);
  [[nodiscard]] const evidence::Target* target(const plan::Check& check) const;
  [[nodiscard]] Reason conditions(const plan::Check& check, const std::vector<evidence::ConditionStated>& stated) const;
  [[nodiscard]] Reason mismatch(const plan::Check& check, const Result& result) const;
};

}  // namespace plumbrule::evaluate
