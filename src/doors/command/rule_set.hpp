#pragma once
// Rule files made ready: load, check, compile.

#include <optional>
#include <string>
#include <vector>

#include "language/check/check.hpp"
#include "language/plan/plan.hpp"

namespace plumbrule::command {

struct RuleSet {
  std::string path;
  check::Rules rules;
  plan::Plan plan;
  std::vector<source::FileId> amendments;       // that were given, in force or not
  diagnose::Diagnostics mismatches;             // amendments that are about another specification
  std::vector<check::Loaded::Fitting> fitting;  // of the amendments: those about this specification
  bool by_name = true;                          // asked for itself, and not found in a folder
};

/// The folders in which vocabularies are found when a rule file does not have them beside it: those of the user, then
/// the installed one, then the one of the source tree.
[[nodiscard]] std::vector<std::string> library_folders(const std::vector<std::string>& given);

/// The rule files among the paths: of a folder all files below it, sorted. A folder without any, or one that cannot be
/// read whole, is an error.
[[nodiscard]] std::vector<std::string> rule_files(const std::vector<std::string>& paths,
                                                  diagnose::Diagnostics& diagnostics);

/// As rule_files, but of a folder only the specifications: vocabularies and amendments are passed over.
[[nodiscard]] std::vector<std::string> specifications_in(const std::vector<std::string>& paths,
                                                         diagnose::Diagnostics& diagnostics);

/// Nothing if an error was reported.
[[nodiscard]] std::optional<RuleSet> prepare(source::SourceMap& sources, const check::Request& request,
                                             const std::string& on, diagnose::Diagnostics& diagnostics);

/// As prepare; a vocabulary on its own is an error.
[[nodiscard]] std::optional<RuleSet> prepare_specification(source::SourceMap& sources, const check::Request& request,
                                                           const std::string& on, diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::command
