// The command that goes through an archive.

#include <memory>

#include "doors/command/options_parts.hpp"
#include "doors/command/sweep.hpp"

namespace plumbrule::command {

std::function<Exit()> add_sweep(CLI::App& app) {
  const auto options = std::make_shared<SweepOptions>();
  CLI::App& command = *app.add_subcommand("sweep", "Hold an archive of submittals against specifications, and count");
  command
      .add_option("ARCHIVE", options->archives,
                  "Files or folders: .ndjson and .csv with a record a line, .json and .yaml; `-` is standard input")
      ->type_name(takes::archive);
  command.add_option("--against", options->rules.against, "A specification, or a folder of them; may be repeated")
      ->type_name(takes::rules);
  add_amendments(command, options->rules.amendments);
  add_day(command, options->rules.on);
  add_libraries(command, options->rules.libraries);
  add_choice<Lining>(command, "--lines", options->lining,
                     {{"by-name", Lining::by_name}, {"ndjson", Lining::ndjson}, {"csv", Lining::csv}},
                     "What the lines of the archive are; of standard input ndjson unless said");
  command
      .add_option("--verdicts", options->verdicts,
                  "Write the verdicts of each record to this file; `-` is standard output. As NDJSON the last line is "
                  "the summary")
      ->type_name(takes::file);
  add_choice<sweep::VerdictForm>(command, "--verdicts-as", options->verdict_form,
                                 {{"ndjson", sweep::VerdictForm::ndjson}, {"csv", sweep::VerdictForm::csv}},
                                 "How verdicts are written");
  command
      .add_option("--add-up", options->summaries,
                  "Instead of an archive: summaries of its parts, as JSON, whose counts are added up")
      ->type_name(takes::file);
  command.add_option("--threads", options->threads, "How many records are judged at a time; 0: one a core")
      ->type_name(takes::number)
      ->check(CLI::Range(0, 256).description(""));
  command.add_flag("--in-full", options->in_full, "Judge every record by the whole evaluator: slower, the same result");
  command.add_flag("--digests", options->digests,
                   "Also state the SHA-256 of each file of the archive in the summary, at some cost");
  add_format(command, options->format, {{"text", Format::text}, {"json", Format::json}}, "the summary");
  add_out(command, options->out);
  return [options] { return sweep(*options); };
}

}  // namespace plumbrule::command
