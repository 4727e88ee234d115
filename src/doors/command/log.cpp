#include "doors/command/log.hpp"

#include <spdlog/logger.h>
#include <spdlog/sinks/stdout_sinks.h>

namespace plumbrule::command {

Log::Log(bool wanted) {
  if (wanted) {
    logger_ = std::make_shared<spdlog::logger>("plumbrule", std::make_shared<spdlog::sinks::stderr_sink_st>());
    logger_->set_pattern("%n %o ms: %v");
  }
}

void Log::note(const std::string& text) const {
  if (logger_) {
    logger_->info(text);
  }
}

}  // namespace plumbrule::command
