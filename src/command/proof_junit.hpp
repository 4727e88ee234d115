#pragma once
// What proving rule files showed, for integration servers.

#include <string>
#include <vector>

#include "diagnose/diagnostic.hpp"

namespace plumbrule::command {

/// What proving one file showed.
struct Proved {
  /// One example: what it is about ("512.3.1", "abrasion_loss"), its title, and what is not as expected.
  struct Case {
    std::string subject, title;
    diagnose::Diagnostics wrong;
  };
  std::string path;
  bool empty = false;            // it holds nothing that could be proved
  std::string summary;           // a line for people, with the branches without an example if they are wanted
  diagnose::Diagnostics faults;  // of the rules; without an example if they cannot be used
  std::vector<Case> cases;
  diagnose::Diagnostics remarks;
};

/// One suite a file: a case for the rules, an error if they are broken, and one for each example. Remarks are said and
/// are no failure, as they do not change the exit status.
[[nodiscard]] std::string proof_junit(const std::vector<Proved>& all, const source::SourceMap& sources);

}  // namespace plumbrule::command
