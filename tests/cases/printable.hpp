#pragma once
// Makes what a command printed fit for a case file: the same on every machine, and readable.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace plumbrule::cases {

/// What is replaced by what: an absolute path by a name such as "<specs>".
using Replacements = std::vector<std::pair<std::string, std::string>>;

/// Replaces every occurrence, the longest text first. A replaced path must end there or go on with "/", so that
/// /work/specs is not found in /work/specs_old.
[[nodiscard]] std::string with_names(std::string_view text, Replacements replacements);

/// Control characters but line end and tab become their Unicode pictures, bytes that are not UTF-8 become "<xFF>".
[[nodiscard]] std::string printable(std::string_view text);

}  // namespace plumbrule::cases
