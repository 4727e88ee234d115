#include "command/submittal.hpp"

#include "command/output.hpp"

namespace plumbrule::command {

std::optional<evidence::Node> read_submittal(source::SourceMap& sources, const std::string& path) {
  diagnose::Diagnostics diagnostics;
  std::optional<evidence::Node> out;
  source::FileText file = source::read_file(path);
  if (!file.text) {
    diagnostics.error(diagnose::Code::file_unreadable, {}, "cannot read `" + path + "`: " + file.reason,
                      "check the path");
  } else {
    const source::FileId id = sources.add(path, std::move(*file.text));
    out = evidence::read_yaml(sources, id, diagnostics);
  }
  print_diagnostics(diagnostics, sources);
  return diagnostics.has_errors() ? std::nullopt : std::move(out);
}

evidence::KnownNames names_of(const std::vector<RuleSet>& sets) {
  evidence::KnownNames out;
  for (const RuleSet& set : sets) {
    for (const check::Measure& measure : set.rules.measures) {
      out.measures.push_back(measure.name);
    }
    for (const check::Condition& condition : set.rules.conditions) {
      out.conditions.push_back(condition.name);
    }
    for (const check::Category& category : set.rules.categories) {
      out.categories.push_back(category.name);
    }
  }
  return out;
}

}  // namespace plumbrule::command
