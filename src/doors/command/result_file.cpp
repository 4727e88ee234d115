#include "doors/command/result_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <utility>

#include "doors/command/output.hpp"

namespace plumbrule::command {
namespace {

constexpr mode_t anyone_may_read_and_write = 0666;  // less what the user's mask takes away

}  // namespace

ResultFile::ResultFile(std::string path) : path_(std::move(path)) {
  if (path_ == "-") {
    descriptor_ = STDOUT_FILENO;
    through_ = true;
  } else if (!path_.empty()) {
    open();
  }
}

void ResultFile::open() {
  std::error_code failure;
  if (std::filesystem::is_symlink(path_, failure)) {
    path_ = std::filesystem::weakly_canonical(path_, failure).string();
  }
  const auto status = std::filesystem::status(path_, failure);
  if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status)) {
    through_ = true;  // a device or a pipe cannot be replaced by a finished file
    descriptor_ = ::open(path_.c_str(), O_WRONLY | O_CLOEXEC);
  } else {
    temporary_ = path_ + ".part-" + std::to_string(getpid());
    const std::string folder = std::filesystem::path(path_).parent_path().string();
    descriptor_ =
        ::open(folder.empty() ? "." : folder.c_str(), O_TMPFILE | O_WRONLY | O_CLOEXEC, anyone_may_read_and_write);
    nameless_ = descriptor_ >= 0;
    if (!nameless_) {
      descriptor_ = ::open(temporary_.c_str(), O_CREAT | O_TRUNC | O_WRONLY | O_CLOEXEC, anyone_may_read_and_write);
    }
  }
  if (descriptor_ < 0) {
    fail();
  }
}

bool ResultFile::fail() {
  if (!failed_) {
    const std::string reason = std::strerror(errno);
    failed_ = true;
    print_error("cannot write " + (path_ == "-" ? std::string("to standard output") : "`" + path_ + "`") + ": " +
                reason);
  }
  return false;
}

bool ResultFile::write(std::string_view text) {
  if (path_.empty() || failed_) {
    return !failed_;
  }
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor_, text.data(), text.size());
    if (written < 0 && errno == EINTR) {
      continue;
    }
    if (written < 0) {
      return fail();
    }
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

bool ResultFile::commit() {
  if (path_.empty() || failed_ || through_) {
    return !failed_;
  }
  if (nameless_ && linkat(AT_FDCWD, ("/proc/self/fd/" + std::to_string(descriptor_)).c_str(), AT_FDCWD,
                          temporary_.c_str(), AT_SYMLINK_FOLLOW) != 0) {
    return fail();
  }
  if (::close(std::exchange(descriptor_, -1)) != 0 || std::rename(temporary_.c_str(), path_.c_str()) != 0) {
    fail();
    ::unlink(temporary_.c_str());
    return false;
  }
  temporary_.clear();
  return true;
}

ResultFile::~ResultFile() {
  if (descriptor_ >= 0 && path_ != "-") {
    ::close(descriptor_);
  }
  if (!temporary_.empty() && !nameless_) {
    ::unlink(temporary_.c_str());
  }
}

}  // namespace plumbrule::command
