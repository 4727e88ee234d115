#include "command/rule_set.hpp"

namespace plumbrule::command {

std::vector<std::string> library_folders(const std::vector<std::string>& given) {
  std::vector<std::string> out = given;
  out.emplace_back(PLUMBRULE_INSTALLED_SPECS);
  out.emplace_back(PLUMBRULE_SOURCE_SPECS);
  return out;
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
  return RuleSet{request.path, std::move(*rules), std::move(plan), std::move(mismatches)};
}

}  // namespace plumbrule::command
