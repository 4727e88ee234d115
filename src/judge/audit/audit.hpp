#pragma once
// The audit: what is odd about the readings of a submittal, beside the verdicts (language.md, section 16). It changes
// no verdict and no outcome. Everything that it says follows from the rules and the evidence.

#include <string>
#include <vector>

#include "base/diagnose/diagnostic.hpp"
#include "judge/explain/explanation.hpp"

namespace plumbrule::audit {

/// One finding. Texts follow the wording of diagnostics: lower case start, no final stop.
struct Finding {
  diagnose::Code code{};
  source::Span place;
  std::string found, expected, look;     // look: where the mistake may be; may be empty
  std::vector<diagnose::Label> related;  // further places
};

/// What was looked at. Lists of places, so that the inspections of several specifications can be joined.
struct Inspection {
  std::vector<Finding> findings;
  std::vector<source::Span> recomputed;  // results with readings whose values were computed again
  std::vector<source::Span> compared;    // results whose reported value was compared with the specimens
  std::vector<source::Span> tested;      // results whose replicates were tested for an outlier
  bool outliers = false;                 // the specification declares a significance
};

[[nodiscard]] Inspection inspect(const explain::Context& context);

/// Adds what is new in the other inspection; the same finding is kept once. Findings stand in reading order then.
void join(Inspection& all, Inspection other);

}  // namespace plumbrule::audit
