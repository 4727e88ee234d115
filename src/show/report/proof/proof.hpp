#pragma once
// What proving rule files showed, for people and for integration servers.

#include <string>
#include <vector>

#include "apply/proof/proof.hpp"

namespace plumbrule::report {

using proof::Proved;

/// A line a file for people, with the branches without an example if they are wanted.
[[nodiscard]] std::string proof_text(const std::vector<Proved>& all, bool show_missed);

/// All that was found, and for each file what was proved: {"diagnostics": [...], "proved": [...]}.
[[nodiscard]] std::string proof_json(const std::vector<Proved>& all, const diagnose::Diagnostics& diagnostics,
                                     const source::SourceMap& sources);

/// One suite a file: a case for the rules, an error if they are broken, and one for each example; sound rules without
/// an example have a case that is passed over. Remarks and branches without an example are said and are no failure, as
/// they do not change the exit status.
[[nodiscard]] std::string proof_junit(const std::vector<Proved>& all, const source::SourceMap& sources);

}  // namespace plumbrule::report
