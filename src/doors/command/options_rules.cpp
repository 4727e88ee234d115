// The commands that are about rule files.

#include <memory>

#include "doors/command/contrast.hpp"
#include "doors/command/envelope.hpp"
#include "doors/command/options_parts.hpp"
#include "doors/command/proof.hpp"
#include "doors/command/recite.hpp"
#include "doors/command/tidy.hpp"

namespace plumbrule::command {

std::function<Exit()> add_proof(CLI::App& app) {
  const auto options = std::make_shared<ProofOptions>();
  CLI::App& command = *app.add_subcommand("proof", "Check rule files and run their examples");
  command.add_option("RULES", options->paths, "Rule files, or folders of them")->required()->type_name(takes::rules);
  add_libraries(command, options->libraries);
  command.add_flag("--remarks", options->remarks, "Show remarks (lint) and branches without an example one by one");
  add_format(command, options->format,
             {{"text", Format::text}, {"json", Format::json}, {"sarif", Format::sarif}, {"junit", Format::junit}});
  add_out(command, options->out);
  add_log(command, options->log);
  return [options] { return proof(*options); };
}

std::function<Exit()> add_recite(CLI::App& app) {
  const auto options = std::make_shared<ReciteOptions>();
  CLI::App& command = *app.add_subcommand("recite", "Show a specification as a table of limits");
  command.add_option("SPECIFICATION", options->path, "The specification")->required()->type_name(takes::rules);
  add_amendments(command, options->amendments);
  add_day(command, options->on);
  add_libraries(command, options->libraries);
  add_choice<report::Units>(
      command, "--units", options->units,
      {{"printed", report::Units::printed}, {"metric", report::Units::metric}, {"customary", report::Units::customary}},
      "A column of limits converted to these units");
  add_format(command, options->format,
             {{"text", Format::text}, {"markdown", Format::markdown}, {"html", Format::html}});
  add_out(command, options->out);
  return [options] { return recite(*options); };
}

std::function<Exit()> add_contrast(CLI::App& app) {
  const auto options = std::make_shared<ContrastOptions>();
  CLI::App& command = *app.add_subcommand("contrast", "Say what differs between two specifications");
  command.add_option("BEFORE", options->before, "A specification")->required()->type_name(takes::rules);
  command.add_option("AFTER", options->after, "Another one; left out: the same with the amendments of --with")
      ->type_name(takes::rules);
  add_amendments(command, options->amendments, "--with", "An amendment to the one after; may be repeated");
  add_amendments(command, options->before_amendments, "--before-with",
                 "An amendment to the one before; may be repeated");
  add_folder(command, "--archive", options->archive,
             "A folder of past submittals: whose verdict would change, and by which clause");
  add_libraries(command, options->libraries);
  add_format(command, options->format,
             {{"text", Format::text}, {"markdown", Format::markdown}, {"json", Format::json}, {"html", Format::html}});
  add_out(command, options->out);
  return [options] { return contrast(*options); };
}

std::function<Exit()> add_envelope(CLI::App& app) {
  const auto options = std::make_shared<EnvelopeOptions>();
  CLI::App& command = *app.add_subcommand("envelope", "Say what satisfies several specifications at once");
  command.add_option("SPECIFICATION", options->paths, "Specifications, or folders of them")
      ->required()
      ->type_name(takes::rules);
  command.add_option("--class", options->classes, "A class of the mix, as in traffic=heavy; may be repeated")
      ->type_name(takes::mix_class);
  add_libraries(command, options->libraries);
  add_format(command, options->format,
             {{"text", Format::text}, {"markdown", Format::markdown}, {"json", Format::json}, {"rules", Format::rules}},
             "`rules` is a rule file");
  add_out(command, options->out);
  return [options] { return envelope(*options); };
}

std::function<Exit()> add_tidy(CLI::App& app) {
  const auto options = std::make_shared<TidyOptions>();
  CLI::App& command = *app.add_subcommand("tidy", "Lay out rule files in the canonical way");
  command.add_option("FILE", options->paths, "Rule files; `-` is standard input, laid out on standard output")
      ->required()
      ->type_name(takes::rules);
  command.add_flag("--check", options->check, "Write nothing; exit 1 if a file is not tidy, and say where");
  return [options] { return tidy(*options); };
}

}  // namespace plumbrule::command
