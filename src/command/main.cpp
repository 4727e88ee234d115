// The command line. Everything that a command does is in its own file; this one only reads options.

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cerrno>
#include <cstring>
#include <iostream>

#include "command/contrast.hpp"
#include "command/envelope.hpp"
#include "command/output.hpp"
#include "command/proof.hpp"
#include "command/recite.hpp"
#include "command/review.hpp"
#include "command/tidy.hpp"
#include "command/transcribe.hpp"
#include "command/window.hpp"
#include "diagnose/suggest.hpp"

namespace {

using plumbrule::command::Exit;
using plumbrule::command::Format;
using plumbrule::command::SubmittalForm;

template <typename Value>
using Words = std::map<std::string, Value>;

const Words<Format> proof_formats{{"text", Format::text}, {"json", Format::json}, {"sarif", Format::sarif}};
const Words<Format> table_formats{{"text", Format::text}, {"markdown", Format::markdown}};
const Words<Format> review_formats{{"text", Format::text}, {"json", Format::json}};
const Words<Format> contrast_formats{{"text", Format::text}, {"markdown", Format::markdown}, {"json", Format::json}};
const Words<Format> envelope_formats{
    {"text", Format::text}, {"markdown", Format::markdown}, {"json", Format::json}, {"rules", Format::rules}};
const Words<SubmittalForm> submittal_forms{
    {"yaml", SubmittalForm::yaml}, {"json", SubmittalForm::json}, {"csv", SubmittalForm::csv}};
const Words<bool> curves{{"straight", false}, {"parabola", true}};
const Words<plumbrule::report::Units> unit_systems{{"printed", plumbrule::report::Units::printed},
                                                   {"metric", plumbrule::report::Units::metric},
                                                   {"customary", plumbrule::report::Units::customary}};

// An option that takes one of a few words. `words` must outlive the program's options; all are constants above.
template <typename Value>
void add_choice(CLI::App& command, const std::string& name, Value& target, const Words<Value>& words,
                const std::string& description) {
  std::vector<std::string> known;
  for (const auto& [word, value] : words) {
    known.push_back(word);
  }
  command
      .add_option_function<std::string>(
          name, [&target, &words](const std::string& word) { target = words.at(word); }, description)
      ->check(CLI::IsMember(known));
}

void add_libraries(CLI::App& command, std::vector<std::string>& target) {
  command.add_option("--library", target, "A folder with vocabularies; may be repeated")->check(CLI::ExistingDirectory);
}

void add_record(CLI::App& command, std::string& target) {
  command.add_option("--record", target, "Which record of a sheet of several: its number or its mix");
}

void add_review(CLI::App& app, plumbrule::command::ReviewOptions& options) {
  CLI::App* command = app.add_subcommand("review", "Review a submittal against specifications");
  command->add_option("SUBMITTAL", options.submittal, "The submittal (*.yaml, *.json, *.csv)")->required();
  add_record(*command, options.record);
  command->add_option("--against", options.against, "A specification (*.plumb), or a folder of them; may be repeated")
      ->required();
  command->add_flag("--matrix", options.matrix, "Tests by specifications, ranked by headroom, instead of the findings");
  command->add_option("--with", options.amendments, "An amendment (*.plumb); may be repeated");
  command->add_option("--on", options.on, "The day of the review: only what was in force then");
  add_libraries(*command, options.libraries);
  command->add_option("--explain", options.explain, "Only this clause, with every step from reading to verdict");
  add_choice(*command, "--format", options.format, contrast_formats,
             "How the report is written; markdown for the matrix only");
  command->add_option("--out", options.out, "Write the report to this file");
  command->add_flag("--log", options.log, "Say on standard error what is being done");
}

void add_window(CLI::App& app, plumbrule::command::WindowOptions& options) {
  CLI::App* command = app.add_subcommand("window", "Find the range of a design value that every tested clause allows");
  command->add_option("SUBMITTAL", options.submittal, "The submittal with its trials (*.yaml, *.json, *.csv)")
      ->required();
  add_record(*command, options.record);
  command->add_option("--against", options.rules.against, "A specification (*.plumb); may be repeated")->required();
  command->add_option("--with", options.rules.amendments, "An amendment (*.plumb); may be repeated");
  command->add_option("--on", options.rules.on, "The day of the review: only what was in force then");
  command->add_option("--library", options.rules.libraries, "A folder with vocabularies; may be repeated");
  command->add_option("--vary", options.vary, "The design value; without it each that results vary with `at`");
  command->add_option("--tolerance", options.tolerance, "How far production may stray from the job mix: `0.5 %`");
  add_choice(*command, "--curve", options.curve, curves, "Also a parabola of least squares, for comparison");
  command->add_option("--explain", options.explain, "Only this clause, with the derivation of each end that it makes");
  add_choice(*command, "--format", options.format, review_formats, "How the report is written");
  command->add_option("--out", options.out, "Write the report to this file");
  command->add_flag("--log", options.log, "Say on standard error what is being done");
}

void add_proof(CLI::App& app, plumbrule::command::ProofOptions& options) {
  CLI::App* command = app.add_subcommand("proof", "Check rule files and run their examples");
  command->add_option("RULES", options.paths, "Rule files, or folders of them")->required();
  add_libraries(*command, options.libraries);
  command->add_flag("--remarks", options.remarks, "Show remarks (lint) and branches without an example one by one");
  add_choice(*command, "--format", options.format, proof_formats, "How the findings are written");
  command->add_flag("--log", options.log, "Say on standard error what is being done");
}

void add_recite(CLI::App& app, plumbrule::command::ReciteOptions& options) {
  CLI::App* command = app.add_subcommand("recite", "Show a specification as a table of limits");
  command->add_option("SPECIFICATION", options.path, "The specification (*.plumb)")->required();
  command->add_option("--with", options.amendments, "An amendment (*.plumb); may be repeated");
  command->add_option("--on", options.on, "The day: only the amendments in force then");
  add_libraries(*command, options.libraries);
  add_choice(*command, "--units", options.units, unit_systems, "A column of limits converted to these units");
  add_choice(*command, "--format", options.format, table_formats, "How the table is written");
  command->add_option("--out", options.out, "Write the table to this file");
}

void add_contrast(CLI::App& app, plumbrule::command::ContrastOptions& options) {
  CLI::App* command = app.add_subcommand("contrast", "Say what differs between two specifications");
  command->add_option("BEFORE", options.before, "A specification (*.plumb)")->required();
  command->add_option("AFTER", options.after, "Another one; left out: the same with the amendments of --with");
  command->add_option("--with", options.amendments, "An amendment to the one after (*.plumb); may be repeated");
  command->add_option("--before-with", options.before_amendments, "An amendment to the one before; may be repeated");
  command
      ->add_option("--archive", options.archive,
                   "A folder of past submittals: whose verdict would change, and by "
                   "which clause")
      ->check(CLI::ExistingDirectory);
  add_libraries(*command, options.libraries);
  add_choice(*command, "--format", options.format, contrast_formats, "How it is written");
  command->add_option("--out", options.out, "Write it to this file");
}

void add_envelope(CLI::App& app, plumbrule::command::EnvelopeOptions& options) {
  CLI::App* command = app.add_subcommand("envelope", "Say what satisfies several specifications at once");
  command->add_option("SPECIFICATION", options.paths, "Specifications (*.plumb)")->required();
  command->add_option("--class", options.classes, "A class of the mix, as in traffic=heavy; may be repeated");
  add_libraries(*command, options.libraries);
  add_choice(*command, "--format", options.format, envelope_formats, "How it is written; `rules` is a rule file");
  command->add_option("--out", options.out, "Write it to this file");
}

void add_tidy(CLI::App& app, plumbrule::command::TidyOptions& options) {
  CLI::App* command = app.add_subcommand("tidy", "Lay out rule files in the canonical way");
  command->add_option("FILE", options.paths, "Rule files; `-` is standard input, laid out on standard output")
      ->required();
  command->add_flag("--check", options.check, "Write nothing; exit 1 if a file is not tidy, and say where");
}

void add_transcribe(CLI::App& app, plumbrule::command::TranscribeOptions& options) {
  CLI::App* command = app.add_subcommand("transcribe", "Write a submittal in another form");
  command->add_option("SUBMITTAL", options.submittal, "The submittal (*.yaml, *.json, *.csv)")->required();
  add_record(*command, options.record);
  add_choice(*command, "--format", options.form, submittal_forms, "The form; csv is a sheet of one row");
  command->add_option("--out", options.out, "Write it to this file");
}

constexpr const char* footer =
    "Exit status: 0 complies, 1 something fails, 2 evidence incomplete, 3 rule files broken, 4 unusable input or "
    "usage.\nA verdict is never a licence to build: the contract documents and the engineer in responsible charge "
    "decide.";

// A first word that is no command, for which the library only says that one is missing.
bool known_command(const CLI::App& app, const std::string& word) {
  std::vector<std::string> names;
  for (const CLI::App* one : app.get_subcommands([](const CLI::App*) { return true; })) {
    names.push_back(one->get_name());
  }
  if (word.rfind('-', 0) == 0 || std::find(names.begin(), names.end(), word) != names.end()) {
    return true;
  }
  const std::vector<std::string_view> known(names.begin(), names.end());
  plumbrule::command::print_error("found `" + word + "`, no command of that name; " +
                                  plumbrule::diagnose::suggestion(word, known));
  return false;
}

int run(int count, char** arguments) {
  CLI::App app{"Checks pavement-mix trial results against agency specification limits and explains every verdict",
               "plumbrule"};
  app.set_version_flag("--version", "plumbrule " PLUMBRULE_VERSION);
  app.require_subcommand(1);
  app.footer(footer);
  plumbrule::command::ReviewOptions review;
  plumbrule::command::ProofOptions proof;
  add_review(app, review);
  add_proof(app, proof);
  plumbrule::command::ReciteOptions recite;
  add_recite(app, recite);
  plumbrule::command::ContrastOptions contrast;
  add_contrast(app, contrast);
  plumbrule::command::EnvelopeOptions envelope;
  add_envelope(app, envelope);
  plumbrule::command::TidyOptions tidy;
  add_tidy(app, tidy);
  plumbrule::command::WindowOptions window;
  add_window(app, window);
  plumbrule::command::TranscribeOptions transcribe;
  add_transcribe(app, transcribe);
  if (count > 1 && !known_command(app, arguments[1])) {
    return static_cast<int>(Exit::unusable);
  }
  try {
    app.parse(count, arguments);
  } catch (const CLI::ParseError& error) {
    const bool asked = app.exit(error) == 0;  // --help or --version
    if (asked && !std::cout.flush()) {
      plumbrule::command::print_error(std::string("cannot write to standard output: ") + std::strerror(errno));
      return static_cast<int>(Exit::unusable);
    }
    return asked ? 0 : static_cast<int>(Exit::unusable);
  }
  if (app.got_subcommand("tidy")) {
    return static_cast<int>(plumbrule::command::tidy(tidy));
  }
  if (app.got_subcommand("envelope")) {
    return static_cast<int>(plumbrule::command::envelope(envelope));
  }
  if (app.got_subcommand("contrast")) {
    return static_cast<int>(plumbrule::command::contrast(contrast));
  }
  if (app.got_subcommand("window")) {
    return static_cast<int>(plumbrule::command::window(window));
  }
  if (app.got_subcommand("transcribe")) {
    return static_cast<int>(plumbrule::command::transcribe(transcribe));
  }
  if (app.got_subcommand("recite")) {
    return static_cast<int>(plumbrule::command::recite(recite));
  }
  return static_cast<int>(app.got_subcommand("review") ? plumbrule::command::review(review)
                                                       : plumbrule::command::proof(proof));
}

}  // namespace

int main(int count, char** arguments) {
  try {
    return run(count, arguments);
  } catch (const std::exception& error) {
    plumbrule::command::print_error(std::string("stopped by an internal error: ") + error.what());
    return static_cast<int>(Exit::unusable);
  }
}
