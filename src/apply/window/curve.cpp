// A parabola of least squares through the readings of a series, for comparison with the straight lines. It decides
// nothing. Worked out in decimals like everything else: y = a + b (x - m) + c (x - m)^2 with m the mean of the tested
// values, by the normal equations and Cramer's rule.

#include <array>

#include "apply/window/words.hpp"

namespace plumbrule::window {
namespace {

struct Point {
  Decimal at, value;
  const Reading* reading = nullptr;
};

struct Parabola {
  Decimal middle, a, b, c;
  [[nodiscard]] Decimal value(const Decimal& at) const {
    const Decimal from = at - middle;
    return a + b * from + c * from * from;
  }
};

using Row = std::array<Decimal, 3>;

Decimal determinant(const Row& x, const Row& y, const Row& z) {
  return x[0] * (y[1] * z[2] - y[2] * z[1]) - x[1] * (y[0] * z[2] - y[2] * z[0]) + x[2] * (y[0] * z[1] - y[1] * z[0]);
}

// Nothing for fewer than three points.
std::optional<Parabola> fit(const std::vector<Point>& points) {
  if (points.size() < 3) {
    return std::nullopt;
  }
  const Decimal count{static_cast<std::int64_t>(points.size())};
  Decimal sum;
  for (const Point& one : points) {
    sum = sum + one.at;
  }
  Parabola out;
  out.middle = sum / count;
  std::array<Decimal, 5> powers;  // sums of the powers of the distance from the middle
  Row right;                      // sums of the values, times the powers
  for (const Point& one : points) {
    Decimal power{1};
    for (std::size_t at = 0; at < powers.size(); ++at) {
      powers.at(at) = powers.at(at) + power;
      if (at < right.size()) {
        right.at(at) = right.at(at) + power * one.value;
      }
      power = power * (one.at - out.middle);
    }
  }
  const Row first{powers[0], powers[1], powers[2]};
  const Row second{powers[1], powers[2], powers[3]};
  const Row third{powers[2], powers[3], powers[4]};
  const Decimal whole = determinant(first, second, third);
  out.a = determinant(right, second, third) / whole;
  out.b = determinant(first, right, third) / whole;
  out.c = determinant(first, second, right) / whole;
  return out.a.finite() && out.b.finite() && out.c.finite() ? std::optional(out) : std::nullopt;
}

// Where the parabola meets the threshold, in rising order.
std::vector<Decimal> roots(const Parabola& curve, const Decimal& threshold) {
  const Decimal a = curve.a - threshold;
  if (curve.c.zero()) {
    return curve.b.zero() ? std::vector<Decimal>{} : std::vector{curve.middle - a / curve.b};
  }
  const Decimal under = curve.b * curve.b - Decimal{4} * curve.c * a;
  if (under < Decimal{0}) {
    return {};
  }
  const Decimal width = under.square_root();
  const Decimal one = curve.middle + (-curve.b - width) / (Decimal{2} * curve.c);
  const Decimal other = curve.middle + (-curve.b + width) / (Decimal{2} * curve.c);
  return one < other ? std::vector{one, other} : std::vector{other, one};
}

Profile within(const Parabola& curve, const quantity::Threshold& threshold, bool high, const Decimal& low,
               const Decimal& top) {
  std::vector<Decimal> at{low};
  for (const Decimal& one : roots(curve, threshold.value)) {
    if (at.back() < one && one < top) {
      at.push_back(one);
    }
  }
  at.push_back(top);
  const auto verdict = [&](const Decimal& value) {
    return passes(value, threshold, high) ? Verdict::complies : Verdict::fails;
  };
  std::vector<Profile::Point> points;
  for (std::size_t one = 0; one < at.size(); ++one) {
    const bool root = one > 0 && one + 1 < at.size();
    const Decimal next = one + 1 < at.size() ? (at[one] + at[one + 1]) / Decimal{2} : at[one];
    points.push_back(
        {at[one], root ? verdict(threshold.value) : verdict(curve.value(at[one])), verdict(curve.value(next))});
  }
  return Profile(std::move(points));
}

std::optional<CurveReport> curve(const Words& words, const Clause& clause, const Series& series) {
  const bool high = series.limits.high && !series.limits.low;
  std::vector<Point> points;
  for (const Reading& one : series.readings) {
    if (one.solid) {
      points.push_back({one.at, high ? one.greatest : one.least, &one});
    }
  }
  const auto fitted = fit(points);
  if (!fitted || (!series.limits.low && !series.limits.high)) {
    return std::nullopt;
  }
  CurveReport out;
  out.clause = words.requirement(clause).number;
  out.label = explain::label(words.context().rules, words.assertion(clause, series.check));
  out.formula = plain(fitted->a) + " + (" + plain(fitted->b) + ") * d + (" + plain(fitted->c) +
                ") * d * d, d = value - " + plain(fitted->middle);
  for (const Point& one : points) {
    const Decimal there = fitted->value(one.at);
    ReadingReport point;
    point.at = plain(one.at);
    point.value = words.value(series.check, there);
    point.why = words.value(series.check, one.value - there);
    point.verdict = one.reading->verdict;
    out.points.push_back(std::move(point));
  }
  Profile whole;
  for (const bool side : {false, true}) {
    const auto& threshold = side ? series.limits.high : series.limits.low;
    if (threshold) {
      const Profile one = within(*fitted, *threshold, side, points.front().at, points.back().at);
      whole = whole.points().empty() ? one : all_of(whole, one);
    }
  }
  out.within = words.stretches(whole);
  return out;
}

}  // namespace

std::vector<CurveReport> curves(const Words& words) {
  std::vector<CurveReport> out;
  for (const Clause& clause : words.window().clauses) {
    if (clause.role != Role::varies) {
      continue;
    }
    for (const Series& series : clause.series) {
      if (auto one = curve(words, clause, series)) {
        out.push_back(std::move(*one));
      }
    }
  }
  return out;
}

}  // namespace plumbrule::window
