#include "judge/evaluate/measuring.hpp"

#include <algorithm>

#include "judge/evaluate/bounds.hpp"

namespace plumbrule::evaluate {
namespace {

Reason why_unusable(const Value& value) {
  return value.kind == Value::Kind::missing ? Reason::missing_reading : Reason::unusable_value;
}

}  // namespace

namespace {

// The value of the condition along which a series runs.
Value series_value(const Result& row) {
  for (const evidence::ConditionStated& stated : row.conditions) {
    if (stated.condition == row.series_condition) {
      return stated.value;
    }
  }
  return {};
}

enum class Sameness : std::uint8_t { same, other, open };

// Whether a row differs from ours only in the condition along which the series runs; open if it does not say.
Sameness same_otherwise(const Result& own, const Result& row) {
  Sameness out = Sameness::same;
  for (const evidence::ConditionStated& one : own.conditions) {
    if (one.condition == own.series_condition) {
      continue;
    }
    const auto other = std::find_if(row.conditions.begin(), row.conditions.end(),
                                    [&](const auto& stated) { return stated.condition == one.condition; });
    if (other == row.conditions.end() || !other->value.usable() || !one.value.usable()) {
      out = Sameness::open;
    } else if (other->value.word != one.value.word || !(other->value.amount.value == one.value.amount.value)) {
      return Sameness::other;
    }
  }
  return out;
}

}  // namespace

const check::Type& Measuring::reading_type(const Frame& frame, std::uint32_t reading) const {
  return plan_.reading_types[plan_.measures[frame.result->measure].readings.begin + reading];
}

Measured Measuring::given(const Value& value, StepKind kind) {
  if (!value.usable()) {
    return {
        value.kind == Value::Kind::missing ? Reason::no_value : Reason::unusable_value, {}, check::none, value.span};
  }
  Step& noted = step(kind);
  noted.amount = value.amount;
  noted.other = value.word;
  noted.span = value.span;
  return {Reason::none, value.amount, value.word, value.span};
}

// Notes every reading, so that an explanation shows all of them even if one is missing.
Reason Measuring::read(const Result& result, const evidence::Specimen& specimen) {
  Reason reason = Reason::none;
  const std::uint32_t count = plan_.measures[result.measure].readings.size();
  for (std::uint32_t at = 0; at < count; ++at) {
    static const Value absent{};
    const Value& value = at < specimen.readings.size() ? specimen.readings[at] : absent;
    Step& noted = step(StepKind::reading, at);
    noted.amount = value.amount;
    noted.other = value.word;
    noted.span = value.span.known() ? value.span : specimen.span;
    if (!value.usable()) {
      noted.outcome = Verdict::not_shown;
      noted.reason = why_unusable(value);
      reason = reason == Reason::none ? noted.reason : reason;
    }
  }
  return reason;
}

Reason Measuring::push_reading(const Value& value, std::uint32_t reading, const Frame& frame) {
  if (value.kind != Value::Kind::quantity) {
    return why_unusable(value);
  }
  const quantity::UnitId unit = reading_type(frame, reading).unit;
  stack_.push_back(
      {quantity::convert(value.amount.value, evidence_.units.at(value.amount.unit), evidence_.units.at(unit)), unit,
       value.amount.bound});
  return Reason::none;
}

Reason Measuring::push_sum(const plan::Op& op, const Frame& frame) {
  const Result& own = *frame.result;
  if (own.series == check::none) {
    return Reason::series_needed;
  }
  const Value here = series_value(own);
  if (!here.usable()) {
    return Reason::unusable_value;
  }
  quantity::Amount sum{0, reading_type(frame, op.index).unit, quantity::Bound::exact};
  std::uint32_t rows = 0;
  for (const Result& row : evidence_.results) {
    if (row.series != own.series || row.measure != own.measure) {
      continue;
    }
    const Sameness sameness = same_otherwise(own, row);
    if (sameness == Sameness::other) {
      continue;
    }
    const Value there = series_value(row);
    if (sameness == Sameness::open || !there.usable()) {
      return Reason::unusable_value;  // it may belong to the sum or not
    }
    if (op.code == plan::OpCode::cumulative && there.amount.value < here.amount.value) {
      continue;
    }
    if (row.specimens.size() != 1 || op.index >= row.specimens.front().readings.size()) {
      return Reason::missing_reading;
    }
    if (const Reason reason = push_reading(row.specimens.front().readings[op.index], op.index, frame);
        reason != Reason::none) {
      return reason;
    }
    sum = apply(plan::OpCode::add, sum, stack_.back());
    stack_.pop_back();
    ++rows;
  }
  Step& noted = step(StepKind::summed, op.index);
  noted.amount = sum;
  noted.other = rows;
  stack_.push_back(sum);
  return Reason::none;
}

Reason Measuring::execute(const plan::Op& op, const Frame& frame) {
  switch (op.code) {
    case plan::OpCode::number:
      stack_.push_back({plan_.numbers[op.index], 0, quantity::Bound::exact});
      return Reason::none;
    case plan::OpCode::reading:
      return frame.specimen == nullptr ? Reason::missing_reading
                                       : push_reading(frame.specimen->readings[op.index], op.index, frame);
    case plan::OpCode::result:
      stack_.push_back(frame.value);
      return Reason::none;
    case plan::OpCode::lookup:
      return look_up(op, frame);
    case plan::OpCode::grade:
      return grade(op);
    case plan::OpCode::cumulative:
    case plan::OpCode::total:
      return push_sum(op, frame);
    case plan::OpCode::convert:
      stack_.back().value =
          quantity::convert(stack_.back().value, evidence_.units.at(op.from), evidence_.units.at(op.to));
      return Reason::none;
    default: {
      const quantity::Amount right = stack_.back();
      stack_.pop_back();
      stack_.back() = apply(op.code, stack_.back(), right);
      // At once: one divided by an infinite value would be a harmless zero again.
      return stack_.back().value.finite() ? Reason::none : Reason::not_computable;
    }
  }
}

Measured Measuring::run(const plan::Program& program, const Frame& frame) {
  stack_.clear();
  for (const plan::Op& op : plan::part(plan_.ops, program.ops)) {
    if (const Reason reason = execute(op, frame); reason != Reason::none) {
      return {reason, {}, check::none, {}};
    }
  }
  quantity::Amount value = stack_.back();
  value.unit = program.unit;
  if (!value.value.finite()) {
    return {Reason::not_computable, {}, check::none, {}};
  }
  return {Reason::none, value, check::none, {}};
}

// A value that the measure refuses is no value.
Measured Measuring::judged(const Frame& frame, Measured measured) {
  const plan::Measure& measure = plan_.measures[frame.result->measure];
  for (std::uint32_t at = measure.refusals.begin; at < measure.refusals.end; ++at) {
    const plan::Refusal& refusal = plan_.refusals[at];
    if (refusal.needs_readings && frame.specimen == nullptr) {
      continue;
    }
    const std::size_t before = trace_.size();
    const Measured left = run(refusal.left, frame);
    const Measured right = run(refusal.right, frame);
    trace_.resize(before);  // the readings are noted already; only a refusal itself is worth a step
    if (!left.good() || !right.good()) {
      return left.good() ? right : left;
    }
    const bool certain = certainly(left.amount, refusal.comparison, right.amount);
    const auto unknown = [](const Measured& one) { return one.amount.bound == quantity::Bound::undetermined; };
    if (!certain && (unknown(left) || unknown(right))) {
      return {Reason::only_a_bound, {}, check::none, measured.span};  // it may be one that is refused
    }
    if (certain) {
      Step& noted = step(StepKind::refusal, at - measure.refusals.begin);
      noted.outcome = Verdict::fails;
      noted.reason = Reason::refused;
      noted.amount = left.amount;
      noted.span = measured.span;
      return {Reason::refused, {}, check::none, measured.span};
    }
  }
  return measured;
}

Measured Measuring::specimen(const Result& result, std::uint32_t index) {
  const evidence::Specimen& specimen = result.specimens[index];
  step(StepKind::specimen, index).span = specimen.span;
  const plan::Measure& measure = plan_.measures[result.measure];
  Frame frame{&result, nullptr, {}};
  Measured value;
  if (!measure.computed || specimen.direct.kind != Value::Kind::missing) {
    value = given(specimen.direct, StepKind::reported);
  } else {
    value.reason = read(result, specimen);
    if (value.good()) {
      frame.specimen = &specimen;
      value = run(measure.formula, frame);
    }
    value.span = specimen.span;
    Step& noted = step(StepKind::computed);
    noted.amount = value.amount;
    noted.reason = value.reason;
    noted.outcome = value.good() ? Verdict::complies : Verdict::not_shown;
    noted.span = specimen.span;
  }
  if (!value.good() || measure.type.is_word()) {
    return value;
  }
  frame.value = {quantity::convert(value.amount.value, evidence_.units.at(value.amount.unit),
                                   evidence_.units.at(measure.type.unit)),
                 measure.type.unit, value.amount.bound};
  return judged(frame, value);
}

Measured Measuring::reported(const Result& result) {
  Measured value = given(result.reported, StepKind::reported);
  const plan::Measure& measure = plan_.measures[result.measure];
  if (!value.good() || measure.type.is_word()) {
    return value;
  }
  const quantity::Amount in_unit{quantity::convert(value.amount.value, evidence_.units.at(value.amount.unit),
                                                   evidence_.units.at(measure.type.unit)),
                                 measure.type.unit, value.amount.bound};
  return judged({&result, nullptr, in_unit}, value);
}

}  // namespace plumbrule::evaluate
