#pragma once
// Scales: from quantities to coordinates, and the round numbers that an axis is marked with.

#include <cstdint>
#include <string>
#include <vector>

namespace plumbrule::picture {

enum class ScaleKind : std::uint8_t { linear, logarithmic, power };

/// Maps `low`..`high` of a quantity onto `from`..`to` of the drawing; `from` may be the greater (y grows downwards).
/// Logarithmic and power scales are for quantities above 0 (power: from 0 on, to the power 0.45).
class Scale {
 public:
  /// A range of no width is widened, so that every scale has one.
  Scale(ScaleKind kind, double low, double high, double from, double to);
  [[nodiscard]] double at(double value) const;
  [[nodiscard]] double low() const { return low_; }
  [[nodiscard]] double high() const { return high_; }

 private:
  [[nodiscard]] double stretched(double value) const;
  ScaleKind kind_;
  double low_, high_, from_, to_;
};

struct Tick {
  double at = 0;
  std::string text;  // "0.5", "1200": as many decimals as the step needs, the same for all ticks of an axis
};

/// Multiples of 1, 2 or 5 times a power of ten within low..high, the most that are no more than `most`; at least two
/// if the range holds them.
[[nodiscard]] std::vector<Tick> ticks(double low, double high, std::size_t most);

/// The range widened outwards to round numbers, as an axis with about `most` ticks needs it.
struct Range {
  double low = 0, high = 0;
};
[[nodiscard]] Range rounded_out(const Range& range, std::size_t most);

}  // namespace plumbrule::picture
