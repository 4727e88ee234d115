#include "show/picture/scale.hpp"

#include <algorithm>
#include <cmath>
#include <locale>
#include <sstream>

namespace plumbrule::picture {
namespace {

constexpr double grading_power = 0.45;  // the usual power of a sieve axis; common practice, no source
constexpr double nearly = 1e-9;         // of a step: what arithmetic may be off by

/// A step of 1, 2 or 5 times a power of ten.
struct Step {
  int digit = 1;
  int exponent = 0;
  [[nodiscard]] double size() const { return digit * std::pow(10.0, exponent); }
};

Step next(const Step& step) {
  return step.digit == 1   ? Step{2, step.exponent}
         : step.digit == 2 ? Step{5, step.exponent}
                           : Step{1, step.exponent + 1};
}

struct Count {
  double first = 0, last = 0;  // multiples of the step
  [[nodiscard]] double ticks() const { return last - first + 1; }
};

Count within(double low, double high, const Step& step) {
  return {std::ceil(low / step.size() - nearly), std::floor(high / step.size() + nearly)};
}

Step step_for(double low, double high, std::size_t most) {
  const double least = (high - low) / static_cast<double>(std::max<std::size_t>(most, 2));
  Step step{1, static_cast<int>(std::floor(std::log10(least))) - 1};
  while (within(low, high, step).ticks() > static_cast<double>(std::max<std::size_t>(most, 2))) {
    step = next(step);
  }
  return step;
}

std::string written(double value, int decimals) {
  constexpr std::size_t longest = 64;
  std::ostringstream stream;
  stream.imbue(std::locale::classic());
  stream.setf(std::ios_base::fixed, std::ios_base::floatfield);
  stream.precision(std::clamp(decimals, 0, 12));
  stream << value;
  const std::string out = stream.str();
  return out.size() <= longest ? out : "?";
}

}  // namespace

Scale::Scale(ScaleKind kind, double low, double high, double from, double to)
    : kind_(kind), low_(low), high_(high), from_(from), to_(to) {
  if (!(high_ > low_)) {
    const double room = low_ == 0 ? 1 : std::abs(low_) / 10;
    low_ -= room;
    high_ = low_ + 2 * room;
  }
}

double Scale::stretched(double value) const {
  switch (kind_) {
    case ScaleKind::logarithmic:
      return std::log10(value);
    case ScaleKind::power:
      return std::pow(std::max(value, 0.0), grading_power);
    default:
      return value;
  }
}

double Scale::at(double value) const {
  const double share = (stretched(value) - stretched(low_)) / (stretched(high_) - stretched(low_));
  return from_ + share * (to_ - from_);
}

std::vector<Tick> ticks(double low, double high, std::size_t most) {
  std::vector<Tick> out;
  if (!(high > low) || !std::isfinite(low) || !std::isfinite(high)) {
    return out;
  }
  const Step step = step_for(low, high, most);
  const Count count = within(low, high, step);
  const auto number = static_cast<std::size_t>(std::max(count.ticks(), 0.0));
  for (std::size_t one = 0; one < number; ++one) {
    const double at = count.first + static_cast<double>(one);
    const double value = at == 0 ? 0 : at * step.size();
    out.push_back({value, written(value, -step.exponent)});
  }
  return out;
}

Range rounded_out(const Range& range, std::size_t most) {
  if (!(range.high > range.low) || !std::isfinite(range.low) || !std::isfinite(range.high)) {
    return range;
  }
  Step step = step_for(range.low, range.high, most);
  const auto outwards = [&range](const Step& by) {
    return Range{std::floor(range.low / by.size() + nearly) * by.size(),
                 std::ceil(range.high / by.size() - nearly) * by.size()};
  };
  while (within(outwards(step).low, outwards(step).high, step).ticks() > static_cast<double>(most)) {
    step = next(step);
  }
  return outwards(step);
}

}  // namespace plumbrule::picture
