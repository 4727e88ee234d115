#pragma once
// From the models of the reports to the data of pictures. Nothing is worked out here but coordinates.

#include <vector>

#include "picture/picture.hpp"
#include "report/matrix.hpp"
#include "report/window.hpp"

namespace plumbrule::report {

/// A picture, and whose it is.
struct Placed {
  std::string specification;  // title of the specification; empty: of the whole report
  picture::Picture picture;
};

/// For each specification: margins, gradings (both axes), replicate scatter. Without a picture for what a report has
/// nothing of.
[[nodiscard]] std::vector<Placed> pictures(const Report& report);
/// For each specification: a chart of each design variable, and of each strength build.
[[nodiscard]] std::vector<Placed> pictures(const WindowReport& report);
[[nodiscard]] picture::Picture picture_of(const Matrix& matrix);

}  // namespace plumbrule::report
