#pragma once
// One review, as the command line would make it from files, judged twice.

#include "engine.hpp"

namespace plumbrule::oracle {

struct ReviewFiles {
  std::string submittal;
  std::vector<std::string> against, amendments, libraries;
  std::string on;
};

struct Checked {
  std::string trouble;  // rules with errors or an unusable submittal: nothing to compare
  std::size_t clauses = 0;
  std::vector<Difference> differences;
  std::size_t left_open = 0;
};

[[nodiscard]] Checked check_files(const ReviewFiles& files);
/// A line for each difference.
[[nodiscard]] std::string report(const Checked& checked);

}  // namespace plumbrule::oracle
