#pragma once
// `plumbrule proof`: checks rule files and runs their examples.

#include <string>
#include <vector>

#include "doors/command/review.hpp"

namespace plumbrule::command {

struct ProofOptions {
  std::vector<std::string> paths;  // files, or folders of *.plumb
  std::vector<std::string> libraries;
  std::string out;  // a file, or empty
  Format format = Format::text;
  bool remarks = false;  // show remarks and missed branches, not only their number
  bool log = false;
};

[[nodiscard]] Exit proof(const ProofOptions& options);

}  // namespace plumbrule::command
