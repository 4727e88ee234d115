#pragma once
// The windows of a trial series under several specifications: the whole of what `window` reports.

#include <optional>
#include <string>
#include <vector>

#include "apply/window/report.hpp"
#include "judge/assess/assessment.hpp"
#include "judge/evidence/records.hpp"
#include "language/library/in_force.hpp"

namespace plumbrule::window {

struct Windows {
  std::string submittal;
  evidence::Identity identity;
  std::vector<diagnose::Problem> problems;
  std::vector<diagnose::Problem> warnings;
  std::vector<SpecificationWindows> specifications;
  library::Origin origin;
};

/// What is asked about the windows.
struct Question {
  std::string vary;       // a design value; empty: each that results vary with `at`
  std::string tolerance;  // of production about the job mix, as written: "0.5 %"; or empty
  bool curve = false;     // also a parabola of least squares, for comparison
};

/// No windows, and the reason fit to print, if the question fits none of the specifications (`misfit`) or the document
/// is no submittal (`problems` says why).
struct Sought {
  std::optional<Windows> windows;
  diagnose::Diagnostics problems;
  std::string misfit;
};
[[nodiscard]] Sought seek(const source::SourceMap& sources, const library::RulesInForce& rules,
                          const evidence::SubmittalRecord& submittal, const Question& question);

/// language.md, section 15.8.
[[nodiscard]] assess::Upshot upshot(const Windows& windows);

}  // namespace plumbrule::window
