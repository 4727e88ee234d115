#pragma once
// SVG text, piece by piece. The only place that writes angle brackets. Internal to this folder.

#include <string>
#include <string_view>
#include <vector>

#include "show/picture/labels.hpp"
#include "show/picture/picture.hpp"

namespace plumbrule::picture {

inline constexpr double page_width = 420;
inline constexpr double text_size = 12;
inline constexpr double small_size = 11;  // 9.4 px where the page is 360 px wide
inline constexpr double line_height = 15;
inline constexpr double bold_share = 1.12;  // how much wider bold text is, about

/// What a colour is for; its value is the page's.
enum class Ink : std::uint8_t { text, quiet, complies, fails, not_shown, window, tolerance, series };

/// A coordinate or length: at most two decimals, no trailing zeros, never "-0", whatever the locale is.
[[nodiscard]] std::string number(double value);

/// For text and attributes: markup made harmless; control characters, marks that turn the direction of writing and
/// bytes that are not UTF-8 become U+FFFD; line ends and tabs become blanks.
[[nodiscard]] std::string escaped(std::string_view text);

struct Point {
  double x = 0, y = 0;
};

enum class Anchor : std::uint8_t { start, middle, end };

/// How a line or an outline is drawn.
struct Pen {
  Ink ink = Ink::text;
  double width = 1;
  std::string_view dashes;  // "4 3", empty for a full line
};

/// Elements in drawing order.
class Drawing {
 public:
  void line(const Point& from, const Point& to, const Pen& pen);
  void path(const std::vector<Point>& points, const Pen& pen);
  /// A filled polygon without outline; `share`: how dense, from 0 to 1.
  void area(const std::vector<Point>& points, Ink ink, double share);
  void rectangle(const Box& box, Ink ink, double share);
  void outline(const Box& box, const Pen& pen);
  /// `y` is the base line.
  void text(const Point& at, std::string_view words, double size, Anchor anchor = Anchor::start, Ink ink = Ink::text,
            bool bold = false);
  /// A text that stands on lines of the chart, on a ground of its own so that they do not cross it out.
  void label(const Point& at, std::string_view words, double size);
  /// The sign of a verdict: a disc, a cross, a ring, a dash. About 9 units wide.
  void mark(const Point& at, Verdict verdict);
  void dot(const Point& at, Ink ink);
  /// A diamond: the statistic of a set of dots, or a job mix.
  void diamond(const Point& at, Ink ink);
  /// The point of an arrow, for what lies beyond the axis; to the right or to the left.
  void beyond(const Point& at, bool right, Ink ink);

  /// The whole element.
  [[nodiscard]] std::string finish(double height, std::string_view title, std::string_view description) const;

 private:
  std::string body_;
};

/// What a text covers.
[[nodiscard]] Box text_box(const Point& at, std::string_view words, double size, Anchor anchor);

}  // namespace plumbrule::picture
