#pragma once
// Runs one command line in a folder, with a fixed environment, no standard input and a time limit.

#include <chrono>
#include <filesystem>
#include <string>
#include <vector>

namespace plumbrule::cases {

/// The most that is read of what a command prints, in bytes; printing more is a failure.
inline constexpr std::size_t most_printed = std::size_t{16} * 1024U * 1024U;

struct Ran {
  std::string output;
  std::string error;
  int status = 0;
  std::string trouble;  // crash, time limit, too much output, could not start; empty when it ended by itself
};

struct Order {
  std::string command;                   // for /bin/sh
  std::filesystem::path folder;          // where it runs
  std::filesystem::path scratch;         // where its output is kept meanwhile; not inside `folder`
  std::vector<std::string> environment;  // "NAME=value", the whole of it
  std::chrono::milliseconds limit{20'000};
};

/// Everything that the command started is ended before this returns.
[[nodiscard]] Ran run_shell(const Order& order);

}  // namespace plumbrule::cases
