#pragma once
// Past submittals under two specifications: what would be judged otherwise.

#include <optional>
#include <string>
#include <vector>

#include "doors/command/rule_set.hpp"
#include "show/report/contrast/contrast.hpp"

namespace plumbrule::command {

/// The submittals below a folder: the files that `review` reads, and NDJSON with a record a line. Nothing if it holds
/// none, or cannot be read whole, which was said; none are asked for by an empty name.
[[nodiscard]] std::optional<std::vector<std::string>> filed_in(const std::string& folder);

/// Prints what is wrong with them. `read`: gets the files that were.
[[nodiscard]] std::vector<report::Filed> judge_filed(source::SourceMap& sources, const std::vector<RuleSet>& sets,
                                                     const contrast::Contrast& differences,
                                                     const std::vector<std::string>& paths,
                                                     std::vector<source::FileId>& read);

}  // namespace plumbrule::command
