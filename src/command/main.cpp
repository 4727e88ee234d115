// The command line. Everything that a command does is in its own file; this one only reads options.

#include <CLI/CLI.hpp>
#include <cerrno>
#include <cstring>
#include <iostream>

#include "command/proof.hpp"
#include "command/recite.hpp"
#include "command/review.hpp"
#include "command/tidy.hpp"
#include "command/window.hpp"

namespace {

using plumbrule::command::Exit;
using plumbrule::command::Format;

template <typename Value>
using Words = std::map<std::string, Value>;

const Words<Format> report_formats{{"text", Format::text}, {"json", Format::json}};
const Words<Format> proof_formats{{"text", Format::text}, {"json", Format::json}, {"sarif", Format::sarif}};
const Words<Format> table_formats{{"text", Format::text}, {"markdown", Format::markdown}};
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

void add_review(CLI::App& app, plumbrule::command::ReviewOptions& options) {
  CLI::App* command = app.add_subcommand("review", "Review a submittal against specifications");
  command->add_option("SUBMITTAL", options.submittal, "The submittal, a YAML file")->required();
  command->add_option("--against", options.against, "A specification (*.plumb); may be repeated")->required();
  command->add_option("--with", options.amendments, "An amendment (*.plumb); may be repeated");
  command->add_option("--on", options.on, "The day of the review: only what was in force then");
  command->add_option("--library", options.libraries, "A folder with vocabularies; may be repeated");
  command->add_option("--explain", options.explain, "Only this clause, with every step from reading to verdict");
  add_choice(*command, "--format", options.format, report_formats, "How the report is written");
  command->add_option("--out", options.out, "Write the report to this file");
  command->add_flag("--log", options.log, "Say on standard error what is being done");
}

void add_window(CLI::App& app, plumbrule::command::WindowOptions& options) {
  CLI::App* command = app.add_subcommand("window", "Find the range of a design value that every tested clause allows");
  command->add_option("SUBMITTAL", options.submittal, "The submittal with its trials, a YAML file")->required();
  command->add_option("--against", options.rules.against, "A specification (*.plumb); may be repeated")->required();
  command->add_option("--with", options.rules.amendments, "An amendment (*.plumb); may be repeated");
  command->add_option("--on", options.rules.on, "The day of the review: only what was in force then");
  command->add_option("--library", options.rules.libraries, "A folder with vocabularies; may be repeated");
  command->add_option("--vary", options.vary, "The design value; without it each that results vary with `at`");
  command->add_option("--tolerance", options.tolerance, "How far production may stray from the job mix: `0.5 %`");
  add_choice(*command, "--curve", options.curve, curves, "Also a parabola of least squares, for comparison");
  command->add_option("--explain", options.explain, "Only this clause, with the derivation of each end that it makes");
  add_choice(*command, "--format", options.format, report_formats, "How the report is written");
  command->add_option("--out", options.out, "Write the report to this file");
  command->add_flag("--log", options.log, "Say on standard error what is being done");
}

void add_proof(CLI::App& app, plumbrule::command::ProofOptions& options) {
  CLI::App* command = app.add_subcommand("proof", "Check rule files and run their examples");
  command->add_option("RULES", options.paths, "Rule files, or folders of them")->required();
  command->add_option("--library", options.libraries, "A folder with vocabularies; may be repeated");
  command->add_flag("--remarks", options.remarks, "Show remarks (lint) and branches without an example one by one");
  add_choice(*command, "--format", options.format, proof_formats, "How the findings are written");
  command->add_flag("--log", options.log, "Say on standard error what is being done");
}

void add_recite(CLI::App& app, plumbrule::command::ReciteOptions& options) {
  CLI::App* command = app.add_subcommand("recite", "Show a specification as a table of limits");
  command->add_option("SPECIFICATION", options.path, "The specification (*.plumb)")->required();
  command->add_option("--with", options.amendments, "An amendment (*.plumb); may be repeated");
  command->add_option("--on", options.on, "The day: only the amendments in force then");
  command->add_option("--library", options.libraries, "A folder with vocabularies; may be repeated");
  add_choice(*command, "--units", options.units, unit_systems, "A column of limits converted to these units");
  add_choice(*command, "--format", options.format, table_formats, "How the table is written");
  command->add_option("--out", options.out, "Write the table to this file");
}

void add_tidy(CLI::App& app, plumbrule::command::TidyOptions& options) {
  CLI::App* command = app.add_subcommand("tidy", "Lay out rule files in the canonical way");
  command->add_option("FILE", options.paths, "Rule files; `-` is standard input, laid out on standard output")
      ->required();
  command->add_flag("--check", options.check, "Write nothing; exit 1 if a file is not tidy, and say where");
}

constexpr const char* footer =
    "Exit status: 0 complies, 1 something fails, 2 evidence incomplete, 3 rule files broken, 4 unusable input or "
    "usage.\nA verdict is never a licence to build: the contract documents and the engineer in responsible charge "
    "decide.";

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
  plumbrule::command::TidyOptions tidy;
  add_tidy(app, tidy);
  plumbrule::command::WindowOptions window;
  add_window(app, window);
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
  if (app.got_subcommand("window")) {
    return static_cast<int>(plumbrule::command::window(window));
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
