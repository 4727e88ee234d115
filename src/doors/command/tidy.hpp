#pragma once
// `plumbrule tidy`: rule files in canonical layout.

#include <string>
#include <vector>

#include "doors/command/output.hpp"

namespace plumbrule::command {

struct TidyOptions {
  std::vector<std::string> paths;  // `-`: standard input to standard output
  bool check = false;              // write nothing, say which files are not tidy
};

/// Exit: complies; fails if `check` found a file that is not tidy; rules_broken if a file has an error, which leaves it
/// as it is; unusable if one cannot be read or written. Of several, the last in this list.
[[nodiscard]] Exit tidy(const TidyOptions& options);

}  // namespace plumbrule::command
