#pragma once
// The command line as one table: the CLI11 App from which arguments are parsed and from which `--help`, the man page
// and the completions of shells are made. To add a command: write a function as those in options_parts.hpp name them
// (in a file options_*.cpp), and give it a row in the table of options.cpp.

#include <CLI/CLI.hpp>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "doors/command/output.hpp"

namespace plumbrule::command {

/// What an option or an argument takes. The name stands in the help behind the option (CLI11's type name), and a shell
/// completes by it.
struct ValueKind {
  std::string_view name;
  std::vector<std::string_view> endings;  // of files; empty for any file
  bool files = false;
  bool folders = false;
};

/// All kinds. An option whose type name is none of them takes one of a few words, which its type name lists
/// ("text|json").
[[nodiscard]] const std::vector<ValueKind>& value_kinds();
/// The kind of what the option takes; nullptr for a flag and for one that takes one of a few words.
[[nodiscard]] const ValueKind* value_kind(const CLI::Option& option);
/// The words that the option takes one of; empty for any other option.
[[nodiscard]] std::vector<std::string> choices(const CLI::Option& option);

/// The command line of the program: every command with its options.
class CommandLine {
 public:
  CommandLine();
  [[nodiscard]] CLI::App& app() { return app_; }
  /// Runs the command that was asked for; precondition: the arguments were parsed.
  [[nodiscard]] Exit run() const;

 private:
  struct Entry {
    CLI::App* command = nullptr;
    std::function<Exit()> run;
  };
  CLI::App app_;
  std::vector<Entry> commands_;
};

/// The commands, in the order of the help.
[[nodiscard]] std::vector<const CLI::App*> commands_of(const CLI::App& app);

}  // namespace plumbrule::command
