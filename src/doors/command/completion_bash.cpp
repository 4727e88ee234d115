#include "doors/command/completion.hpp"
#include "doors/command/manual.hpp"

namespace plumbrule::command {
namespace {

std::vector<std::string> names(const CLI::App& command) {
  std::vector<std::string> out;
  for (const CLI::Option* option : named_options(command)) {
    out.push_back(option->get_name());
  }
  return out;
}

// A call that offers what the option takes; empty for free texts, for which a shell knows nothing.
std::string bash_offer(const CLI::Option& option) {
  const std::vector<std::string> words = choices(option);
  if (!words.empty()) {
    return "_plumbrule_words " + shell_quoted(joined(words));
  }
  const ValueKind* const kind = value_kind(option);
  if (kind == nullptr || (!kind->files && !kind->folders)) {
    return ":";
  }
  if (!kind->files) {
    return "_plumbrule_files";
  }
  std::string out = "_plumbrule_files";
  for (const std::string_view ending : kind->endings) {
    out += " " + shell_quoted(std::string(ending));
  }
  return kind->endings.empty() ? out + " ''" : out;
}

std::string bash_command(const CLI::App& command) {
  std::string rest;
  for (const CLI::Option* argument : arguments(command)) {
    rest += bash_offer(*argument) + "; ";
  }
  rest = rest.empty() ? ":; " : rest;  // an empty group is a fault in bash
  std::string out = "    " + command.get_name() + ")\n      case $option in\n";
  for (const CLI::Option* option : named_options(command)) {
    if (!takes_value(*option)) {
      continue;
    }
    // After an option that takes several, the next word is one more of them, or an argument.
    const std::string further = several(*option) ? " [[ $since -eq 0 ]] || { " + rest + "}" : "";
    out += "        " + option->get_name() + ") " + (several(*option) ? "" : "[[ $since -eq 0 ]] && { ") +
           bash_offer(*option) + ";" + (several(*option) ? further : " return; }") + " ;;\n";
  }
  out += "      esac\n";
  std::string many;
  for (const CLI::Option* option : named_options(command)) {
    many += several(*option) ? " " + option->get_name() : "";
  }
  out += "      [[ " + shell_quoted(many + " ") + " == *\" $option \"* ]] || { " + rest + "}\n";
  out += "      _plumbrule_words " + shell_quoted(joined(names(command))) + " ;;\n";
  return out;
}

}  // namespace

std::string bash_completion(const CLI::App& app) {
  std::string out =
      "# bash completion of plumbrule, written by `plumbrule manual --form bash`; do not edit.\n"
      "_plumbrule_words() {\n"
      "  local word\n"
      "  for word in $1; do\n"
      "    [[ $word == \"$typed\"* && ($word != -* || $typed == -*) ]] && COMPREPLY+=(\"$word\")\n"
      "  done\n"
      "}\n"
      "_plumbrule_files() {\n"
      "  local found ending\n"
      "  [[ $typed == -* ]] && return\n"
      "  while IFS= read -r found; do\n"
      "    COMPREPLY+=(\"$found\")\n"
      "  done < <(compgen -d -- \"$typed\"\n"
      "    for ending in \"$@\"; do compgen -f -X \"!*$ending\" -- \"$typed\"; done | sort -u |\n"
      "      while IFS= read -r found; do [[ -d $found ]] || printf '%s\\n' \"$found\"; done)\n"
      "}\n"
      "_plumbrule() {\n"
      "  local typed=${COMP_WORDS[COMP_CWORD]} option='' command='' since=0 at word\n"
      "  COMPREPLY=()\n"
      "  [[ $typed == '=' ]] && typed=''\n"
      "  for ((at = 1; at < COMP_CWORD; ++at)); do\n"
      "    word=${COMP_WORDS[at]}\n"
      "    case $word in\n"
      "      '=') ;;\n"
      "      -*) option=$word since=0 ;;\n"
      "      *) if [[ -z $command ]]; then command=$word; else since=$((since + 1)); fi ;;\n"
      "    esac\n"
      "  done\n"
      "  case $command in\n";
  std::vector<std::string> commands;
  for (const CLI::App* command : commands_of(app)) {
    commands.push_back(command->get_name());
    out += bash_command(*command);
  }
  out += "    '') _plumbrule_words " + shell_quoted(joined(commands) + " " + joined(names(app))) + " ;;\n";
  return out + "  esac\n}\ncomplete -o filenames -F _plumbrule plumbrule\n";
}

}  // namespace plumbrule::command
