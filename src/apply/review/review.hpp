#pragma once
// The product: a submittal reviewed against specifications. Every door calls this.

#include <optional>

#include "apply/review/report.hpp"
#include "judge/evidence/records.hpp"
#include "language/library/in_force.hpp"

namespace plumbrule::review {

/// The report, whole, and everything that was found wrong with the submittal (errors and warnings, each once). No
/// report if the document is no submittal at all.
struct Reviewed {
  std::optional<Report> report;
  diagnose::Diagnostics problems;
};

/// `sources` holds the rules and the submittal. `rules.on` is the day of the review; without one all amendments are in
/// force and the submittal's own date counts.
[[nodiscard]] Reviewed review(const source::SourceMap& sources, const library::RulesInForce& rules,
                              const evidence::SubmittalRecord& submittal);

}  // namespace plumbrule::review
