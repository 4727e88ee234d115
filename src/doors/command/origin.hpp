#pragma once
// Which files entered a report, with their digests.

#include <span>
#include <vector>

#include "doors/command/submission.hpp"
#include "show/report/parts/origin.hpp"

namespace plumbrule::command {

/// The submittals as they were named, then the files of each set: the specification, what it uses, its amendments. A
/// file that several sets share stands once.
[[nodiscard]] report::Origin origin_of(const source::SourceMap& sources, std::span<const RuleSet> sets,
                                       const std::vector<source::FileId>& submittals = {});

/// The same, with what was set aside.
[[nodiscard]] report::Origin origin_of(const source::SourceMap& sources, const RulesInForce& rules,
                                       const std::vector<source::FileId>& submittals = {});

}  // namespace plumbrule::command
