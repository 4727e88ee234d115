#pragma once
// What every command needs that puts a submittal before specifications: the rules in force, the submittal read, and
// errors that several specifications meet reported once.

#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "doors/command/output.hpp"
#include "doors/command/records.hpp"
#include "doors/command/rule_set.hpp"
#include "judge/evidence/evidence.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::command {

/// Which rules: specifications, amendments, folders of vocabularies, and the day ("" for all amendments).
struct RuleChoice {
  std::vector<std::string> against, amendments, libraries;
  std::string on;
};

struct RulesInForce {
  std::vector<RuleSet> sets;
  std::string on;  // the day, if one was asked for
  std::vector<report::SetAside> aside;
};

/// Prints what is wrong, and what is set aside; nothing if a rule file is broken or none is in force.
[[nodiscard]] std::optional<RulesInForce> prepare_all(source::SourceMap& sources, const RuleChoice& choice);
/// Prints what is wrong; nothing if the file is no submittal. `record`: which, of a sheet of several (records.hpp).
[[nodiscard]] std::optional<SubmittalRecord> read_submittal(source::SourceMap& sources, const std::string& path,
                                                            const std::string& record = {},
                                                            const std::string& option = "--record");
[[nodiscard]] evidence::KnownNames names_of(const std::vector<RuleSet>& sets);
/// Those of one severity, for the report.
[[nodiscard]] std::vector<report::Problem> problems_of(const diagnose::Diagnostics& problems,
                                                       diagnose::Severity severity, const source::SourceMap& sources);

/// What identifies the specification in a report.
[[nodiscard]] explain::SpecificationHead head_of(const RuleSet& set);

/// The same error is met once for each specification; it is reported once.
class Merged {
 public:
  void add(const diagnose::Diagnostics& from);
  diagnose::Diagnostics take();

 private:
  diagnose::Diagnostics all_;
  std::set<std::tuple<diagnose::Code, source::FileId, std::uint32_t, std::uint32_t>> seen_;
};

}  // namespace plumbrule::command
