#include "shell.hpp"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstring>
#include <fstream>
#include <optional>
#include <thread>

namespace plumbrule::cases {
namespace {

using Clock = std::chrono::steady_clock;

/// What posix_spawn does in the child before the shell starts.
class Preparation {
 public:
  Preparation(const Order& order, const std::string& output, const std::string& error) {
    posix_spawn_file_actions_init(&actions_);
    posix_spawn_file_actions_addopen(&actions_, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    posix_spawn_file_actions_addopen(&actions_, STDOUT_FILENO, output.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    posix_spawn_file_actions_addopen(&actions_, STDERR_FILENO, error.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    posix_spawn_file_actions_addchdir_np(&actions_, order.folder.c_str());
    posix_spawnattr_init(&attributes_);
    // A process group of its own, so that whatever the command starts can be ended with it.
    posix_spawnattr_setflags(&attributes_, POSIX_SPAWN_SETPGROUP);
    posix_spawnattr_setpgroup(&attributes_, 0);
  }
  ~Preparation() {
    posix_spawn_file_actions_destroy(&actions_);
    posix_spawnattr_destroy(&attributes_);
  }
  Preparation(const Preparation&) = delete;
  Preparation& operator=(const Preparation&) = delete;

  [[nodiscard]] const posix_spawn_file_actions_t* actions() const { return &actions_; }
  [[nodiscard]] const posix_spawnattr_t* attributes() const { return &attributes_; }

 private:
  posix_spawn_file_actions_t actions_{};
  posix_spawnattr_t attributes_{};
};

std::vector<char*> pointers(std::vector<std::string>& texts) {
  std::vector<char*> result;
  result.reserve(texts.size() + 1);
  for (std::string& text : texts) {
    result.push_back(text.data());
  }
  result.push_back(nullptr);
  return result;
}

/// True when the process ends within the limit. It is not reaped, so its number cannot be given to another one.
bool ends_within(pid_t process, std::chrono::milliseconds limit) {
  const auto until = Clock::now() + limit;
  auto pause = std::chrono::microseconds(200);
  while (Clock::now() < until) {
    siginfo_t ended{};
    waitid(P_PID, static_cast<id_t>(process), &ended, WEXITED | WNOHANG | WNOWAIT);
    if (ended.si_pid == process) {
      return true;
    }
    std::this_thread::sleep_for(pause);
    pause = std::min(pause * 2, std::chrono::microseconds(5'000));
  }
  return false;
}

/// How the process ended, or nothing when it had to be ended. Its whole group ends with it.
std::optional<int> wait_for(pid_t process, std::chrono::milliseconds limit) {
  const bool in_time = ends_within(process, limit);
  kill(-process, SIGKILL);
  int how = 0;
  waitpid(process, &how, 0);
  return in_time ? std::optional(how) : std::nullopt;
}

std::string read_printed(const std::string& path, std::string& trouble) {
  std::ifstream stream(path, std::ios::binary);
  std::string text(most_printed, '\0');
  stream.read(text.data(), static_cast<std::streamsize>(text.size()));
  text.resize(static_cast<std::size_t>(stream.gcount()));
  if (text.size() == most_printed) {
    trouble = "it prints more than 16 MiB";
  }
  return text;
}

std::string signal_text(int number) { return "it crashed: " + std::string(strsignal(number)); }

void judge_end(std::optional<int> how, const Order& order, Ran& ran) {
  constexpr int signal_base = 128;  // a shell reports a child that died by signal n as 128 + n
  if (!how) {
    ran.trouble = "it ran longer than " + std::to_string(order.limit.count()) + " ms and was ended";
  } else if (WIFSIGNALED(*how)) {
    ran.trouble = signal_text(WTERMSIG(*how));
  } else {
    ran.status = WEXITSTATUS(*how);
    if (ran.status > signal_base && ran.status <= signal_base + SIGSYS) {
      ran.trouble = signal_text(ran.status - signal_base);
    }
  }
}

}  // namespace

Ran run_shell(const Order& order) {
  Ran ran;
  const std::string output = order.scratch / "standard_output";
  const std::string error = order.scratch / "standard_error";
  const Preparation preparation(order, output, error);
  std::vector<std::string> words = {"/bin/sh", "-c", order.command};
  std::vector<std::string> environment = order.environment;
  pid_t process = 0;
  const int failure = posix_spawn(&process, "/bin/sh", preparation.actions(), preparation.attributes(),
                                  pointers(words).data(), pointers(environment).data());
  if (failure != 0) {
    ran.trouble = std::string("it could not be started: ") + std::strerror(failure);
    return ran;
  }
  judge_end(wait_for(process, order.limit), order, ran);
  ran.output = read_printed(output, ran.trouble);
  ran.error = read_printed(error, ran.trouble);
  return ran;
}

}  // namespace plumbrule::cases
