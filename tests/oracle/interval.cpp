#include "interval.hpp"

#include <array>

namespace plumbrule::oracle {
namespace {

constexpr End below_all{Decimal{}, true, false};

End negated(const End& end) { return {-end.value, end.infinite, end.closed}; }
Interval negated(const Interval& values) { return {negated(values.high), negated(values.low)}; }

End sum(const End& left, const End& right) {
  if (left.infinite || right.infinite) {
    return below_all;  // which infinity, the place in the interval says
  }
  return {left.value + right.value, false, left.closed && right.closed};
}

int sign(const Decimal& value) { return value.zero() ? 0 : value < Decimal{0} ? -1 : 1; }

// An end of an operand with the infinity that it stands for.
struct Corner {
  End end;
  int infinity = 0;  // -1, 0, 1
};
std::array<Corner, 2> corners(const Interval& values) {
  return {Corner{values.low, values.low.infinite ? -1 : 0}, Corner{values.high, values.high.infinite ? 1 : 0}};
}

int direction(const Corner& corner) { return corner.infinity != 0 ? corner.infinity : sign(corner.end.value); }
bool fixed_zero(const Corner& corner) {
  return corner.infinity == 0 && corner.end.closed && corner.end.value.zero();
}
bool open_zero(const Corner& corner) {
  return corner.infinity == 0 && !corner.end.closed && corner.end.value.zero();
}

Corner times(const Corner& left, const Corner& right) {
  if (fixed_zero(left) || fixed_zero(right)) {
    return {{Decimal{}, false, true}, 0};
  }
  if (left.infinity != 0 || right.infinity != 0) {
    const int towards = direction(left) * direction(right);
    return {{Decimal{}, towards != 0, false}, towards};  // zero that is not reached, times infinity: towards zero
  }
  return {{left.end.value * right.end.value, false, left.end.closed && right.end.closed}, 0};
}

// The divisor does not hold zero; an end of it may be a zero that does not belong to it.
Corner over(const Corner& left, const Corner& right, int divisor_sign) {
  if (fixed_zero(left)) {
    return {{Decimal{}, false, true}, 0};
  }
  if (right.infinity != 0) {
    return {{Decimal{}, false, false}, 0};
  }
  if (open_zero(right)) {
    const int towards = direction(left) * divisor_sign;
    return {{Decimal{}, towards != 0, false}, towards};
  }
  if (left.infinity != 0) {
    return {{Decimal{}, true, false}, left.infinity * sign(right.end.value)};
  }
  return {{left.end.value / right.end.value, false, left.end.closed && right.end.closed}, 0};
}

bool lower(const Corner& a, const Corner& b) {
  if (a.infinity != b.infinity) {
    return a.infinity < b.infinity;
  }
  return a.infinity == 0 && a.end.value < b.end.value;
}

Interval hull(const std::array<Corner, 4>& all) {
  Corner low = all[0];
  Corner high = all[0];
  for (const Corner& one : all) {
    const bool ties_low = !lower(one, low) && !lower(low, one);
    const bool ties_high = !lower(one, high) && !lower(high, one);
    low = lower(one, low) || (ties_low && one.end.closed) ? one : low;
    high = lower(high, one) || (ties_high && one.end.closed) ? one : high;
  }
  low.end.infinite = low.infinity != 0;
  high.end.infinite = high.infinity != 0;
  return {low.end, high.end};
}

bool holds_zero(const Interval& values) {
  const bool from = values.low.infinite || values.low.value < Decimal{0} ||
                    (values.low.closed && values.low.value.zero());
  const bool to = values.high.infinite || values.high.value > Decimal{0} ||
                  (values.high.closed && values.high.value.zero());
  return from && to;
}

}  // namespace

std::string loss_text(Loss loss) {
  constexpr std::array<const char*, losses> texts{"product of two bounds", "zero times a bound", "division by a bound",
                                                  "larger or smaller with a bound", "spread of bounds",
                                                  "sum of bounds in opposite directions"};
  return texts.at(static_cast<std::size_t>(loss));
}

Interval Interval::reading(const Decimal& value, quantity::Bound bound) {
  Interval out = point(value);
  switch (bound) {
    case quantity::Bound::exact:
      break;
    case quantity::Bound::at_least:
    case quantity::Bound::above:
      out.low.closed = bound == quantity::Bound::at_least;
      out.high = below_all;
      break;
    case quantity::Bound::at_most:
    case quantity::Bound::below:
      out.high.closed = bound == quantity::Bound::at_most;
      out.low = below_all;
      break;
    default:
      return everything();
  }
  return out;
}

bool Interval::exact() const {
  return !low.infinite && !high.infinite && low.closed && high.closed && low.value == high.value;
}

Interval add(const Interval& left, const Interval& right, Lost& lost) {
  const Interval out{sum(left.low, right.low), sum(left.high, right.high)};
  if (out.low.infinite && out.high.infinite) {
    lost.note(Loss::opposite_bounds);
  }
  return out;
}

Interval subtract(const Interval& left, const Interval& right, Lost& lost) {
  if (left.exact() && right.exact()) {
    return Interval::point(left.value() - right.value());
  }
  return add(left, negated(right), lost);
}

Interval multiply(const Interval& left, const Interval& right, Lost& lost) {
  if (left.exact() && right.exact()) {
    return Interval::point(left.value() * right.value());
  }
  if (!left.exact() && !right.exact()) {
    lost.note(Loss::product_of_bounds);
  } else if ((left.exact() ? left : right).value().zero()) {
    lost.note(Loss::zero_times_bound);
  }
  const auto a = corners(left);
  const auto b = corners(right);
  return hull({times(a[0], b[0]), times(a[0], b[1]), times(a[1], b[0]), times(a[1], b[1])});
}

std::optional<Interval> divide(const Interval& left, const Interval& right, Lost& lost) {
  if (!right.exact()) {
    lost.note(Loss::division_by_bound);
  }
  if (holds_zero(right)) {
    return right.exact() ? std::nullopt : std::optional(Interval::everything());
  }
  if (left.exact() && right.exact()) {
    return Interval::point(left.value() / right.value());
  }
  const int divisor_sign = right.low.infinite || sign(right.low.value) < 0 ? -1 : 1;
  const auto a = corners(left);
  const auto b = corners(right);
  return hull({over(a[0], b[0], divisor_sign), over(a[0], b[1], divisor_sign), over(a[1], b[0], divisor_sign),
               over(a[1], b[1], divisor_sign)});
}

Interval larger(const Interval& left, const Interval& right, Lost& lost) {
  if (!left.exact() || !right.exact()) {
    lost.note(Loss::larger_of_bounds);
  }
  Interval out;
  if (left.low.infinite || right.low.infinite) {
    out.low = left.low.infinite ? right.low : left.low;
  } else if (left.low.value == right.low.value) {
    out.low = {left.low.value, false, left.low.closed && right.low.closed};
  } else {
    out.low = left.low.value < right.low.value ? right.low : left.low;
  }
  if (left.high.infinite || right.high.infinite) {
    out.high = below_all;
  } else if (left.high.value == right.high.value) {
    out.high = {left.high.value, false, left.high.closed || right.high.closed};
  } else {
    out.high = left.high.value < right.high.value ? right.high : left.high;
  }
  return out;
}

Interval smaller(const Interval& left, const Interval& right, Lost& lost) {
  return negated(larger(negated(left), negated(right), lost));
}

Interval rounded(const Interval& values, const Decimal& place, quantity::Ties ties) {
  // An end that does not belong to the interval is only approached: at a tie from its own side.
  const auto end = [&](const End& from, bool from_above) -> End {
    if (from.infinite) {
      return from;
    }
    const Decimal rest = from.value.remainder(place);
    const bool tie = (rest < Decimal{0} ? -rest : rest) * Decimal{2} == place;
    if (!from.closed && tie) {
      const Decimal half = place / Decimal{2};
      return {quantity::round_to(from_above ? from.value + half : from.value - half, place, ties), false, true};
    }
    return {quantity::round_to(from.value, place, ties), false, true};
  };
  return {end(values.low, true), end(values.high, false)};
}

Answer at_most(const Interval& values, const Decimal& limit, const Rounding& rounding) {
  const Interval seen = rounding.place ? rounded(values, *rounding.place, rounding.ties) : values;
  if (!seen.high.infinite && seen.high.value <= limit) {
    return Answer::yes;
  }
  const bool missed = !seen.low.infinite && (seen.low.value > limit || (seen.low.value == limit && !seen.low.closed));
  return missed ? Answer::no : Answer::open;
}

Answer at_least(const Interval& values, const Decimal& limit, const Rounding& rounding) {
  const Interval seen = rounding.place ? rounded(values, *rounding.place, rounding.ties) : values;
  if (!seen.low.infinite && seen.low.value >= limit) {
    return Answer::yes;
  }
  const bool missed =
      !seen.high.infinite && (seen.high.value < limit || (seen.high.value == limit && !seen.high.closed));
  return missed ? Answer::no : Answer::open;
}

}  // namespace plumbrule::oracle
