#include "judge/audit/outlier.hpp"

#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <numeric>

namespace plumbrule::audit {

double critical_value(std::size_t n, double significance) {
  const auto count = static_cast<double>(n);
  const boost::math::students_t distribution(count - 2);
  const double t = boost::math::quantile(boost::math::complement(distribution, significance / (2 * count)));
  return (count - 1) / std::sqrt(count) * std::sqrt(t * t / (count - 2 + t * t));
}

std::optional<Outlier> find_outlier(std::span<const double> values, double significance) {
  if (values.size() < 3) {
    return std::nullopt;
  }
  const auto count = static_cast<double>(values.size());
  const double mean = std::accumulate(values.begin(), values.end(), 0.0) / count;
  double squares = 0;
  Outlier out;
  for (std::size_t at = 0; at < values.size(); ++at) {
    squares += (values[at] - mean) * (values[at] - mean);
    out.index = std::abs(values[at] - mean) > std::abs(values[out.index] - mean) ? at : out.index;
  }
  const double deviation = std::sqrt(squares / (count - 1));
  if (!(deviation > 0) || !std::isfinite(deviation)) {
    return std::nullopt;
  }
  // Where the others agree to the last digit, their spread is only the resolution of the readings: nothing to hold it
  // against.
  const double first = values[out.index == 0 ? 1 : 0];
  bool others_agree = true;
  for (std::size_t at = 0; at < values.size(); ++at) {
    others_agree = others_agree && (at == out.index || !(values[at] < first || values[at] > first));
  }
  if (others_agree) {
    return std::nullopt;
  }
  out.t = std::abs(values[out.index] - mean) / deviation;
  out.critical = critical_value(values.size(), significance);
  return out.t > out.critical ? std::optional(out) : std::nullopt;
}

}  // namespace plumbrule::audit
