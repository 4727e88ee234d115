#pragma once
// What every report carries and no case is about: masked, so that a case changes with what it shows and not with each
// release, each edit of a shipped file or another wording of the caution. tests/digest holds what stands there.

#include <string>
#include <string_view>

namespace plumbrule::cases {

/// Digests as the program writes them ("sha256:" or a JSON name before 64 hexadecimal digits) become "<digest>"; one
/// that stands alone is left. The version after the program's name becomes "<version>"; the caution, wherever its lines
/// are broken, "<caution>".
[[nodiscard]] std::string masked(std::string_view text);

}  // namespace plumbrule::cases
