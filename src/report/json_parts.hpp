#pragma once
// Parts that several JSON reports share. Internal to this folder.

#include <nlohmann/json.hpp>

#include "report/report.hpp"

namespace plumbrule::report {

using Json = nlohmann::ordered_json;

/// What identifies the specification.
[[nodiscard]] Json head_json(const explain::SpecificationHead& one);
/// What identifies the submittal, and its errors. `report`: the name of the report's layout, with its version.
[[nodiscard]] Json submittal_json(const std::string& report, const std::string& submittal,
                                  const evidence::Identity& who, const std::vector<Problem>& problems);

}  // namespace plumbrule::report
