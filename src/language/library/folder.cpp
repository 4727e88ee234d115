#include "language/library/folder.hpp"

namespace plumbrule::library {

bool is_folder(const source::Files& files, const std::string& path) {
  return files.find(path) == source::Found::folder;
}

// A link that leads nowhere is reported by whoever reads it.
std::vector<std::string> files_below(const source::Files& files, const std::string& folder, const WantedPath& wanted,
                                     diagnose::Diagnostics& diagnostics) {
  const source::Below below = files.below(folder);
  std::vector<std::string> out;
  for (const std::string& path : below.paths) {
    if (!wanted(path)) {
      continue;
    }
    if (files.find(path) == source::Found::other) {
      diagnostics.error(diagnose::Code::file_unreadable, {},
                        "cannot read `" + path + "`: it is neither file nor folder",
                        "take it out of the folder, or give it another ending");
    } else {
      out.push_back(path);
    }
  }
  if (!below.failure.empty()) {
    diagnostics.error(
        diagnose::Code::file_unreadable, {},
        "cannot read the folder `" + folder + "` whole: " + below.failure + ", at `" + below.reached + "`",
        "check the rights and the links below it, or name the files");
  }
  return out;
}

}  // namespace plumbrule::library
