#pragma once
// `plumbrule contrast`: what differs between two specifications.

#include "doors/command/review.hpp"

namespace plumbrule::command {

struct ContrastOptions {
  std::string before;
  std::string after;  // empty: the one before, with the amendments
  std::vector<std::string> amendments, before_amendments;
  std::vector<std::string> libraries;
  std::string archive;  // a folder, or empty
  std::string out;
  Format format = Format::text;
};

/// Exit status 0: nothing differs, or texts alone; 1: something else does, or a past submittal is judged otherwise; 2:
/// neither, but a past submittal could not be read or has errors.
[[nodiscard]] Exit contrast(const ContrastOptions& options);

}  // namespace plumbrule::command
