#pragma once
// What the completions of the three shells share. Internal to this folder.

#include <string>
#include <vector>

#include "doors/command/options.hpp"

namespace plumbrule::command {

[[nodiscard]] bool takes_value(const CLI::Option& option);
/// Whether the option takes one value after another until the next option.
[[nodiscard]] bool several(const CLI::Option& option);
[[nodiscard]] std::string joined(const std::vector<std::string>& words);
/// In single quotes of a shell; `close` is how a quote inside them is written.
[[nodiscard]] std::string shell_quoted(const std::string& text, const std::string& close = "'\\''");
[[nodiscard]] std::vector<const CLI::Option*> named_options(const CLI::App& command);
/// Those without a name, by their place.
[[nodiscard]] std::vector<const CLI::Option*> arguments(const CLI::App& command);

}  // namespace plumbrule::command
