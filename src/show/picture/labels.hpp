#pragma once
// Where texts stand: how wide they are, about, and how they keep out of each other's way.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumbrule::picture {

/// The width of a text in a plain sans-serif font, on the generous side; other fonts that a reader may have differ by a
/// few percent. Characters that the table lacks count as wide ones.
[[nodiscard]] double text_width(std::string_view utf8, double size);

/// Cut to fit, with "…" at the end where something is cut; never inside a character.
[[nodiscard]] std::string fitted(std::string_view utf8, double size, double width);

/// Broken between words to fit; a word that is too long by itself is cut as `fitted` cuts. Never empty.
[[nodiscard]] std::vector<std::string> folded(std::string_view utf8, double size, double width);

struct Box {
  double left = 0, top = 0, right = 0, bottom = 0;
  [[nodiscard]] bool overlaps(const Box& other) const;
};

/// Keeps the boxes of what is drawn, so that no two labels overlap.
class Places {
 public:
  explicit Places(const Box& inside) : inside_(inside) {}
  /// Something that labels must keep off, such as a point.
  void keep_off(const Box& box) { taken_.push_back(box); }
  /// The first of the boxes that lies inside and overlaps nothing; it is taken from then on.
  [[nodiscard]] std::optional<Box> take(const std::vector<Box>& choices);

 private:
  Box inside_;
  std::vector<Box> taken_;
};

/// Labels of equal height in one column: moved from where they would like to be (their middles, in any order) as little
/// as needed to stand apart by `height`, within low..high as long as they fit there. Same order as given.
[[nodiscard]] std::vector<double> spread(const std::vector<double>& wished, double height, double low, double high);

}  // namespace plumbrule::picture
