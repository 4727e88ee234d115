#pragma once
// Which of the rules that were named take part in a review: those in force on its day.

#include <optional>
#include <string>
#include <vector>

#include "language/library/origin.hpp"
#include "language/library/rule_set.hpp"

namespace plumbrule::library {

/// Which rules: specifications or folders of them, amendments, folders of vocabularies, and the day ("" for all
/// amendments).
struct RuleChoice {
  std::vector<std::string> against, amendments, libraries;
  std::string on;
};

struct RulesInForce {
  std::vector<RuleSet> sets;
  std::string on;  // the day, if one was asked for
  std::vector<SetAside> aside;
};

/// Of several editions of one specification the one that was in force on the day. Nothing, with the errors, if a rule
/// file is broken, none is in force, or an amendment is about none of the specifications.
[[nodiscard]] std::optional<RulesInForce> choose(check::Shelf& shelf, const RuleChoice& choice,
                                                 diagnose::Diagnostics& diagnostics);

/// From the sets, with the day and what was set aside.
[[nodiscard]] Origin origin_of(const source::SourceMap& sources, const RulesInForce& rules,
                               const std::vector<source::FileId>& submittals = {});

}  // namespace plumbrule::library
