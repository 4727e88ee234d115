#pragma once
// Carries out one case file and compares what its commands print with what the file expects.

#include <chrono>
#include <filesystem>
#include <string>
#include <vector>

namespace plumbrule::cases {

struct Setting {
  std::filesystem::path plumbrule;  // the program under test, absolute
  std::filesystem::path root;       // the repository, absolute
  std::chrono::milliseconds limit{20'000};
  bool record = false;  // rewrite what is expected
};

struct Outcome {
  bool passed = false;
  bool rewritten = false;
  std::string report;  // what is wrong, line by line; empty when passed
};

/// Writes only in a fresh temporary folder, and, when recording, the case file itself. A crash, a run over the limit
/// and a malformed case fail even when recording, and leave the file as it was.
[[nodiscard]] Outcome run_case(const std::filesystem::path& file, const Setting& setting);

/// The numbered sections that a case file cites; none for a malformed one, which run_case reports.
[[nodiscard]] std::vector<std::string> cited_sections(const std::filesystem::path& file);

}  // namespace plumbrule::cases
