#pragma once
// A review as a SARIF log, for tools that show findings beside the submittal.

#include "show/report/review/report.hpp"

namespace plumbrule::report {

/// A result for every clause that fails or is not shown, at the place in the submittal that decides it (the whole file
/// if nothing in it does) with the place of the requirement beside it, for every error of the submittal and every
/// finding of the audit. What keeps the outcome from "no exception taken" has the level error, or warning if it is left
/// to the engineer; advice and optional tests have the level note.
[[nodiscard]] std::string sarif(const Report& report, const source::SourceMap& sources);

}  // namespace plumbrule::report
