#pragma once
// From a result to values: reading, formula, refusal. Internal to this folder.

#include <vector>

#include "judge/evaluate/evaluate.hpp"

namespace plumbrule::evaluate {

using evidence::Evidence;
using evidence::Result;
using evidence::Value;

/// A value, or the reason why there is none.
struct Measured {
  Reason reason = Reason::none;
  quantity::Amount amount;
  std::uint32_t word = check::none;
  Span span;
  [[nodiscard]] bool good() const { return reason == Reason::none; }
};

class Measuring {
 public:
  Measuring(const plan::Plan& plan, const Evidence& evidence, std::vector<Step>& trace)
      : plan_(plan), evidence_(evidence), trace_(trace) {
    stack_.reserve(plan.deepest_stack);
  }

  /// The value of one specimen of a result.
  [[nodiscard]] Measured specimen(const Result& result, std::uint32_t index);
  /// The value as reported.
  [[nodiscard]] Measured reported(const Result& result);

  Step& step(StepKind kind, std::uint32_t index = 0) {
    trace_.push_back({kind, Verdict::complies, Reason::none, index, 0, {}, {}});
    return trace_.back();
  }

 private:
  const plan::Plan& plan_;
  const Evidence& evidence_;
  std::vector<Step>& trace_;
  std::vector<quantity::Amount> stack_;

  struct Frame {
    const Result* result = nullptr;
    const evidence::Specimen* specimen = nullptr;  // none while a reported value is judged
    quantity::Amount value;                        // of the result, for refusals
  };

  [[nodiscard]] Measured given(const Value& value, StepKind kind);
  [[nodiscard]] Reason read(const Result& result, const evidence::Specimen& specimen);
  [[nodiscard]] Measured run(const plan::Program& program, const Frame& frame);
  [[nodiscard]] Reason execute(const plan::Op& op, const Frame& frame);
  [[nodiscard]] Reason push_reading(const Value& value, std::uint32_t reading, const Frame& frame);
  [[nodiscard]] Reason push_sum(const plan::Op& op, const Frame& frame);
  [[nodiscard]] Reason look_up(const plan::Op& op, const Frame& frame);
  [[nodiscard]] Reason grade(const plan::Op& op);
  [[nodiscard]] Measured judged(const Frame& frame, Measured measured);
  [[nodiscard]] const check::Type& reading_type(const Frame& frame, std::uint32_t reading) const;
};

}  // namespace plumbrule::evaluate
