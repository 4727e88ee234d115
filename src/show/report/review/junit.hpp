#pragma once
// A review for integration servers.

#include "show/report/review/report.hpp"

namespace plumbrule::report {

/// One suite for the submittal (a case for each of its errors) and one for each specification (a case for each clause).
/// A clause that fails is a failure, one that is not shown an error: no server can take either for a pass. Advice and
/// optional tests that are not met are said and are neither, as in the outcome (language.md, section 10.5). There is a
/// failure or an error exactly if the exit status of the review is not 0.
[[nodiscard]] std::string junit(const Report& report);

}  // namespace plumbrule::report
