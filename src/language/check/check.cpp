#include "language/check/check.hpp"

#include "language/check/checker.hpp"

namespace plumbrule::check {

Rules Checker::run(const std::vector<syntax::RuleFile>& files) {
  rules_.file = files.front().file;
  // A range of temperatures is taken on the point scale of its limit, whether or not a rule writes that scale. All
  // units of a plan must be known here, because a submittal counts on from these.
  for (const char* const scale : {"degC", "degF", "Cdeg", "Fdeg", "mm"}) {
    (void)rules_.units.find(scale);
  }
  for (const syntax::RuleFile& file : files) {
    rules_.files.push_back(file.file);
    broken_.insert(file.broken.begin(), file.broken.end());
    declare_items(file);
  }
  for (const syntax::RuleFile& file : files) {
    resolve_items(file);
  }
  // Only the first file speaks of requirements and examples; those of a vocabulary are proved with the vocabulary.
  bool specifies = false;
  for (const syntax::Item& item : files.front().items) {
    if (const auto* specification = std::get_if<syntax::Specification>(&item)) {
      resolve(*specification);
    } else if (const auto* vocabulary = std::get_if<syntax::Vocabulary>(&item)) {
      rules_.vocabulary = vocabulary->name.value;
    }
  }
  for (const syntax::Item& item : files.front().items) {
    if (const auto* section = std::get_if<syntax::Section>(&item)) {
      rules_.sections.push_back({section->number.value, section->title.value});
    } else if (const auto* requirement = std::get_if<syntax::Requirement>(&item)) {
      specifies = true;
      resolve(*requirement);
    }
  }
  for (const syntax::Item& item : files.front().items) {
    if (const auto* example = std::get_if<syntax::Example>(&item)) {
      resolve(*example);
    }
  }
  note_unused();
  rules_.withdrawn = files.front().withdrawn;
  if (rules_.specification) {
    rules_.specification->amendments = files.front().amended_by;
  }
  if (specifies && !rules_.specification) {
    error(diagnose::Code::clause_missing, rules_.requirements.front().span,
          "found requirements but no `specification` in the file",
          "begin with `specification NAME \"TITLE\"`, its edition and its `compare by` clause");
  }
  return std::move(rules_);
}

std::optional<Rules> check(const source::SourceMap& sources, const std::vector<syntax::RuleFile>& files,
                           diagnose::Diagnostics& diagnostics) {
  // Without all its vocabularies nearly every name of a specification would be unknown: that is not said name by name.
  const auto unread = [](const diagnose::Diagnostic& one) {
    return one.code == diagnose::Code::library_kind || one.code == diagnose::Code::library_missing ||
           one.code == diagnose::Code::file_unreadable || one.code == diagnose::Code::file_encoding;
  };
  const auto without_uses = [](const syntax::Item& item) {
    const auto* specification = std::get_if<syntax::Specification>(&item);
    return specification != nullptr && specification->broken && specification->uses.empty();
  };
  if (!files.empty() && std::any_of(files.front().items.begin(), files.front().items.end(), without_uses)) {
    return std::nullopt;
  }
  if (files.empty() || std::any_of(diagnostics.all().begin(), diagnostics.all().end(), unread)) {
    return std::nullopt;
  }
  Rules rules = Checker(sources, diagnostics).run(files);
  if (diagnostics.has_errors()) {
    return std::nullopt;
  }
  return rules;
}

}  // namespace plumbrule::check
