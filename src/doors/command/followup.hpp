#pragma once
// `plumbrule follow-up`: a resubmittal against the submittal before it (language.md, section 18).

#include "doors/command/review.hpp"
#include "doors/command/workplace.hpp"

namespace plumbrule::command {

struct FollowUpOptions {
  std::string before, after;
  std::string record_before, record_after;  // of a sheet of several, or empty
  library::RuleChoice rules;
  std::string out;  // a file, or empty
  Format format = Format::text;
};

/// Exit status: that of the review of `after`; at least 1 unless every finding of `before` is closed.
[[nodiscard]] Exit follow_up(const FollowUpOptions& options);

}  // namespace plumbrule::command
