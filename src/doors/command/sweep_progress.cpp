#include "doors/command/sweep_progress.hpp"

#include <unistd.h>

#include <cinttypes>
#include <cstdio>

namespace plumbrule::command {
namespace {

constexpr std::chrono::milliseconds between_two{250};
constexpr std::uint64_t megabyte = 1'000'000;

}  // namespace

Progress::Progress() : terminal_(isatty(STDERR_FILENO) == 1), begun_(std::chrono::steady_clock::now()), last_(begun_) {}

Progress::~Progress() { clear(); }

void Progress::add(std::uint64_t records, std::uint64_t bytes) {
  records_ += records;
  bytes_ += bytes;
  const auto now = std::chrono::steady_clock::now();
  if (!terminal_ || now - last_ < between_two) {
    return;
  }
  last_ = now;
  shown_ = true;
  const double seconds = std::chrono::duration<double>(now - begun_).count();
  std::fprintf(stderr, "\r%" PRIu64 " records, %" PRIu64 " MB, %.0f records/s ", records_, bytes_ / megabyte,
               static_cast<double>(records_) / seconds);
  std::fflush(stderr);
}

void Progress::clear() {
  if (shown_) {
    std::fputs("\r\033[K", stderr);
    shown_ = false;
  }
}

}  // namespace plumbrule::command
