#include "command/options.hpp"

#include <algorithm>
#include <array>

#include "command/options_parts.hpp"

namespace plumbrule::command {
namespace {

constexpr std::array<AddCommand*, 11> table{add_review,     add_follow_up, add_window,   add_proof,
                                            add_recite,     add_contrast,  add_envelope, add_tidy,
                                            add_transcribe, add_sweep,     add_manual};

constexpr const char* footer =
    "Exit status: 0 complies, 1 something fails, 2 evidence incomplete, 3 rule files broken, 4 unusable input or "
    "usage.\nA verdict is never a licence to build: the contract documents and the engineer in responsible charge "
    "decide.";

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
  app_.set_version_flag("--version", "plumbrule " PLUMBRULE_VERSION);
  app_.require_subcommand(1);
  app_.footer(footer);
  for (AddCommand* const add : table) {
    std::function<Exit()> run = add(app_);
    commands_.push_back({app_.get_subcommands([](const CLI::App*) { return true; }).back(), std::move(run)});
  }
}

Exit CommandLine::run() const {
  const auto asked =
      std::find_if(commands_.begin(), commands_.end(), [](const Entry& one) { return one.command->parsed(); });
  return asked == commands_.end() ? Exit::unusable : asked->run();
}

}  // namespace plumbrule::command
