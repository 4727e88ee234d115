#pragma once
// What lies below a folder. Nothing of it is passed over in silence: a part that cannot be read is an error.

#include <functional>
#include <string>
#include <vector>

#include "base/diagnose/diagnostic.hpp"

namespace plumbrule::command {

using WantedPath = std::function<bool(const std::string& path)>;

/// The files below a folder that are wanted, sorted; linked folders are followed, each folder once. An error
/// (file_unreadable) if some of it cannot be read: what was found is then not the whole.
[[nodiscard]] std::vector<std::string> files_below(const std::string& folder, const WantedPath& wanted,
                                                   diagnose::Diagnostics& diagnostics);

[[nodiscard]] bool is_folder(const std::string& path);

/// ".yaml" of "a/B.YAML", in small letters: what a file is does not depend on how its ending is spelt.
[[nodiscard]] std::string ending(const std::string& path);

}  // namespace plumbrule::command
