#pragma once
// A verdict as a function of one variable (language.md, section 15.3): points, and the open stretches between them.
// Closed under "all must hold" and "one is enough", so that unions and intersections of intervals, open ends and single
// points need no cases of their own.

#include <vector>

#include "judge/evaluate/evaluate.hpp"

namespace plumbrule::window {

using evaluate::Verdict;
using quantity::Decimal;

/// One stretch on which the verdict is complies: from low to high, each end inside or not. A single point has low equal
/// to high, both inside.
struct Stretch {
  Decimal low, high;
  bool low_inside = true, high_inside = true;
  [[nodiscard]] bool contains(const Decimal& value) const;
};

class Profile {
 public:
  /// Points in rising order. `after`: the verdict on the open stretch from this point to the next; ignored at the last.
  /// Beyond the first and the last point nothing is shown.
  struct Point {
    Decimal at;
    Verdict here = Verdict::not_shown;
    Verdict after = Verdict::not_shown;
  };
  Profile() = default;
  explicit Profile(std::vector<Point> points) : points_(std::move(points)) {}

  [[nodiscard]] const std::vector<Point>& points() const { return points_; }
  [[nodiscard]] Verdict at(const Decimal& value) const;
  /// The verdict next to the value, on either side of it.
  [[nodiscard]] Verdict below(const Decimal& value) const;
  [[nodiscard]] Verdict above(const Decimal& value) const;
  /// Where it complies, in rising order; the longest stretches.
  [[nodiscard]] std::vector<Stretch> complying() const;
  /// Whether the verdict occurs anywhere from the first to the last point.
  [[nodiscard]] bool anywhere(Verdict verdict) const;

 private:
  std::vector<Point> points_;
};

/// language.md, sections 10.2 and 10.3, at every value of the variable.
[[nodiscard]] Profile all_of(const Profile& left, const Profile& right);
[[nodiscard]] Profile any_of(const Profile& left, const Profile& right);

}  // namespace plumbrule::window
