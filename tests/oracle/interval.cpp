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

Interval scaled(const Interval& values, const Decimal& by, bool divide) {
  const auto end = [&](const End& from) {
    return from.infinite ? from : End{divide ? from.value / by : from.value * by, false, from.closed};
  };
  const Interval out{end(values.low), end(values.high)};
  return by < Decimal{0} ? Interval{out.high, out.low} : out;
}

}  // namespace

std::string loss_text(Loss loss) {
  constexpr std::array<const char*, losses> texts{"product of two bounds",
                                                  "zero times a bound",
                                                  "division by a bound",
                                                  "spread of bounds",
                                                  "larger or smaller known from both ends",
                                                  "refusal of a value of which nothing is known",
                                                  "an end at a tie rounded before the statistic"};
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

Interval add(const Interval& left, const Interval& right) {
  return {sum(left.low, right.low), sum(left.high, right.high)};
}

Interval subtract(const Interval& left, const Interval& right) {
  if (left.exact() && right.exact()) {
    return Interval::point(left.value() - right.value());
  }
  return add(left, negated(right));
}

Interval multiply(const Interval& left, const Interval& right, Lost& lost) {
  if (left.exact() && right.exact()) {
    return Interval::point(left.value() * right.value());
  }
  if (!left.exact() && !right.exact()) {
    lost.note(Loss::product_of_bounds);
    return Interval::everything();
  }
  const Decimal& by = left.exact() ? left.value() : right.value();
  if (by.zero()) {
    lost.note(Loss::zero_times_bound);
    return Interval::everything();
  }
  return scaled(left.exact() ? right : left, by, false);
}

std::optional<Interval> divide(const Interval& left, const Interval& right, Lost& lost) {
  if (!right.exact()) {
    lost.note(Loss::division_by_bound);
    return Interval::everything();
  }
  return right.value().zero() ? std::nullopt : std::optional(scaled(left, right.value(), true));
}

Interval larger(const Interval& left, const Interval& right) {
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

Interval smaller(const Interval& left, const Interval& right) { return negated(larger(negated(left), negated(right))); }

bool open_tie(const End& end, const Decimal& place) {
  const Decimal rest = end.value.remainder(place);
  return !end.infinite && !end.closed && (rest < Decimal{0} ? -rest : rest) * Decimal{2} == place;
}

Interval rounded(const Interval& values, const Decimal& place, quantity::Ties ties) {
  // An end that does not belong to the interval is only approached: at a tie from its own side.
  const auto end = [&](const End& from, bool from_above) -> End {
    if (from.infinite) {
      return from;
    }
    if (open_tie(from, place)) {
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
