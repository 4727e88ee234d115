#include "base/source/files.hpp"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <set>
#include <system_error>

#include "base/source/source.hpp"

namespace plumbrule::source {

namespace fs = std::filesystem;

namespace {

std::string normal(const std::string& path) {
  std::string out = fs::path(path).lexically_normal().string();
  return out.size() > 1 && out.back() == '/' ? out.substr(0, out.size() - 1) : out;
}

// What stands below a folder begins with this; everything lies below the empty one.
std::string stem_of(const std::string& folder) {
  const std::string path = normal(folder);
  return path.empty() || path == "." ? "" : path + "/";
}

}  // namespace

FileText Disk::read(const std::string& path) const { return read_file(path); }

Found Disk::find(const std::string& path) const {
  std::error_code failure;
  switch (fs::status(path, failure).type()) {
    case fs::file_type::regular:
      return Found::file;
    case fs::file_type::directory:
      return Found::folder;
    case fs::file_type::fifo:
    case fs::file_type::socket:
    case fs::file_type::character:
    case fs::file_type::block:
      return Found::other;
    default:
      return Found::nothing;
  }
}

Below Disk::below(const std::string& folder) const {
  Below out;
  std::error_code failure;
  out.reached = folder;
  std::set<fs::path> entered{fs::canonical(folder, failure)};
  fs::recursive_directory_iterator at(folder, fs::directory_options::follow_directory_symlink, failure);
  for (const fs::recursive_directory_iterator end; !failure && at != end; at.increment(failure)) {
    out.reached = at->path().string();
    if (find(out.reached) != Found::folder) {
      out.paths.push_back(out.reached);
      continue;
    }
    const fs::path real = fs::canonical(out.reached, failure);
    if (failure) {
      break;
    }
    if (!entered.insert(real).second) {
      at.disable_recursion_pending();
    }
  }
  out.failure = failure ? failure.message() : "";
  std::sort(out.paths.begin(), out.paths.end());
  return out;
}

void Memory::put(const std::string& path, std::string text) { texts_.insert_or_assign(normal(path), std::move(text)); }

bool Memory::remove(const std::string& path) { return texts_.erase(normal(path)) > 0; }

FileText Memory::read(const std::string& path) const {
  const auto found = texts_.find(normal(path));
  if (found == texts_.end()) {
    return {std::nullopt, find(path) == Found::folder ? "it is a folder, not a file" : "no such file"};
  }
  if (found->second.size() > largest_file) {
    return {std::nullopt, "it is larger than 256 MiB"};
  }
  return {found->second, {}};
}

Found Memory::find(const std::string& path) const {
  if (texts_.count(normal(path)) > 0) {
    return Found::file;
  }
  const std::string stem = stem_of(path);
  const auto next = texts_.lower_bound(stem);
  return next != texts_.end() && next->first.starts_with(stem) ? Found::folder : Found::nothing;
}

Below Memory::below(const std::string& folder) const {
  Below out;
  const std::string stem = stem_of(folder);
  for (auto at = texts_.lower_bound(stem); at != texts_.end() && at->first.starts_with(stem); ++at) {
    out.paths.push_back(at->first);
  }
  return out;
}

FileText read_file(const std::string& path) {
  std::error_code failure;
  const auto status = fs::status(path, failure);
  if (!fs::exists(status)) {
    return {std::nullopt, "no such file"};
  }
  if (fs::is_directory(status)) {
    return {std::nullopt, "it is a folder, not a file"};
  }
  std::ifstream stream(path, std::ios::binary);
  if (!stream) {
    return {std::nullopt, std::strerror(errno)};
  }
  std::string text;
  std::string block(1U << 16U, '\0');
  while (stream.read(block.data(), static_cast<std::streamsize>(block.size())) || stream.gcount() > 0) {
    text.append(block, 0, static_cast<std::size_t>(stream.gcount()));
    if (text.size() > largest_file) {
      return {std::nullopt, "it is larger than 256 MiB"};
    }
  }
  if (stream.bad()) {
    return {std::nullopt, "reading stopped half-way"};
  }
  return {std::move(text), {}};
}

std::string ending(const std::string& path) {
  std::string out = fs::path(path).extension().string();
  for (char& byte : out) {
    byte = byte >= 'A' && byte <= 'Z' ? static_cast<char>(byte - 'A' + 'a') : byte;
  }
  return out;
}

}  // namespace plumbrule::source
