#pragma once
// What a command works on: the disk, the texts that were read from it, and the rules among them, each read once. What
// is wrong is printed here.

#include <optional>
#include <string>
#include <vector>

#include "base/source/files.hpp"
#include "doors/command/output.hpp"
#include "judge/assess/assessment.hpp"
#include "judge/evidence/records.hpp"
#include "language/library/in_force.hpp"

namespace plumbrule::command {

struct Workplace {
  source::Disk files;
  source::SourceMap sources;
  check::Shelf shelf{sources, files};
};

/// The folders in which vocabularies are found when a rule file does not have them beside it: those of the user, then
/// the one that the program came with.
[[nodiscard]] std::vector<std::string> library_folders(const std::vector<std::string>& given);

/// Nothing if a rule file is broken or none is in force. `choice.libraries`: those of the user.
[[nodiscard]] std::optional<library::RulesInForce> rules_in_force(Workplace& place, const library::RuleChoice& choice);

/// Nothing if the file is no submittal.
[[nodiscard]] std::optional<evidence::SubmittalRecord> read_submittal(Workplace& place, const std::string& path,
                                                                      const evidence::RecordChoice& choice);

/// False if a day was asked for that is none. `option`: in front of "no date".
[[nodiscard]] bool is_day(const std::string& on, const std::string& option = {});

[[nodiscard]] Exit exit_of(assess::Upshot upshot);

}  // namespace plumbrule::command
