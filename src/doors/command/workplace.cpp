#include "doors/command/workplace.hpp"

#include <filesystem>
#include <utility>

#include "judge/evidence/written.hpp"

namespace plumbrule::command {

namespace {

namespace fs = std::filesystem;

// Beside the program: where it is installed, or in the tree that it was built in.
fs::path shipped_folder() {
  std::error_code failure;
  const fs::path folder = fs::read_symlink("/proc/self/exe", failure).parent_path();
  const fs::path build = folder.parent_path().parent_path();  // .build of .build/release/src
  return build.filename() == ".build" ? build.parent_path() / "specs" : folder.parent_path() / "share/plumbrule/specs";
}

}  // namespace

std::vector<std::string> library_folders(const std::vector<std::string>& given) {
  std::vector<std::string> out = given;
  // Inside of the repository its path is not part of a report, which is the same in every checkout then.
  const fs::path shipped = shipped_folder();
  std::error_code failure;
  const fs::path near = shipped.lexically_relative(fs::current_path(failure));
  out.push_back(failure || near.empty() || *near.begin() == ".." ? shipped.string() : near.string());
  return out;
}

std::optional<library::RulesInForce> rules_in_force(Workplace& place, const library::RuleChoice& choice) {
  diagnose::Diagnostics diagnostics;
  library::RuleChoice with_folders = choice;
  with_folders.libraries = library_folders(choice.libraries);
  auto out = library::choose(place.shelf, with_folders, diagnostics);
  print_diagnostics(diagnostics, place.sources);
  if (out) {
    // Also where it is seen though the report goes to a file.
    for (const library::SetAside& aside : out->aside) {
      print_error("not in force on " + out->on + ": " + library::aside_text(aside));
    }
  }
  return out;
}

std::optional<evidence::SubmittalRecord> read_submittal(Workplace& place, const std::string& path,
                                                        const evidence::RecordChoice& choice) {
  diagnose::Diagnostics diagnostics;
  auto out = evidence::read_record(place.files, place.sources, path, choice, diagnostics);
  print_diagnostics(diagnostics, place.sources);
  return diagnostics.has_errors() ? std::nullopt : std::move(out);
}

bool is_day(const std::string& on, const std::string& option) {
  if (on.empty() || evidence::read_date(on)) {
    return true;
  }
  print_error("found `" + on + "`" + option +
              ", no date; write year, month and day: " + (option.empty() ? "2026-03-20" : "`2026-03-20`"));
  return false;
}

Exit exit_of(assess::Upshot upshot) {
  switch (upshot) {
    case assess::Upshot::complies:
      return Exit::complies;
    case assess::Upshot::fails:
      return Exit::fails;
    case assess::Upshot::incomplete:
      break;
  }
  return Exit::incomplete;
}

}  // namespace plumbrule::command
