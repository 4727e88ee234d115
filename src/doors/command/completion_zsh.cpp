#include "doors/command/completion.hpp"
#include "doors/command/manual.hpp"

namespace plumbrule::command {
namespace {

// Inside an _arguments specification brackets and colons are marks of its own.
std::string zsh_text(const std::string& text) {
  std::string out;
  for (const char letter : text) {
    out += letter == '[' || letter == ']' || letter == ':' || letter == '\\' ? "\\" : "";
    out += letter;
  }
  return out;
}

std::string zsh_offer(const CLI::Option& option) {
  const std::vector<std::string> words = choices(option);
  if (!words.empty()) {
    return "word:(" + joined(words) + ")";
  }
  const ValueKind* const kind = value_kind(option);
  const std::string name = zsh_text(kind == nullptr ? "value" : std::string(kind->name));
  if (kind == nullptr || (!kind->files && !kind->folders)) {
    return name + ":";
  }
  if (!kind->files) {
    return name + ":_files -/";
  }
  std::string pattern;
  for (const std::string_view ending : kind->endings) {
    pattern += (pattern.empty() ? "*" : "|*") + std::string(ending);
  }
  return name + ":_files" + (pattern.empty() ? "" : " -g \"(" + pattern + ")(-.)\"");
}

std::string zsh_entry(const CLI::Option& option) {
  if (option.get_positional()) {
    return (several(option) ? "*:" : option.get_required() ? ":" : "::") + zsh_offer(option);
  }
  const std::string text = "[" + zsh_text(option.get_description()) + "]";
  return (several(option) ? "*" : "") + option.get_name() + text + (takes_value(option) ? ":" + zsh_offer(option) : "");
}

std::string zsh_command(const CLI::App& command) {
  std::string out = "    " + command.get_name() + ")\n      _arguments";
  for (const CLI::Option* option : command.get_options()) {
    out += " \\\n        " + shell_quoted(zsh_entry(*option));
  }
  return out + " ;;\n";
}

}  // namespace

std::string zsh_completion(const CLI::App& app) {
  std::string out =
      "#compdef plumbrule\n"
      "# zsh completion of plumbrule, written by `plumbrule manual --form zsh`; do not edit.\n"
      "_plumbrule() {\n"
      "  local -a commands=(\n";
  for (const CLI::App* command : commands_of(app)) {
    out += "    " + shell_quoted(command->get_name() + ":" + zsh_text(command->get_description())) + "\n";
  }
  out += "  )\n  if (( CURRENT == 2 )); then\n    _describe command commands\n    _arguments";
  for (const CLI::Option* option : named_options(app)) {
    out += " " + shell_quoted(zsh_entry(*option));
  }
  out +=
      "\n    return\n  fi\n  local command=$words[2]\n  shift words\n  (( CURRENT-- ))\n"
      "  case $command in\n";
  for (const CLI::App* command : commands_of(app)) {
    out += zsh_command(*command);
  }
  return out + "  esac\n}\n_plumbrule \"$@\"\n";
}

}  // namespace plumbrule::command
