// The program that runs case files; case_file.hpp describes them.

#include <sys/resource.h>

#include <algorithm>
#include <atomic>
#include <charconv>
#include <filesystem>
#include <iostream>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include "run_case.hpp"

namespace {

namespace fs = std::filesystem;
using plumbrule::cases::Outcome;
using plumbrule::cases::Setting;

constexpr std::string_view usage =
    "usage: case_runner --plumbrule PROGRAM --root REPOSITORY [--record] [--limit MILLISECONDS]\n"
    "                   [--jobs N] FILE_OR_FOLDER...\n"
    "       case_runner --root REPOSITORY --list-sections FILE_OR_FOLDER...\n"
    "\n"
    "Runs case files (*.case; folders are searched) and compares what they print with what they expect.\n"
    "  --record         rewrite the expected parts in place and say which files changed\n"
    "  --list-sections  print each cited section of the language's description and the case that cites it\n"
    "  --limit          end a command that runs longer (20000)\n"
    "  --jobs           cases at a time (2)\n"
    "Exit status: 0 all passed, 1 a case failed, 2 usage, or no case found.\n";

struct Request {
  Setting setting;
  std::size_t jobs = 2;  // the size of the machines it is meant for
  bool list_sections = false;
  std::vector<fs::path> paths;
};

/// Above zero, or nothing.
std::optional<int> read_count(std::string_view text) {
  int count = 0;
  const auto [end, failure] = std::from_chars(text.data(), text.data() + text.size(), count);
  const bool read = failure == std::errc() && end == text.data() + text.size() && count > 0;
  return read ? std::optional(count) : std::nullopt;
}

/// False for a count that is none.
bool take_count(const std::string& word, std::string_view text, Request& request) {
  const auto count = read_count(text);
  if (word == "--jobs") {
    request.jobs = static_cast<std::size_t>(count.value_or(0));
  } else {
    request.setting.limit = std::chrono::milliseconds(count.value_or(0));
  }
  return count.has_value();
}

std::optional<Request> read_arguments(const std::vector<std::string>& words) {
  Request request;
  for (std::size_t at = 0; at < words.size(); ++at) {
    const std::string& word = words[at];
    const bool takes_value = word == "--plumbrule" || word == "--root" || word == "--limit" || word == "--jobs";
    if (takes_value && ++at == words.size()) {
      return std::nullopt;
    }
    if (word == "--plumbrule") {
      request.setting.plumbrule = fs::absolute(words[at]);
    } else if (word == "--root") {
      request.setting.root = fs::absolute(words[at]);
    } else if (word == "--limit" || word == "--jobs") {
      if (!take_count(word, words[at], request)) {
        return std::nullopt;
      }
    } else if (word == "--record") {
      request.setting.record = true;
    } else if (word == "--list-sections") {
      request.list_sections = true;
    } else if (word.starts_with("--")) {
      return std::nullopt;
    } else {
      request.paths.emplace_back(word);
    }
  }
  const bool has_program = request.list_sections || fs::exists(request.setting.plumbrule);
  const bool complete = has_program && fs::is_directory(request.setting.root) && !request.paths.empty();
  return complete ? std::optional(request) : std::nullopt;
}

/// Case files by the name under which they are reported: the path below the repository, or as given outside it.
std::map<std::string, fs::path> find_cases(const Request& request) {
  std::map<std::string, fs::path> found;
  const auto add = [&](const fs::path& file) {
    const fs::path below = fs::canonical(file).lexically_relative(request.setting.root);
    const bool inside = !below.empty() && *below.begin() != "..";
    found.emplace(inside ? below.string() : file.string(), file);
  };
  for (const fs::path& path : request.paths) {
    if (!fs::is_directory(path)) {
      add(path);
      continue;
    }
    for (const auto& entry : fs::recursive_directory_iterator(path)) {
      if (entry.is_regular_file() && entry.path().extension() == ".case") {
        add(entry.path());
      }
    }
  }
  return found;
}

/// The outcomes in the order of the cases.
std::vector<Outcome> run_all(const std::map<std::string, fs::path>& found, const Request& request) {
  std::vector<fs::path> files;
  files.reserve(found.size());
  for (const auto& [name, file] : found) {
    files.push_back(file);
  }
  std::vector<Outcome> outcomes(files.size());
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t at = next++; at < files.size(); at = next++) {
      outcomes[at] = run_case(files[at], request.setting);
    }
  };
  std::vector<std::jthread> workers(std::min(request.jobs, files.size()));
  for (std::jthread& worker : workers) {
    worker = std::jthread(work);
  }
  for (std::jthread& worker : workers) {
    worker.join();
  }
  return outcomes;
}

int report(const std::map<std::string, fs::path>& found, const std::vector<Outcome>& outcomes) {
  std::size_t passed = 0;
  auto outcome = outcomes.begin();
  for (const auto& [name, file] : found) {
    if (outcome->rewritten) {
      std::cout << "recorded " << name << "\n";
    }
    if (!outcome->passed) {
      std::cout << "FAILED " << name << "\n" << outcome->report;
    }
    passed += outcome->passed ? 1 : 0;
    ++outcome;
  }
  std::cout << passed << " passed, " << outcomes.size() - passed << " failed\n";
  return passed == outcomes.size() ? 0 : 1;
}

void list_sections(const std::map<std::string, fs::path>& found) {
  std::map<std::string, std::vector<std::string>> cases_of;
  for (const auto& [name, file] : found) {
    for (const std::string& section : plumbrule::cases::cited_sections(file)) {
      cases_of[section].push_back(name);
    }
  }
  for (const auto& [section, names] : cases_of) {
    for (const std::string& name : names) {
      std::cout << section << "\t" << name << "\n";
    }
  }
}

/// A command gone wild must not fill the disk before its time is up.
void limit_file_sizes() {
  constexpr rlim_t largest = rlim_t{400} * 1024U * 1024U;
  rlimit limit{};
  getrlimit(RLIMIT_FSIZE, &limit);
  limit.rlim_cur = std::min(limit.rlim_max, largest);
  setrlimit(RLIMIT_FSIZE, &limit);
}

int run(const std::vector<std::string>& words) {
  std::optional<Request> request = read_arguments(words);
  if (!request) {
    std::cerr << usage;
    return 2;
  }
  request->setting.root = fs::canonical(request->setting.root);
  const auto found = find_cases(*request);
  if (found.empty()) {
    std::cerr << "case_runner: no *.case file found\n";
    return 2;
  }
  if (request->list_sections) {
    list_sections(found);
    return 0;
  }
  limit_file_sizes();
  return report(found, run_all(found, *request));
}

}  // namespace

int main(int count, char** words) {
  try {
    return run(std::vector<std::string>(words + 1, words + count));
  } catch (const std::exception& failure) {
    std::cerr << "case_runner: " << failure.what() << "\n";
    return 2;
  }
}
