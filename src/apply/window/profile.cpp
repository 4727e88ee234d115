#include "apply/window/profile.hpp"

#include <algorithm>

namespace plumbrule::window {

bool Stretch::contains(const Decimal& value) const {
  return (low_inside ? value >= low : value > low) && (high_inside ? value <= high : value < high);
}

static auto not_below(const std::vector<Profile::Point>& points, const Decimal& value) {
  return std::lower_bound(points.begin(), points.end(), value,
                          [](const Profile::Point& point, const Decimal& wanted) { return point.at < wanted; });
}

Verdict Profile::at(const Decimal& value) const {
  const auto next = not_below(points_, value);
  if (next != points_.end() && next->at == value) {
    return next->here;
  }
  return next == points_.begin() || next == points_.end() ? Verdict::not_shown : std::prev(next)->after;
}

Verdict Profile::below(const Decimal& value) const {
  const auto next = not_below(points_, value);
  return next == points_.begin() || next == points_.end() ? Verdict::not_shown : std::prev(next)->after;
}

Verdict Profile::above(const Decimal& value) const {
  auto next = not_below(points_, value);
  if (next == points_.end() || (next == points_.begin() && value < next->at)) {
    return Verdict::not_shown;
  }
  const auto stretch = next->at == value ? next : std::prev(next);
  return std::next(stretch) == points_.end() ? Verdict::not_shown : stretch->after;
}

std::vector<Stretch> Profile::complying() const {
  std::vector<Stretch> out;
  bool open = false;  // a stretch is being followed
  for (std::size_t at = 0; at < points_.size(); ++at) {
    const Point& point = points_[at];
    const bool here = point.here == Verdict::complies;
    if (open) {
      out.back().high = point.at;
      out.back().high_inside = here;
      open = here;
    } else if (here) {
      out.push_back({point.at, point.at, true, true});
      open = true;
    }
    const bool after = at + 1 < points_.size() && point.after == Verdict::complies;
    if (after && !open) {
      out.push_back({point.at, point.at, false, false});
    }
    open = after;
  }
  return out;
}

bool Profile::anywhere(Verdict verdict) const {
  for (std::size_t at = 0; at < points_.size(); ++at) {
    if (points_[at].here == verdict || (at + 1 < points_.size() && points_[at].after == verdict)) {
      return true;
    }
  }
  return false;
}

static Verdict both(Verdict left, Verdict right) {
  if (left == Verdict::fails || right == Verdict::fails) {
    return Verdict::fails;
  }
  return left == Verdict::complies && right == Verdict::complies ? Verdict::complies : Verdict::not_shown;
}

static Verdict either(Verdict left, Verdict right) {
  if (left == Verdict::complies || right == Verdict::complies) {
    return Verdict::complies;
  }
  return left == Verdict::fails && right == Verdict::fails ? Verdict::fails : Verdict::not_shown;
}

static Profile merged(const Profile& left, const Profile& right, Verdict (*join)(Verdict, Verdict)) {
  std::vector<Decimal> values;
  for (const Profile* one : {&left, &right}) {
    for (const Profile::Point& point : one->points()) {
      values.push_back(point.at);
    }
  }
  std::sort(values.begin(), values.end(), [](const Decimal& a, const Decimal& b) { return a < b; });
  values.erase(std::unique(values.begin(), values.end()), values.end());
  std::vector<Profile::Point> points;
  points.reserve(values.size());
  for (const Decimal& value : values) {
    points.push_back({value, join(left.at(value), right.at(value)), join(left.above(value), right.above(value))});
  }
  return Profile(std::move(points));
}

Profile all_of(const Profile& left, const Profile& right) { return merged(left, right, both); }
Profile any_of(const Profile& left, const Profile& right) { return merged(left, right, either); }

}  // namespace plumbrule::window
