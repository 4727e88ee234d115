#include "doors/command/options_parts.hpp"

namespace plumbrule::command {
namespace {

// CLI11 would add its own word for a folder to the name of the kind.
CLI::Validator there() { return CLI::Validator(CLI::ExistingDirectory).description(""); }

}  // namespace

void add_against(CLI::App& command, std::vector<std::string>& target) {
  command.add_option("--against", target, "A specification, or a folder of them; may be repeated")
      ->required()
      ->type_name(takes::rules);
}

void add_amendments(CLI::App& command, std::vector<std::string>& target, const std::string& name,
                    const std::string& description) {
  command.add_option(name, target, description)->type_name(takes::rules);
}

void add_day(CLI::App& command, std::string& target) {
  command.add_option("--on", target, "The day of the review: only what was in force then")->type_name(takes::day);
}

void add_record(CLI::App& command, std::string& target, const std::string& name) {
  const std::string sheet = name == "--record-before"  ? "BEFORE, if it is a sheet of several"
                            : name == "--record-after" ? "AFTER, if it is a sheet of several"
                                                       : "a sheet of several";
  command
      .add_option(name, target,
                  "Which record of " + sheet + ": its number or its mix; `number=1` or `mix=1` if both may be meant")
      ->type_name(takes::record);
}

void add_libraries(CLI::App& command, std::vector<std::string>& target) {
  command.add_option("--library", target, "A folder with vocabularies; may be repeated")
      ->check(there())
      ->type_name(takes::folder);
}

void add_format(CLI::App& command, Format& target, const Words<Format>& words, const std::string& remark) {
  add_choice(command, "--format", target, words, "How it is written" + (remark.empty() ? "" : "; " + remark));
}

void add_detail(CLI::App& command, Detail& target) {
  add_choice<Detail>(command, "--detail", target,
                     {{"by-output", Detail::by_output}, {"short", Detail::brief}, {"full", Detail::full}},
                     "How much a text report says; by-output is short on a terminal and full elsewhere");
}

void add_out(CLI::App& command, std::string& target) {
  command.add_option("--out", target, "Write to this file, whole or not at all")->type_name(takes::file);
}

void add_log(CLI::App& command, bool& target) {
  command.add_flag("--log", target, "Say on standard error what is being done");
}

CLI::Option* add_folder(CLI::App& command, const std::string& name, std::string& target,
                        const std::string& description) {
  return command.add_option(name, target, description)->check(there())->type_name(takes::folder);
}

}  // namespace plumbrule::command
