#include "doors/command/options.hpp"

#include "base/source/version.hpp"

#include <algorithm>
#include <array>

#include "doors/command/options_parts.hpp"

namespace plumbrule::command {
namespace {

struct Row {
  AddCommand* add = nullptr;
  const char* statuses = nullptr;  // what its exit statuses mean; 4 is the same everywhere
};
constexpr std::array<Row, 11> table{
    {{add_review, "0 complies, 1 something fails, 2 evidence incomplete, 3 a rule file is broken"},
     {add_follow_up,
      "0 every finding is closed and the resubmittal complies, 1 something fails, or a finding is open, new or "
      "withdrawn, 2 evidence incomplete, 3 a rule file is broken"},
     {add_window,
      "0 the job mix lies inside, 1 it does not, or there is no window, 2 not bracketed or not shown, 3 a rule file is "
      "broken"},
     {add_proof, "0 sound, 3 a rule file is broken or an example is not as expected"},
     {add_recite, "0 written, 3 a rule file is broken"},
     {add_contrast,
      "0 nothing but texts differs, 1 a limit, what is tested or how, or a verdict differs, 2 a past submittal cannot "
      "be "
      "read or has errors, 3 a rule file is broken"},
     {add_envelope,
      "0 nothing is excluded, 1 limits exclude each other, 2 something cannot be compared, 3 a rule file is broken"},
     {add_tidy, "0 laid out, 1 with --check: a file is not, 3 a file has an error"},
     {add_transcribe, "0 written"},
     {add_sweep,
      "0 every record complies, 1 something fails, 2 something is not shown, unreadable or has errors, "
      "3 a rule file is broken"},
     {add_manual, "0 written"}}};

constexpr const char* caution =
    "A verdict is never a licence to build: the contract documents and the engineer in responsible charge decide.";

std::string footer(const std::string& statuses) {
  return "Exit status: " + statuses + ", 4 unusable input or usage.\n" + caution;
}

}  // namespace

const std::vector<ValueKind>& value_kinds() {
  static const std::vector<ValueKind> all{{takes::rules, {".plumb"}, true, true},
                                          {takes::submittal, {".yaml", ".yml", ".json", ".csv"}, true, false},
                                          {takes::folder, {}, false, true},
                                          {takes::file, {}, true, false},
                                          {takes::day, {}, false, false},
                                          {takes::clause, {}, false, false},
                                          {takes::measure, {}, false, false},
                                          {takes::amount, {}, false, false},
                                          {takes::mix_class, {}, false, false},
                                          {takes::record, {}, false, false},
                                          {takes::archive, {".ndjson", ".csv", ".json", ".yaml"}, true, true},
                                          {takes::number, {}, false, false}};
  return all;
}

const ValueKind* value_kind(const CLI::Option& option) {
  const auto& all = value_kinds();
  const std::string name = option.get_type_name();
  const auto found = std::find_if(all.begin(), all.end(), [&](const ValueKind& one) { return one.name == name; });
  return option.get_items_expected_max() == 0 || found == all.end() ? nullptr : &*found;
}

std::vector<std::string> choices(const CLI::Option& option) {
  if (option.get_items_expected_max() == 0 || value_kind(option) != nullptr) {
    return {};
  }
  return CLI::detail::split(option.get_type_name(), '|');
}

std::vector<const CLI::App*> commands_of(const CLI::App& app) {
  return app.get_subcommands([](const CLI::App*) { return true; });
}

CommandLine::CommandLine()
    : app_("Checks pavement-mix trial results against agency specification limits and explains every verdict",
           "plumbrule") {
  app_.set_version_flag("--version", "plumbrule " + std::string(source::version()));
  app_.require_subcommand(1);
  app_.footer(footer("each command says its own in its --help; of a review " + std::string(table.front().statuses)));
  for (const Row& row : table) {
    std::function<Exit()> run = row.add(app_);
    CLI::App* const command = app_.get_subcommands([](const CLI::App*) { return true; }).back();
    command->footer(footer(row.statuses));
    commands_.push_back({command, std::move(run)});
  }
}

Exit CommandLine::run() const {
  const auto asked =
      std::find_if(commands_.begin(), commands_.end(), [](const Entry& one) { return one.command->parsed(); });
  return asked == commands_.end() ? Exit::unusable : asked->run();
}

}  // namespace plumbrule::command
