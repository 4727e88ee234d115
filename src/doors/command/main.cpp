// The command line. What a command does is in its own file, its options in options_*.cpp; this one only parses.

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <iostream>

#include "base/diagnose/suggest.hpp"
#include "doors/command/options.hpp"

namespace {

using plumbrule::command::Exit;

// A first word that is no command, for which the library only says that one is missing.
bool known_command(const CLI::App& app, const std::string& word) {
  std::vector<std::string> names;
  for (const CLI::App* one : plumbrule::command::commands_of(app)) {
    names.push_back(one->get_name());
  }
  if (word.rfind('-', 0) == 0 || std::find(names.begin(), names.end(), word) != names.end()) {
    return true;
  }
  const std::vector<std::string_view> known(names.begin(), names.end());
  plumbrule::command::print_error("found `" + word + "`, no command of that name; " +
                                  plumbrule::diagnose::suggestion(word, known));
  return false;
}

// A variable of a script that was not set: `--on "$DAY"` must not mean that no day was asked for.
bool no_empty_argument(int count, char** arguments) {
  for (int at = 1; at < count; ++at) {
    const std::string word = arguments[at];
    const bool option = word.rfind("--", 0) == 0 && word.size() > 2 && word.back() == '=';
    if (word.empty() || option) {
      plumbrule::command::print_error("found an empty argument" +
                                      (option   ? ": `" + word + "`"
                                       : at > 1 ? " behind `" + std::string(arguments[at - 1]) + "`"
                                                : std::string()) +
                                      "; give a value, or leave the option out");
      return false;
    }
  }
  return true;
}

Exit run(int count, char** arguments) {
  if (!no_empty_argument(count, arguments)) {
    return Exit::unusable;
  }
  plumbrule::command::CommandLine line;
  if (count > 1 && !known_command(line.app(), arguments[1])) {
    return Exit::unusable;
  }
  try {
    line.app().parse(count, arguments);
  } catch (const CLI::ParseError& error) {
    const bool asked = line.app().exit(error) == 0;  // --help or --version
    if (asked && !std::cout.flush()) {
      plumbrule::command::print_error(std::string("cannot write to standard output: ") + std::strerror(errno));
      return Exit::unusable;
    }
    return asked ? Exit::complies : Exit::unusable;
  }
  return line.run();
}

}  // namespace

int main(int count, char** arguments) {
  try {
    return static_cast<int>(run(count, arguments));
  } catch (const std::exception& error) {
    plumbrule::command::print_error(std::string("stopped by an internal error: ") + error.what());
    return static_cast<int>(Exit::unusable);
  }
}
