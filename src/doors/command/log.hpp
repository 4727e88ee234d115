#pragma once
// What the program does, on standard error, if asked for by `--log`. Never part of a report.

#include <memory>
#include <string>

namespace spdlog {
class logger;
}

namespace plumbrule::command {

class Log {
 public:
  /// Silent unless `wanted`.
  explicit Log(bool wanted);
  void note(const std::string& text) const;

 private:
  std::shared_ptr<spdlog::logger> logger_;
};

}  // namespace plumbrule::command
