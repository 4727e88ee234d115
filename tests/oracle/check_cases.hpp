#pragma once
// Every `plumbrule review` of the case files (tests/cases/case_file.hpp) below a folder, judged twice.

#include <filesystem>
#include <ostream>

namespace plumbrule::oracle {

/// Reports to `out`; true when there is no difference and at least one review was compared. Runs that end in an error
/// of the rules or of the command line (status 3 or 4) are counted, not compared.
[[nodiscard]] bool check_cases(const std::filesystem::path& folder, const std::filesystem::path& root,
                               std::ostream& out);

}  // namespace plumbrule::oracle
