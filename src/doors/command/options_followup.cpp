#include <memory>

#include "doors/command/followup.hpp"
#include "doors/command/options_parts.hpp"

namespace plumbrule::command {

std::function<Exit()> add_follow_up(CLI::App& app) {
  const auto options = std::make_shared<FollowUpOptions>();
  CLI::App& command = *app.add_subcommand("follow-up", "Hold a resubmittal against the submittal before it");
  command.add_option("BEFORE", options->before, "The earlier submittal: .yaml, .json or .csv")
      ->required()
      ->type_name(takes::submittal);
  command.add_option("AFTER", options->after, "The resubmittal: .yaml, .json or .csv")
      ->required()
      ->type_name(takes::submittal);
  for (const auto& [name, target] :
       {std::pair("--record-before", &options->record_before), std::pair("--record-after", &options->record_after)}) {
    add_record(command, *target, name);
  }
  add_against(command, options->rules.against);
  add_amendments(command, options->rules.amendments);
  add_day(command, options->rules.on);
  add_libraries(command, options->rules.libraries);
  add_format(command, options->format,
             {{"text", Format::text}, {"json", Format::json}, {"markdown", Format::markdown}, {"html", Format::html}});
  add_out(command, options->out);
  return [options] { return follow_up(*options); };
}

}  // namespace plumbrule::command
