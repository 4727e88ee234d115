#pragma once
// Generated rules, parsed, checked and ready for both judges, without touching a file.

#include "oracle/engine.hpp"
#include "rules_writer.hpp"

namespace plumbrule::property {

struct MadeRules {
  RuleTexts texts;
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  std::unique_ptr<oracle::RuleSet> rules;  // nothing: the checks reported errors
};

[[nodiscard]] std::unique_ptr<MadeRules> make_rules(RuleTexts texts);
/// With so many clauses, from one seed.
[[nodiscard]] std::unique_ptr<MadeRules> make_rules(std::uint64_t seed, std::size_t clauses);
/// The errors as printed, for a generated set that is not well typed.
[[nodiscard]] std::string errors_of(const MadeRules& made);

}  // namespace plumbrule::property
