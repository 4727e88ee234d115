#pragma once
// Lines of text reports.

#include <string>

namespace plumbrule::report {

/// "name          value", or nothing of an empty value; what the user wrote is made fit for a terminal.
[[nodiscard]] std::string heading(const std::string& name, const std::string& value);
/// "      name: value", or nothing of an empty value.
[[nodiscard]] std::string detail(const std::string& name, const std::string& value);

}  // namespace plumbrule::report
