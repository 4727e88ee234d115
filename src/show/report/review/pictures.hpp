#pragma once
// From the models of the reports to the data of pictures. Nothing is worked out here but coordinates.

#include <string_view>
#include <vector>

#include "show/picture/picture.hpp"
#include "show/report/matrix/matrix.hpp"
#include "show/report/window/window.hpp"

namespace plumbrule::report {

/// A picture, and whose it is.
struct Placed {
  std::string specification;  // title of the specification; empty: of the whole report
  picture::Picture picture;
};

/// A number with all its digits as a coordinate; not a number if the text is none. The one way from decimals to
/// doubles; nothing that is decided or printed comes back from there.
[[nodiscard]] double coordinate(std::string_view exact);

/// For each specification: margins, gradings (both axes), replicate scatter. Without a picture for what a report has
/// nothing of.
[[nodiscard]] std::vector<Placed> pictures(const Report& report);
/// For each specification: a chart of each design variable, and of each strength build.
[[nodiscard]] std::vector<Placed> pictures(const Windows& report);
/// One, or several that each take some of the tests.
[[nodiscard]] std::vector<picture::Picture> pictures_of(const Matrix& matrix);

}  // namespace plumbrule::report
