#pragma once
// The test of a single outlying value of ASTM E178, two-sided: T = |x - mean| / s, s with n - 1.

#include <optional>
#include <span>

namespace plumbrule::audit {

/// The value that T must exceed: (n - 1) / sqrt(n) * sqrt(t^2 / (n - 2 + t^2)), where t is the value of Student's t
/// with n - 2 degrees of freedom that is exceeded with probability significance / (2 n). Precondition: n >= 3.
[[nodiscard]] double critical_value(std::size_t n, double significance);

struct Outlier {
  std::size_t index = 0;
  double t = 0;
  double critical = 0;
};

/// The value farthest from the mean, if it is an outlier. Nothing for fewer than three values, or if all are equal.
[[nodiscard]] std::optional<Outlier> find_outlier(std::span<const double> values, double significance);

}  // namespace plumbrule::audit
