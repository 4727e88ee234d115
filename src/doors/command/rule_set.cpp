#include "doors/command/rule_set.hpp"

#include <algorithm>
#include <filesystem>

#include "doors/command/folder.hpp"
#include "language/syntax/tree.hpp"

namespace plumbrule::command {
namespace {

// A vocabulary on its own, or an amendment; a file that cannot be read is not passed over, so that it is reported.
bool passed_over(const std::string& path) {
  source::SourceMap sources;
  source::FileText file = source::read_file(path);
  if (!file.text) {
    return false;
  }
  diagnose::Diagnostics ignored;
  const syntax::RuleFile tree = syntax::parse(sources, sources.add(path, std::move(*file.text)), ignored);
  const auto holds = [&](auto kind) {
    return std::any_of(tree.items.begin(), tree.items.end(),
                       [](const syntax::Item& item) { return std::holds_alternative<decltype(kind)>(item); });
  };
  return !ignored.has_errors() && (holds(syntax::Amendment{}) || !holds(syntax::Specification{}));
}

void none_below(const std::string& folder, const std::string& sought, diagnose::Diagnostics& diagnostics) {
  diagnostics.error(diagnose::Code::clause_missing, {}, "found no " + sought + " below the folder `" + folder + "`",
                    "name a folder with rule files (*.plumb), or the rule file itself");
}

// Folders replaced by the rule files below them that are wanted, sorted; a path that is no folder stays. A folder
// without any is an error: nothing would be held against it, and nothing would fail.
std::vector<std::string> expanded(const std::vector<std::string>& paths, const std::string& sought,
                                  const WantedPath& wanted, diagnose::Diagnostics& diagnostics) {
  std::vector<std::string> out;
  for (const std::string& path : paths) {
    if (!is_folder(path)) {
      out.push_back(path);
      continue;
    }
    const auto found = files_below(
        path, [&](const std::string& one) { return ending(one) == ".plumb" && wanted(one); }, diagnostics);
    if (found.empty()) {
      none_below(path, sought, diagnostics);
    }
    out.insert(out.end(), found.begin(), found.end());
  }
  return out;
}

}  // namespace

std::vector<std::string> library_folders(const std::vector<std::string>& given) {
  std::vector<std::string> out = given;
  out.emplace_back(PLUMBRULE_INSTALLED_SPECS);
  // Inside of the repository its path is not part of a report, which is the same in every checkout then.
  const std::filesystem::path shipped = PLUMBRULE_SOURCE_SPECS;
  std::error_code failure;
  const std::filesystem::path near = shipped.lexically_relative(std::filesystem::current_path(failure));
  out.push_back(failure || near.empty() || *near.begin() == ".." ? shipped.string() : near.string());
  return out;
}

std::vector<std::string> rule_files(const std::vector<std::string>& paths, diagnose::Diagnostics& diagnostics) {
  return expanded(
      paths, "rule file", [](const std::string&) { return true; }, diagnostics);
}

std::vector<std::string> specifications_in(const std::vector<std::string>& paths, diagnose::Diagnostics& diagnostics) {
  return expanded(
      paths, "specification", [](const std::string& path) { return !passed_over(path); }, diagnostics);
}

std::optional<RuleSet> prepare(source::SourceMap& sources, const check::Request& request, const std::string& on,
                               diagnose::Diagnostics& diagnostics) {
  diagnose::Diagnostics own;
  check::Loaded loaded = check::load(sources, request, own);
  diagnose::Diagnostics mismatches;
  check::amend(loaded, on, own, mismatches);
  auto rules = check::check(sources, loaded.files, own);
  own.sort_by_place();
  diagnostics.append(own);
  if (!rules) {
    return std::nullopt;
  }
  plan::Plan plan = plan::compile(*rules);
  std::vector<source::FileId> amendments;
  for (const syntax::RuleFile& one : loaded.amendments) {
    amendments.push_back(one.file);
  }
  return RuleSet{request.path,          std::move(*rules),     std::move(plan),
                 std::move(amendments), std::move(mismatches), std::move(loaded.fitting)};
}

std::optional<RuleSet> prepare_specification(source::SourceMap& sources, const check::Request& request,
                                             const std::string& on, diagnose::Diagnostics& diagnostics) {
  auto set = prepare(sources, request, on, diagnostics);
  if (set && !set->rules.specification) {
    diagnostics.error(diagnose::Code::clause_missing, {set->rules.file, 0, 0},
                      "found no specification in `" + request.path + "`", "name a rule file that holds one");
    return std::nullopt;
  }
  return set;
}

}  // namespace plumbrule::command
