#pragma once
// Rule files proved: checked, and their examples run.

#include <string>
#include <vector>

#include "base/diagnose/diagnostic.hpp"
#include "language/check/shelf.hpp"

namespace plumbrule::proof {

/// What proving one file showed.
struct Proved {
  /// One example: what it is about ("512.3.1", "abrasion_loss"), its title, and what is not as expected.
  struct Case {
    std::string subject, title;
    diagnose::Diagnostics wrong;
  };
  std::string path;
  std::string digest;          // "sha256:..." of the file; empty if it could not be read
  bool usable = false;         // the rules are sound; if not, none of the numbers below is known
  bool specification = false;  // has requirements, else only words for them
  std::size_t requirements = 0, measures = 0;
  std::size_t branches = 0;         // of the requirements; 0 without any
  std::vector<std::string> missed;  // branches that no example reaches, in words
  diagnose::Diagnostics faults;     // of the rules
  std::vector<Case> cases;
  diagnose::Diagnostics remarks;

  /// How many findings about its examples there are.
  [[nodiscard]] std::size_t wrong() const;
};

/// `libraries`: the folders in which vocabularies are found that do not stand beside the file.
[[nodiscard]] Proved prove(check::Shelf& shelf, const std::string& path, const std::vector<std::string>& libraries);

/// Whether sound rules hold neither a requirement nor a measure, which is no proof of anything: an error, added to the
/// first file and to `diagnostics`.
bool nothing_to_prove(std::vector<Proved>& all, diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::proof
