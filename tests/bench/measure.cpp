// Runs a command and says what it cost.
// Usage: measure OUTPUT COMMAND [ARGUMENT...]
// The standard output of the command goes to the file OUTPUT. Prints on standard output, apart by tabs: seconds on the
// clock, seconds of CPU (its own and the system's, all threads), greatest resident memory in KiB, exit status.
#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>

namespace {

double seconds(const timeval& time) {
  return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
}

// Only in the child; does not return.
[[noreturn]] void become(const char* output, char** command) {
  const int file = open(output, O_WRONLY | O_CREAT | O_TRUNC, 0666);
  if (file >= 0 && dup2(file, STDOUT_FILENO) >= 0) {
    execvp(command[0], command);
  }
  std::perror(command[0]);
  _exit(127);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) {
    std::fputs("usage: measure OUTPUT COMMAND [ARGUMENT...]\n", stderr);
    return 2;
  }
  const auto start = std::chrono::steady_clock::now();
  const pid_t child = fork();
  if (child == 0) {
    become(argv[1], argv + 2);
  }
  int status = 0;
  rusage usage{};
  if (child < 0 || wait4(child, &status, 0, &usage) != child) {
    std::perror("measure");
    return 1;
  }
  const double clock = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  std::printf("%.4f\t%.4f\t%ld\t%d\n", clock, seconds(usage.ru_utime) + seconds(usage.ru_stime), usage.ru_maxrss,
              WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status));
  return 0;
}
