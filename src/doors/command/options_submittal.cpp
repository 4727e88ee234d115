// The commands that put a submittal before specifications.

#include <memory>

#include "doors/command/options_parts.hpp"
#include "doors/command/transcribe.hpp"
#include "doors/command/window.hpp"

namespace plumbrule::command {

std::function<Exit()> add_review(CLI::App& app) {
  const auto options = std::make_shared<ReviewOptions>();
  CLI::App& command = *app.add_subcommand("review", "Review a submittal against specifications");
  command.add_option("SUBMITTAL", options->submittal, "The submittal: .yaml, .json, or .csv with a mix a row")
      ->required()
      ->type_name(takes::submittal);
  add_record(command, options->record);
  add_against(command, options->against);
  command.add_flag("--matrix", options->matrix, "Tests by specifications, ranked by headroom, instead of the findings");
  add_amendments(command, options->amendments);
  add_day(command, options->on);
  add_libraries(command, options->libraries);
  command.add_option("--explain", options->explain, "Only this clause, with every step from reading to verdict")
      ->type_name(takes::clause);
  add_format(command, options->format,
             {{"text", Format::text},
              {"json", Format::json},
              {"sarif", Format::sarif},
              {"junit", Format::junit},
              {"markdown", Format::markdown},
              {"html", Format::html}},
             "sarif and junit for whole reviews only");
  add_detail(command, options->detail);
  add_out(command, options->out);
  add_log(command, options->log);
  return [options] { return review(*options); };
}

std::function<Exit()> add_window(CLI::App& app) {
  const auto options = std::make_shared<WindowOptions>();
  CLI::App& command = *app.add_subcommand("window", "Find the range of a design value that every tested clause allows");
  command.add_option("SUBMITTAL", options->submittal, "The submittal with its trials: .yaml, .json or .csv")
      ->required()
      ->type_name(takes::submittal);
  add_record(command, options->record);
  add_against(command, options->rules.against);
  add_amendments(command, options->rules.amendments);
  add_day(command, options->rules.on);
  add_libraries(command, options->rules.libraries);
  command.add_option("--vary", options->vary, "The design value; without it each that results vary with `at`")
      ->type_name(takes::measure);
  command.add_option("--tolerance", options->tolerance, "How far production may stray from the job mix: `0.5 %`")
      ->type_name(takes::amount);
  add_choice<bool>(command, "--curve", options->curve, {{"straight", false}, {"parabola", true}},
                   "Also a parabola of least squares, for comparison");
  command.add_option("--explain", options->explain, "Only this clause, with the derivation of each end that it makes")
      ->type_name(takes::clause);
  add_format(command, options->format, {{"text", Format::text}, {"json", Format::json}, {"html", Format::html}});
  add_detail(command, options->detail);
  add_out(command, options->out);
  add_log(command, options->log);
  return [options] { return window(*options); };
}

std::function<Exit()> add_transcribe(CLI::App& app) {
  const auto options = std::make_shared<TranscribeOptions>();
  CLI::App& command = *app.add_subcommand("transcribe", "Write a submittal in another form");
  command.add_option("SUBMITTAL", options->submittal, "The submittal: .yaml, .json, or .csv with a mix a row")
      ->required()
      ->type_name(takes::submittal);
  add_record(command, options->record);
  add_choice<SubmittalForm>(command, "--format", options->form,
                            {{"yaml", SubmittalForm::yaml}, {"json", SubmittalForm::json}, {"csv", SubmittalForm::csv}},
                            "The form");
  add_out(command, options->out);
  return [options] { return transcribe(*options); };
}

}  // namespace plumbrule::command
