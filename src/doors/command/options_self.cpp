// The command that is about the program itself.

#include <memory>

#include "doors/command/manual.hpp"
#include "doors/command/options_parts.hpp"

namespace plumbrule::command {

std::function<Exit()> add_manual(CLI::App& app) {
  const auto options = std::make_shared<ManualOptions>();
  CLI::App& command = *app.add_subcommand("manual", "Write the man page, or what a shell completes commands by");
  add_choice<Form>(command, "--form", options->form,
                   {{"man", Form::man}, {"bash", Form::bash}, {"zsh", Form::zsh}, {"fish", Form::fish}},
                   "What is written");
  add_out(command, options->out);
  return [options, &app] { return manual(app, *options); };
}

}  // namespace plumbrule::command
