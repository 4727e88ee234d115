#include "doors/command/folder.hpp"

#include <algorithm>
#include <filesystem>
#include <set>

namespace plumbrule::command {

namespace fs = std::filesystem;

namespace {

// A pipe or a device would be waited for. A link that leads nowhere is reported by whoever reads it.
bool is_file(const std::string& path, diagnose::Diagnostics& diagnostics) {
  std::error_code failure;
  const fs::file_type type = fs::status(path, failure).type();
  const bool other = type == fs::file_type::fifo || type == fs::file_type::socket || type == fs::file_type::character ||
                     type == fs::file_type::block;
  if (other) {
    diagnostics.error(diagnose::Code::file_unreadable, {}, "cannot read `" + path + "`: it is neither file nor folder",
                      "take it out of the folder, or give it another ending");
  }
  return !other;
}

}  // namespace

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
    if (!is_folder(reached)) {
      if (wanted(reached) && is_file(reached, diagnostics)) {
        out.push_back(reached);
      }
      continue;
    }
    const fs::path real = fs::canonical(reached, failure);
    if (failure) {
      break;
    }
    if (!entered.insert(real).second) {
      at.disable_recursion_pending();
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
