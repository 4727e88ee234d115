#pragma once
// `plumbrule contrast`: what differs between two specifications.

#include "command/review.hpp"

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

/// Exit status 0: no limit differs; 1: something differs; 2: nothing differs, but a past submittal could not be read.
[[nodiscard]] Exit contrast(const ContrastOptions& options);

}  // namespace plumbrule::command
