#pragma once
// Parts of what an envelope says. Internal to this folder.

#include "apply/contrast/demand.hpp"

namespace plumbrule::contrast {

/// "heavy, medium".
[[nodiscard]] std::string word_list(const std::set<std::string>& words);

/// "traffic heavy, medium; climate cold"; with exceptions ", except traffic light" behind.
[[nodiscard]] std::string classes_text(const Asked& classes);
[[nodiscard]] std::string classes_text(const Asked& classes, const std::vector<Asked>& exceptions);

/// Whether rounding lets less pass than the limit as printed. The ends of a tolerance lie where the job mix puts them.
[[nodiscard]] bool rounding_matters(const check::Limit& limit);

/// All ways to comply.
[[nodiscard]] std::string ways_text(const check::Rules& rules, const check::Case& one);

}  // namespace plumbrule::contrast
