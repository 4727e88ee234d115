#pragma once
// A disagreement made small: clauses, results and entries are left out as long as it stays.

#include <filesystem>

#include "judge/evidence/document.hpp"
#include "made_rules.hpp"

namespace plumbrule::property {

struct Disagreement {
  RuleTexts rules;
  evidence::Node submittal;
  std::vector<oracle::Difference> differences;
};

/// Precondition: the two judges disagree.
[[nodiscard]] Disagreement shrink(const RuleTexts& rules, const evidence::Node& submittal);

/// Writes mix.plumb, spec.plumb, amend.plumb if there is one, trial.yaml, and what disagrees, to a fresh folder.
void write_reproduction(const Disagreement& found, const std::filesystem::path& folder);

}  // namespace plumbrule::property
