#pragma once
// What lies below a folder. Nothing of it is passed over in silence: a part that cannot be read is an error.

#include <functional>
#include <string>
#include <vector>

#include "base/diagnose/diagnostic.hpp"
#include "base/source/files.hpp"

namespace plumbrule::library {

using WantedPath = std::function<bool(const std::string& path)>;

/// The files below a folder that are wanted, sorted; linked folders are followed, each folder once. An error
/// (file_unreadable) if some of it cannot be read, or is wanted and no file: what was found is then not the whole.
[[nodiscard]] std::vector<std::string> files_below(const source::Files& files, const std::string& folder,
                                                   const WantedPath& wanted, diagnose::Diagnostics& diagnostics);

[[nodiscard]] bool is_folder(const source::Files& files, const std::string& path);

}  // namespace plumbrule::library
