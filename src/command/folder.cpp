#include "command/folder.hpp"

#include <algorithm>
#include <filesystem>
#include <set>

namespace plumbrule::command {

namespace fs = std::filesystem;

std::string ending(const std::string& path) {
  std::string out = fs::path(path).extension().string();
  for (char& byte : out) {
    byte = byte >= 'A' && byte <= 'Z' ? static_cast<char>(byte - 'A' + 'a') : byte;
  }
  return out;
}

bool is_folder(const std::string& path) {
  std::error_code failure;
  return fs::is_directory(path, failure);
}

std::vector<std::string> files_below(const std::string& folder, const WantedPath& wanted,
                                     diagnose::Diagnostics& diagnostics) {
  std::vector<std::string> out;
  std::error_code failure;
  std::string reached = folder;
  std::set<fs::path> entered{fs::canonical(folder, failure)};
  fs::recursive_directory_iterator at(folder, fs::directory_options::follow_directory_symlink, failure);
  for (const fs::recursive_directory_iterator end; !failure && at != end; at.increment(failure)) {
    reached = at->path().string();
    if (is_folder(reached)) {
      if (!entered.insert(fs::canonical(reached, failure)).second) {
        at.disable_recursion_pending();
      }
    } else if (wanted(reached)) {
      out.push_back(reached);
    }
  }
  if (failure) {
    diagnostics.error(diagnose::Code::file_unreadable, {},
                      "cannot read the folder `" + folder + "` whole: " + failure.message() + ", at `" + reached + "`",
                      "check the rights and the links below it, or name the files");
  }
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace plumbrule::command
