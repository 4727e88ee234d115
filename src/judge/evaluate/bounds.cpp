#include "judge/evaluate/bounds.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

namespace plumbrule::evaluate {
namespace {

bool lower(Bound bound) { return bound == Bound::at_least || bound == Bound::above; }
bool upper(Bound bound) { return bound == Bound::at_most || bound == Bound::below; }
bool strict(Bound bound) { return bound == Bound::above || bound == Bound::below; }

// Of a sum: what both say together.
Bound joined(Bound left, Bound right) {
  if (left == Bound::exact) {
    return right;
  }
  if (right == Bound::exact) {
    return left;
  }
  if (lower(left) && lower(right)) {
    return strict(left) || strict(right) ? Bound::above : Bound::at_least;
  }
  if (upper(left) && upper(right)) {
    return strict(left) || strict(right) ? Bound::below : Bound::at_most;
  }
  return Bound::undetermined;
}

// A bound scaled by an exact number.
Bound scaled(Bound bound, const Decimal& by) {
  if (bound == Bound::exact || by > Decimal{0}) {
    return bound;
  }
  return by.zero() ? Bound::undetermined : mirrored(bound);
}

Ends greatest(std::span<const Amount> values);

// Of two: what one bound can say. Known from both ends, it is not one bound.
Amount larger(const Amount& left, const Amount& right) {
  const std::array both{left, right};
  const Ends ends = greatest(both);
  Amount out = ends.low;
  out.unit = left.unit;
  const bool one = ends.low.value == ends.high.value && ends.low.bound == ends.high.bound;
  out.bound = one ? out.bound : Bound::undetermined;
  return out;
}

Amount negated(const Amount& amount) { return {-amount.value, amount.unit, mirrored(amount.bound)}; }

Amount product(bool divide, const Amount& left, const Amount& right) {
  const Decimal value = divide ? left.value / right.value : left.value * right.value;
  Bound bound = Bound::undetermined;
  if (right.bound == Bound::exact) {
    bound = scaled(left.bound, right.value);
  } else if (left.bound == Bound::exact && !divide) {
    bound = scaled(right.bound, left.value);
  }
  // Over "at least 0" nothing is known, which is not the same as a division by zero.
  const bool known = right.bound == Bound::exact || value.finite();
  return {known ? value : Decimal{0}, left.unit, bound};
}

Amount fold(plan::OpCode code, std::span<const Amount> values) {
  Amount out = values.front();
  for (const Amount& value : values.subspan(1)) {
    out = apply(code, out, value);
  }
  return out;
}

Amount mean(std::span<const Amount> values) {
  Amount out = fold(plan::OpCode::add, values);
  out.value = out.value / Decimal{static_cast<std::int64_t>(values.size())};
  return out;
}

Amount standard_deviation(std::span<const Amount> values) {
  const Decimal middle = mean(values).value;
  Amount out = values.front();
  Decimal sum = 0;
  for (const Amount& value : values) {
    sum = sum + (value.value - middle) * (value.value - middle);
    out.bound = value.bound == Bound::exact && out.bound == Bound::exact ? Bound::exact : Bound::undetermined;
  }
  // Of a sample: n - 1. One specimen gives 0 / 0, which is not finite and so not shown.
  out.value = (sum / Decimal{static_cast<std::int64_t>(values.size()) - 1}).square_root();
  return out;
}

}  // namespace

Bound mirrored(Bound bound) {
  switch (bound) {
    case Bound::at_least:
      return Bound::at_most;
    case Bound::above:
      return Bound::below;
    case Bound::at_most:
      return Bound::at_least;
    case Bound::below:
      return Bound::above;
    default:
      return bound;
  }
}

Amount apply(plan::OpCode code, const Amount& left, const Amount& right) {
  switch (code) {
    case plan::OpCode::add:
      return {left.value + right.value, left.unit, joined(left.bound, right.bound)};
    case plan::OpCode::subtract:
      return {left.value - right.value, left.unit, joined(left.bound, mirrored(right.bound))};
    case plan::OpCode::multiply:
      return product(false, left, right);
    case plan::OpCode::divide:
      return product(true, left, right);
    case plan::OpCode::larger:
      return larger(left, right);
    default:
      return negated(larger(negated(left), negated(right)));
  }
}

namespace {

bool has_low(Bound bound) { return bound == Bound::exact || lower(bound); }
bool has_high(Bound bound) { return bound == Bound::exact || upper(bound); }

// Of the greatest of several: from below the greatest of the lower ends, from above the greatest of the upper ends, if
// every value has one.
Ends greatest(std::span<const Amount> values) {
  std::optional<Amount> low;
  std::optional<Amount> high;
  bool bounded_above = true;
  for (const Amount& value : values) {
    if (has_low(value.bound)) {
      const bool strict_end = value.bound == Bound::above;
      const bool raises = !low || value.value > low->value || (value.value == low->value && strict_end);
      low = raises ? Amount{value.value, value.unit, strict_end ? Bound::above : Bound::at_least} : *low;
    }
    if (has_high(value.bound)) {
      const bool strict_end = value.bound == Bound::below;
      const bool raises = !high || value.value > high->value || (value.value == high->value && !strict_end);
      high = raises ? Amount{value.value, value.unit, strict_end ? Bound::below : Bound::at_most} : *high;
    }
    bounded_above = bounded_above && has_high(value.bound);
  }
  high = bounded_above ? high : std::nullopt;
  if (low && high && low->value == high->value && !strict(low->bound) && !strict(high->bound)) {
    low->bound = Bound::exact;
    return {*low, *low};
  }
  if (!low && !high) {
    return {{values.front().value, values.front().unit, Bound::undetermined},
            {values.front().value, values.front().unit, Bound::undetermined}};
  }
  return {low ? *low : *high, high ? *high : *low};
}

Ends least(std::span<const Amount> values) {
  std::vector<Amount> turned;
  turned.reserve(values.size());
  for (const Amount& value : values) {
    turned.push_back(negated(value));
  }
  const Ends ends = greatest(turned);
  return {negated(ends.high), negated(ends.low)};
}

Ends both(const Amount& amount) { return {amount, amount}; }

Amount range(std::span<const Amount> values) {
  Amount out = apply(plan::OpCode::subtract, fold(plan::OpCode::larger, values), fold(plan::OpCode::smaller, values));
  const bool exact = std::all_of(values.begin(), values.end(), [](const Amount& a) { return a.bound == Bound::exact; });
  out.bound = exact ? Bound::exact : Bound::undetermined;
  return out;
}

}  // namespace

Ends combine(syntax::StatisticKind kind, std::span<const Amount> values) {
  switch (kind) {
    case syntax::StatisticKind::greatest:
      return greatest(values);
    case syntax::StatisticKind::least:
      return least(values);
    case syntax::StatisticKind::range:
      return both(range(values));
    case syntax::StatisticKind::standard_deviation:
      return both(standard_deviation(values));
    default:
      return both(values.size() == 1 ? values.front() : mean(values));
  }
}

Verdict decided(const Ends& value, const quantity::Threshold& threshold,
                Verdict (*compare)(const Amount&, const quantity::Threshold&)) {
  const Verdict low = compare(value.low, threshold);
  return low == Verdict::not_shown ? compare(value.high, threshold) : low;
}

Verdict compare_high(const Amount& value, const quantity::Threshold& threshold) {
  const bool meets = value.value < threshold.value || (value.value == threshold.value && threshold.inclusive);
  const bool meets_strictly = value.value <= threshold.value;   // for "below v": the true value is under v
  const bool misses_strictly = value.value >= threshold.value;  // for "above v"
  switch (value.bound) {
    case Bound::exact:
      return meets ? Verdict::complies : Verdict::fails;
    case Bound::at_most:
      return meets ? Verdict::complies : Verdict::not_shown;
    case Bound::below:
      return meets_strictly ? Verdict::complies : Verdict::not_shown;
    case Bound::at_least:
      return meets ? Verdict::not_shown : Verdict::fails;
    case Bound::above:
      return misses_strictly ? Verdict::fails : Verdict::not_shown;
    default:
      return Verdict::not_shown;
  }
}

Verdict compare_low(const Amount& value, const quantity::Threshold& threshold) {
  return compare_high(negated(value), {-threshold.value, threshold.inclusive});
}

namespace {

// Whether the left is above the right for all true values; `or_equal`: at least as large.
bool certainly_above(const Amount& left, const Amount& right, bool or_equal) {
  const bool low = left.bound == Bound::exact || lower(left.bound);
  const bool high = right.bound == Bound::exact || upper(right.bound);
  if (!low || !high) {
    return false;
  }
  const bool apart = strict(left.bound) || strict(right.bound);
  return left.value > right.value || (left.value == right.value && (or_equal || apart));
}

}  // namespace

bool certainly(const Amount& left, syntax::Comparison comparison, const Amount& right) {
  switch (comparison) {
    case syntax::Comparison::less:
      return certainly_above(right, left, false);
    case syntax::Comparison::less_or_equal:
      return certainly_above(right, left, true);
    case syntax::Comparison::greater:
      return certainly_above(left, right, false);
    case syntax::Comparison::greater_or_equal:
      return certainly_above(left, right, true);
    default:
      return left.bound == Bound::exact && right.bound == Bound::exact && left.value == right.value;
  }
}

}  // namespace plumbrule::evaluate
