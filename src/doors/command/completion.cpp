#include "doors/command/completion.hpp"

namespace plumbrule::command {

bool takes_value(const CLI::Option& option) { return option.get_items_expected_max() > 0; }
bool several(const CLI::Option& option) { return option.get_items_expected_max() > 1; }

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) {
    out += (out.empty() ? "" : " ") + word;
  }
  return out;
}

std::string shell_quoted(const std::string& text, const std::string& close) {
  std::string out = "'";
  for (const char letter : text) {
    out += letter == '\'' ? close : std::string(1, letter);
  }
  return out + "'";
}

std::vector<const CLI::Option*> named_options(const CLI::App& command) {
  return command.get_options([](const CLI::Option* option) { return !option->get_positional(); });
}

std::vector<const CLI::Option*> arguments(const CLI::App& command) {
  return command.get_options([](const CLI::Option* option) { return option->get_positional(); });
}

}  // namespace plumbrule::command
