#pragma once
// `plumbrule manual`: the man page and the completions of shells, made by walking the same App as `--help`.

#include <CLI/CLI.hpp>
#include <string>

#include "doors/command/output.hpp"

namespace plumbrule::command {

enum class Form : std::uint8_t { man, bash, zsh, fish };

struct ManualOptions {
  Form form = Form::man;
  std::string out;  // a file, or empty
};

/// The page in roff with the `man` macros, section 1.
[[nodiscard]] std::string man_page(const CLI::App& app);
/// What the shell reads to complete commands, options, their words and the files they take.
[[nodiscard]] std::string bash_completion(const CLI::App& app);
[[nodiscard]] std::string zsh_completion(const CLI::App& app);
[[nodiscard]] std::string fish_completion(const CLI::App& app);

[[nodiscard]] Exit manual(const CLI::App& app, const ManualOptions& options);

}  // namespace plumbrule::command
