#include "language/library/rule_set.hpp"

#include <algorithm>

#include "language/library/folder.hpp"
#include "language/syntax/tree.hpp"

namespace plumbrule::library {
namespace {

// A vocabulary on its own, or an amendment; a file that cannot be read is not passed over, so that it is reported.
bool passed_over(check::Shelf& shelf, const std::string& path) {
  diagnose::Diagnostics faults;
  const syntax::RuleFile* tree = shelf.read(path, {}, faults);
  if (tree == nullptr || faults.has_errors()) {
    return false;
  }
  const auto holds = [&](auto kind) {
    return std::any_of(tree->items.begin(), tree->items.end(),
                       [](const syntax::Item& item) { return std::holds_alternative<decltype(kind)>(item); });
  };
  return holds(syntax::Amendment{}) || !holds(syntax::Specification{});
}

void none_below(const std::string& folder, const std::string& sought, diagnose::Diagnostics& diagnostics) {
  diagnostics.error(diagnose::Code::clause_missing, {}, "found no " + sought + " below the folder `" + folder + "`",
                    "name a folder with rule files (*.plumb), or the rule file itself");
}

// Folders replaced by the rule files below them that are wanted, sorted; a path that is no folder stays. A folder
// without any is an error: nothing would be held against it, and nothing would fail.
std::vector<std::string> expanded(const source::Files& files, const std::vector<std::string>& paths,
                                  const std::string& sought, const WantedPath& wanted,
                                  diagnose::Diagnostics& diagnostics) {
  std::vector<std::string> out;
  for (const std::string& path : paths) {
    if (!is_folder(files, path)) {
      out.push_back(path);
      continue;
    }
    const auto found = files_below(
        files, path, [&](const std::string& one) { return source::ending(one) == ".plumb" && wanted(one); },
        diagnostics);
    if (found.empty()) {
      none_below(path, sought, diagnostics);
    }
    out.insert(out.end(), found.begin(), found.end());
  }
  return out;
}

}  // namespace

std::vector<std::string> rule_files(const check::Shelf& shelf, const std::vector<std::string>& paths,
                                    diagnose::Diagnostics& diagnostics) {
  return expanded(
      shelf.files(), paths, "rule file", [](const std::string&) { return true; }, diagnostics);
}

std::vector<std::string> specifications_in(check::Shelf& shelf, const std::vector<std::string>& paths,
                                           diagnose::Diagnostics& diagnostics) {
  return expanded(
      shelf.files(), paths, "specification", [&](const std::string& path) { return !passed_over(shelf, path); },
      diagnostics);
}

std::optional<RuleSet> prepare(check::Shelf& shelf, const check::Request& request, const std::string& on,
                               diagnose::Diagnostics& diagnostics) {
  diagnose::Diagnostics own;
  check::Loaded loaded = check::load(shelf, request, own);
  diagnose::Diagnostics mismatches;
  check::amend(loaded, on, own, mismatches);
  auto rules = check::check(shelf.sources(), loaded.files, own);
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

std::optional<RuleSet> prepare_specification(check::Shelf& shelf, const check::Request& request, const std::string& on,
                                             diagnose::Diagnostics& diagnostics) {
  auto set = prepare(shelf, request, on, diagnostics);
  if (set && !set->rules.specification) {
    diagnostics.error(diagnose::Code::clause_missing, {set->rules.file, 0, 0},
                      "found no specification in `" + request.path + "`", "name a rule file that holds one");
    return std::nullopt;
  }
  return set;
}

}  // namespace plumbrule::library
