#pragma once
// What identifies the bytes of a file, so that a filed report can be held against the files that it was made from.

#include <string>
#include <string_view>

namespace plumbrule::source {

/// SHA-256 (FIPS 180-4) as 64 lower-case hexadecimal digits.
[[nodiscard]] std::string sha256(std::string_view bytes);

}  // namespace plumbrule::source
