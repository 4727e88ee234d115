#pragma once
// `plumbrule envelope`: what satisfies several specifications at once.

#include "doors/command/review.hpp"

namespace plumbrule::command {

struct EnvelopeOptions {
  std::vector<std::string> paths;
  std::vector<std::string> classes;  // "traffic=heavy"
  std::vector<std::string> libraries;
  std::string out;
  Format format = Format::text;
};

/// Exit status 0: no two limits exclude each other; 1: some do; 2: some could not be held against each other, or
/// something that is asked beside the limits is left out.
[[nodiscard]] Exit envelope(const EnvelopeOptions& options);

}  // namespace plumbrule::command
