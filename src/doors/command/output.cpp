#include "doors/command/output.hpp"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>

#include "base/diagnose/quote.hpp"
#include "base/diagnose/render.hpp"

namespace plumbrule::command {
namespace {

bool colour(int descriptor) {
  const char* const refused = std::getenv("NO_COLOR");
  return isatty(descriptor) == 1 && (refused == nullptr || *refused == '\0');
}

bool write_file(const std::string& text, const std::string& path) {
  const std::string temporary = path + ".part-" + std::to_string(getpid());
  std::ofstream stream(temporary, std::ios::binary | std::ios::trunc);
  stream.write(text.data(), static_cast<std::streamsize>(text.size()));
  stream.close();
  std::error_code failure;
  if (stream) {
    std::filesystem::rename(temporary, path, failure);
  }
  if (!stream || failure) {
    print_error("cannot write `" + path + "`: " + (failure ? failure.message() : std::strerror(errno)));
    std::filesystem::remove(temporary, failure);
    return false;
  }
  return true;
}

// A pipe or a device cannot be replaced by a finished file.
bool write_through(const std::string& text, const std::string& path) {
  std::ofstream stream(path, std::ios::binary);
  stream.write(text.data(), static_cast<std::streamsize>(text.size()));
  stream.close();
  if (!stream) {
    print_error("cannot write `" + path + "`: " + std::strerror(errno));
  }
  return static_cast<bool>(stream);
}

}  // namespace

bool colour_output() { return colour(STDOUT_FILENO); }
bool brief(Detail detail, bool to_file) {
  return detail == Detail::brief || (detail == Detail::by_output && !to_file && isatty(STDOUT_FILENO) == 1);
}

std::size_t output_width() {
  constexpr std::size_t least = 40;
  constexpr std::size_t most = 120;
  constexpr std::size_t elsewhere = 100;
  winsize size{};
  const bool known = isatty(STDOUT_FILENO) == 1 && ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0;
  return known ? std::clamp<std::size_t>(size.ws_col, least, most) : elsewhere;
}

bool colour_errors() { return colour(STDERR_FILENO); }

void print_diagnostics(const diagnose::Diagnostics& diagnostics, const source::SourceMap& sources) {
  const bool wanted = colour_errors();
  constexpr std::size_t most = 2000;
  const auto& all = diagnostics.all();
  for (std::size_t at = 0; at < std::min(all.size(), most); ++at) {
    const diagnose::Diagnostic& one = all[at];
    const std::string text = diagnose::render_text(one, sources, wanted);
    std::fwrite(text.data(), 1, text.size(), stderr);
  }
  if (all.size() > most) {
    std::fprintf(stderr, "and %zu more\n", all.size() - most);
  }
}

void print_error(const std::string& message) {
  std::fprintf(stderr, "plumbrule: %s\n", diagnose::printable(message).c_str());
}

bool write_output(const std::string& text, const std::string& path) {
  std::error_code failure;
  if (std::filesystem::is_symlink(path, failure)) {
    return write_output(text, std::filesystem::canonical(path, failure).string());  // the file, not the link
  }
  const bool device = std::filesystem::exists(path, failure) && !std::filesystem::is_regular_file(path, failure) &&
                      !std::filesystem::is_directory(path, failure);
  if (!path.empty()) {
    return device ? write_through(text, path) : write_file(text, path);
  }
  const bool written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
  if (!written || std::fflush(stdout) != 0) {
    print_error(std::string("cannot write to standard output: ") + std::strerror(errno));
    return false;
  }
  return true;
}

bool write_output(const std::string& text, const std::string& path, const source::SourceMap& read) {
  return spares(path, files_of(read)) && write_output(text, path);
}

bool spares(const std::string& path, const std::vector<std::string>& read) {
  std::error_code failure;
  if (path.empty() || !std::filesystem::is_regular_file(path, failure)) {
    return true;
  }
  for (const std::string& one : read) {
    if (std::filesystem::equivalent(path, one, failure)) {
      std::string message = "cannot write `" + path + "`: it ";
      message += one == path ? "" : "is `" + one + "`, which ";
      print_error(message + "was read for what is to be written, and would be lost; name another file");
      return false;
    }
  }
  return true;
}

std::vector<std::string> files_of(const source::SourceMap& sources) {
  std::vector<std::string> out;
  for (std::uint32_t file = 0; file < sources.size(); ++file) {
    out.emplace_back(sources.name(file));
  }
  return out;
}

}  // namespace plumbrule::command
