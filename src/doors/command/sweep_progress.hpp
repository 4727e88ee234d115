#pragma once
// How far a sweep is, on one line of a terminal; silent where standard error is none.

#include <chrono>
#include <cstdint>

namespace plumbrule::command {

class Progress {
 public:
  Progress();
  ~Progress();
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  Progress(Progress&&) = delete;
  Progress& operator=(Progress&&) = delete;

  void add(std::uint64_t records, std::uint64_t bytes);
  /// Makes room for other lines.
  void clear();

 private:
  bool terminal_;
  bool shown_ = false;
  std::uint64_t records_ = 0, bytes_ = 0;
  std::chrono::steady_clock::time_point begun_, last_;
};

}  // namespace plumbrule::command
