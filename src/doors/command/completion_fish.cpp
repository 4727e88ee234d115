#include "doors/command/completion.hpp"
#include "doors/command/manual.hpp"

namespace plumbrule::command {
namespace {

std::string fish_text(const std::string& text) {
  std::string escaped;
  for (const char letter : text) {
    escaped += letter == '\\' ? "\\\\" : std::string(1, letter);
  }
  return shell_quoted(escaped, "\\'");
}

std::string fish_offer(const CLI::Option& option) {
  const std::vector<std::string> words = choices(option);
  if (!words.empty()) {
    return " -a " + fish_text(joined(words));
  }
  const ValueKind* const kind = value_kind(option);
  std::string out;
  if (kind != nullptr && kind->folders && kind->endings.empty()) {
    return " -a " + fish_text("(__fish_complete_directories)");
  }
  for (const std::string_view ending : kind == nullptr ? std::vector<std::string_view>{} : kind->endings) {
    out += (out.empty() ? "" : " ") + ("(__fish_complete_suffix " + std::string(ending) + ")");
  }
  return kind != nullptr && kind->files && kind->endings.empty() ? " -F" : out.empty() ? "" : " -a " + fish_text(out);
}

std::string fish_line(const std::string& when, const CLI::Option& option) {
  std::string out = "complete -c plumbrule -n " + fish_text(when);
  if (option.get_positional()) {
    const std::string offer = fish_offer(option);
    return offer.empty() ? "" : out + offer + "\n";
  }
  out += " -l " + option.get_name().substr(2);
  out += option.get_name() == "--help" ? " -s h" : "";
  return out + (takes_value(option) ? " -r" + fish_offer(option) : "") + " -d " + fish_text(option.get_description()) +
         "\n";
}

}  // namespace

std::string fish_completion(const CLI::App& app) {
  std::string out =
      "# fish completion of plumbrule, written by `plumbrule manual --form fish`; do not edit.\n"
      "complete -c plumbrule -f\n";
  for (const CLI::Option* option : named_options(app)) {
    out += fish_line("__fish_use_subcommand", *option);
  }
  for (const CLI::App* command : commands_of(app)) {
    const std::string& name = command->get_name();
    out += "complete -c plumbrule -n __fish_use_subcommand -a " + name + " -d " +
           fish_text(command->get_description()) + "\n";
    for (const CLI::Option* option : command->get_options()) {
      out += fish_line("__fish_seen_subcommand_from " + name, *option);
    }
  }
  return out;
}

}  // namespace plumbrule::command
