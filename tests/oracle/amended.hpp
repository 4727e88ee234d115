#pragma once
// Amendments put into a specification, naively: one change after the other, by clause number.

#include <string>
#include <vector>

#include "language/syntax/tree.hpp"

namespace plumbrule::oracle {

/// The files with the amendments that are in force on the day (empty: all), earlier ones first. What does not fit is
/// left out; the engine's checks report it.
[[nodiscard]] std::vector<syntax::RuleFile> amended(std::vector<syntax::RuleFile> files,
                                                    const std::vector<syntax::RuleFile>& amendments,
                                                    const std::string& on);

}  // namespace plumbrule::oracle
