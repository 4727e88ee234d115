#pragma once
// Rule files made ready: load, check, compile.

#include <optional>
#include <string>
#include <vector>

#include "language/check/check.hpp"
#include "language/check/shelf.hpp"
#include "language/plan/plan.hpp"

namespace plumbrule::library {

struct RuleSet {
  std::string path;
  check::Rules rules;
  plan::Plan plan;
  std::vector<source::FileId> amendments;       // that were given, in force or not
  diagnose::Diagnostics mismatches;             // amendments that are about another specification
  std::vector<check::Loaded::Fitting> fitting;  // of the amendments: those about this specification
  bool by_name = true;                          // asked for itself, and not found in a folder
};

/// The rule files among the paths: of a folder all files below it, sorted. A folder without any, or one that cannot be
/// read whole, is an error.
[[nodiscard]] std::vector<std::string> rule_files(const check::Shelf& shelf, const std::vector<std::string>& paths,
                                                  diagnose::Diagnostics& diagnostics);

/// As rule_files, but of a folder only the specifications: vocabularies and amendments are passed over.
[[nodiscard]] std::vector<std::string> specifications_in(check::Shelf& shelf, const std::vector<std::string>& paths,
                                                         diagnose::Diagnostics& diagnostics);

/// Nothing if an error was reported.
[[nodiscard]] std::optional<RuleSet> prepare(check::Shelf& shelf, const check::Request& request, const std::string& on,
                                             diagnose::Diagnostics& diagnostics);

/// As prepare; a vocabulary on its own is an error.
[[nodiscard]] std::optional<RuleSet> prepare_specification(check::Shelf& shelf, const check::Request& request,
                                                           const std::string& on, diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::library
