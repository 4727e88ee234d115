#pragma once
// Parts that several JSON reports share. Internal to this folder.

#include <nlohmann/json.hpp>

#include "show/report/review/report.hpp"

namespace plumbrule::report {

using Json = nlohmann::ordered_json;

/// A word of ours as a value of JSON.
[[nodiscard]] inline std::string text_of(std::string_view view) { return std::string(view); }

/// What identifies the specification.
[[nodiscard]] Json head_json(const explain::SpecificationHead& one);
/// Errors or warnings.
[[nodiscard]] Json problems_json(const std::vector<Problem>& problems);
/// What identifies the submittal, its errors and the warnings about it. `report`: the name of the report's layout, with
/// its version.
[[nodiscard]] Json submittal_json(const std::string& report, const std::string& submittal,
                                  const evidence::Identity& who, const std::vector<Problem>& problems,
                                  const std::vector<Problem>& warnings);

}  // namespace plumbrule::report
