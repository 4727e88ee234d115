#pragma once
// The version of the program and of the library, which every report names.

#include <string_view>

namespace plumbrule::source {

/// "0.1.0".
[[nodiscard]] std::string_view version();

}  // namespace plumbrule::source
