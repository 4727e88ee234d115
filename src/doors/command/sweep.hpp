#pragma once
// `plumbrule sweep`: an archive of submittals against specifications.

#include <cstdint>

#include "apply/sweep/verdict_line.hpp"
#include "doors/command/review.hpp"
#include "doors/command/workplace.hpp"

namespace plumbrule::command {

enum class Lining : std::uint8_t { by_name, ndjson, csv };

struct SweepOptions {
  std::vector<std::string> archives;  // files, folders, or "-" for standard input
  library::RuleChoice rules;
  std::string verdicts;  // a file, "-" for standard output, or empty
  sweep::VerdictForm verdict_form = sweep::VerdictForm::ndjson;
  Lining lining = Lining::by_name;
  Format format = Format::text;
  std::string out;
  std::uint32_t threads = 0;           // 0: as many as the machine has cores
  std::vector<std::string> summaries;  // add these up instead
  bool in_full = false;                // every record by the evaluator
  bool digests = false;                // of the files of the archive
};

/// Exit status 0: all records comply with all specifications; 1: something fails; 2: something is not shown, or a
/// record is unreadable or has errors; 3, 4 as everywhere.
[[nodiscard]] Exit sweep(const SweepOptions& options);

}  // namespace plumbrule::command
