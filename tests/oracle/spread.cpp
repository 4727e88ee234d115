// Statistics over values of which perhaps only an interval is known.

#include <algorithm>

#include "interval.hpp"

namespace plumbrule::oracle {
namespace {

bool all_exact(std::span<const Interval> values) {
  return std::all_of(values.begin(), values.end(), [](const Interval& one) { return one.exact(); });
}

}  // namespace

Interval mean(std::span<const Interval> values) {
  Interval out = values.front();
  for (const Interval& one : values.subspan(1)) {
    out = add(out, one);
  }
  if (values.size() == 1) {
    return out;
  }
  const Decimal count{static_cast<std::int64_t>(values.size())};
  out.low.value = out.low.value / count;
  out.high.value = out.high.value / count;
  return out;
}

Interval range(std::span<const Interval> values, Lost& lost) {
  if (!all_exact(values)) {
    lost.note(Loss::spread);
    return Interval::everything();
  }
  Decimal least = values.front().value();
  Decimal greatest = least;
  for (const Interval& one : values) {
    least = one.value() < least ? one.value() : least;
    greatest = one.value() > greatest ? one.value() : greatest;
  }
  return Interval::point(greatest - least);
}

std::optional<Interval> standard_deviation(std::span<const Interval> values, Lost& lost) {
  if (values.size() < 2) {
    return std::nullopt;
  }
  if (!all_exact(values)) {
    lost.note(Loss::spread);
    return Interval::everything();
  }
  const Decimal middle = mean(values).value();
  Decimal sum = 0;
  for (const Interval& one : values) {
    const Decimal apart = one.value() - middle;
    sum = sum + apart * apart;
  }
  return Interval::point((sum / Decimal{static_cast<std::int64_t>(values.size()) - 1}).square_root());
}

}  // namespace plumbrule::oracle
