#pragma once
// Parts that several charts share: text that is folded, axes, lines of limits, the key of the signs. Each part that
// takes a `y` draws from there downwards and returns where the next may begin. Internal to this folder.

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "show/picture/picture.hpp"
#include "show/picture/scale.hpp"
#include "show/picture/svg.hpp"

namespace plumbrule::picture {

/// From the least to the greatest of what is added.
class Extent {
 public:
  void add(double value);
  void add(const std::optional<Value>& value);
  void add(const Reading& reading);
  [[nodiscard]] bool empty() const { return empty_; }
  /// With room on both sides, as a share of the width; 0 to 1 if nothing was added.
  [[nodiscard]] Range padded(double share) const;

 private:
  bool empty_ = true;
  Range range_;
};

/// What a plot of values needs: its place, and both scales.
struct Plot {
  Box area;
  Scale x, y;
};

/// The range of values and lines across them: 0 belongs to it unless it is far away, and it ends at round numbers.
[[nodiscard]] Range value_range(const Extent& extent);
inline constexpr std::size_t most_value_ticks = 6;

/// Width that the texts of the ticks need, with a gap.
[[nodiscard]] double tick_room(const Range& range, std::size_t most);

double paragraph(Drawing& drawing, const Point& at, double width, std::string_view words, double size,
                 Ink ink = Ink::text, bool bold = false);

/// Grid, ticks and their texts left of the plot.
void value_axis(Drawing& drawing, const Plot& plot);
/// Ticks under the plot; `words`: with their texts.
void across_axis(Drawing& drawing, const Plot& plot, bool words);
/// Texts of the ticks and the title of the axis; `y`: the lower edge of the plot.
double across_title(Drawing& drawing, const Plot& plot, const Axis& axis);

/// A line with strokes on the side that is not allowed. Values that comply once they are rounded lie between the line
/// and a dotted one, and the strokes beyond it.
void limit_line(Drawing& drawing, const Plot& plot, const Limit& limit);
/// Whether that dotted line can be told from the line of the limit.
[[nodiscard]] bool stands_apart(const Plot& plot, const Limit& limit);
/// "at least 20 kg-cm (unrounded: at least 19.5 kg-cm)".
[[nodiscard]] std::string limit_text(const std::string& label, const std::optional<Value>& unrounded);
/// The same upright, for a scale across.
void limit_upright(Drawing& drawing, const Box& area, double x, Limit::Side side);

/// Lines between readings that are joined, then their signs; without `verdicts` a dot for each, a ring where nothing is
/// shown.
void curve(Drawing& drawing, const Plot& plot, const std::vector<Reading>& readings, bool verdicts = true);

/// Writes labels of lines where there is room: beside the line, over or under it. Those that found none are returned.
struct LineLabel {
  double y = 0;
  std::string_view words;
  std::string_view shorter;  // if there is no room for the words; may be empty
  bool over = true;          // tried first
};
[[nodiscard]] std::vector<std::string_view> label_lines(Drawing& drawing, const Plot& plot, Places& places,
                                                        const std::vector<LineLabel>& labels);
/// Labels keep off the readings and the lines between them.
void keep_off(Places& places, const Plot& plot, const std::vector<Reading>& readings);

/// A row under the axis: a bar from low to high, signs at single places, and words under it.
struct Bar {
  double low = 0, high = 0;
};
double bar_row(Drawing& drawing, const Plot& plot, double y, const std::vector<Bar>& bars,
               const std::optional<double>& diamond, std::string_view words, Ink ink);

/// Which verdicts occur, for the key.
class Seen {
 public:
  void add(Verdict verdict) { seen_.at(static_cast<std::size_t>(verdict)) = true; }
  void add(const std::vector<Reading>& readings);
  /// The sign of each verdict that occurs, with its words, on as few lines as it needs.
  double key(Drawing& drawing, double y) const;

 private:
  std::array<bool, 4> seen_{};
};

/// Sentences, one after the other.
[[nodiscard]] std::string sentences(const std::vector<std::string>& all);
[[nodiscard]] std::string with_unit(const Axis& axis);
/// "7 to 8", or the one value.
[[nodiscard]] std::string range_text(const Value& low, const Value& high);
/// "3 points", "1 point".
[[nodiscard]] std::string counted(std::size_t number, std::string_view one, std::string_view many);

}  // namespace plumbrule::picture
