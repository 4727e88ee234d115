#pragma once
// From rule files to checked rules.

#include <optional>
#include <string>
#include <vector>

#include "check/rules.hpp"

namespace plumbrule::check {

/// Reads a rule file and the vocabularies that it uses. `uses NAME` is looked for as NAME.plumb in the folder of the
/// file, in its `vocabulary` subfolder, beside its parent, and then in each library folder.
[[nodiscard]] std::vector<syntax::RuleFile> load(source::SourceMap& sources, const std::string& path,
                                                 const std::vector<std::string>& libraries,
                                                 diagnose::Diagnostics& diagnostics);

/// Resolves and checks. Nothing if any error was reported (also before, while reading); all errors are reported.
[[nodiscard]] std::optional<Rules> check(const source::SourceMap& sources, const std::vector<syntax::RuleFile>& files,
                                         diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::check
