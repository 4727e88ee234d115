#pragma once
// What proving rule files showed, for people and for integration servers.

#include <string>
#include <vector>

#include "base/diagnose/diagnostic.hpp"

namespace plumbrule::command {

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

/// A line a file for people, with the branches without an example if they are wanted.
[[nodiscard]] std::string proof_text(const std::vector<Proved>& all, bool show_missed);

/// All that was found, and for each file what was proved: {"diagnostics": [...], "proved": [...]}.
[[nodiscard]] std::string proof_json(const std::vector<Proved>& all, const diagnose::Diagnostics& diagnostics,
                                     const source::SourceMap& sources);

/// One suite a file: a case for the rules, an error if they are broken, and one for each example; sound rules without
/// an example have a case that is passed over. Remarks and branches without an example are said and are no failure, as
/// they do not change the exit status.
[[nodiscard]] std::string proof_junit(const std::vector<Proved>& all, const source::SourceMap& sources);

}  // namespace plumbrule::command
