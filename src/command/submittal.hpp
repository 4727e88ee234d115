#pragma once
// Submittals as commands read them.

#include <optional>
#include <string>
#include <vector>

#include "command/rule_set.hpp"
#include "evidence/evidence.hpp"

namespace plumbrule::command {

/// Reads the file; what is wrong with it is printed. Nothing if it cannot be reviewed at all.
[[nodiscard]] std::optional<evidence::Node> read_submittal(source::SourceMap& sources, const std::string& path);

/// All names that one of the rule sets knows.
[[nodiscard]] evidence::KnownNames names_of(const std::vector<RuleSet>& sets);

}  // namespace plumbrule::command
