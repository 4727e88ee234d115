#include "command/rule_set.hpp"

#include <algorithm>
#include <filesystem>

#include "syntax/tree.hpp"

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

// Folders replaced by the rule files below them that are wanted, sorted; a path that is no folder stays.
template <typename Wanted>
std::vector<std::string> expanded(const std::vector<std::string>& paths, const Wanted& wanted) {
  std::vector<std::string> out;
  for (const std::string& path : paths) {
    std::error_code failure;
    if (!std::filesystem::is_directory(path, failure)) {
      out.push_back(path);
      continue;
    }
    std::vector<std::string> found;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(path, failure)) {
      if (entry.is_regular_file() && entry.path().extension() == ".plumb" && wanted(entry.path().string())) {
        found.push_back(entry.path().string());
      }
    }
    std::sort(found.begin(), found.end());
    out.insert(out.end(), found.begin(), found.end());
  }
  return out;
}

}  // namespace

std::vector<std::string> library_folders(const std::vector<std::string>& given) {
  std::vector<std::string> out = given;
  out.emplace_back(PLUMBRULE_INSTALLED_SPECS);
  out.emplace_back(PLUMBRULE_SOURCE_SPECS);
  return out;
}

std::vector<std::string> rule_files(const std::vector<std::string>& paths) {
  return expanded(paths, [](const std::string&) { return true; });
}

std::vector<std::string> specifications_in(const std::vector<std::string>& paths) {
  return expanded(paths, [](const std::string& path) { return !passed_over(path); });
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
  return RuleSet{request.path, std::move(*rules), std::move(plan), std::move(amendments), std::move(mismatches)};
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
