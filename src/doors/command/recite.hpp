#pragma once
// `plumbrule recite`: a specification as a table of limits.

#include "doors/command/review.hpp"
#include "show/report/recite/recite.hpp"

namespace plumbrule::command {

struct ReciteOptions {
  std::string path;
  std::vector<std::string> amendments;
  std::vector<std::string> libraries;
  std::string on;
  std::string out;
  report::Units units = report::Units::printed;
  Format format = Format::text;
};

[[nodiscard]] Exit recite(const ReciteOptions& options);

}  // namespace plumbrule::command
