#include "rulebook.hpp"

namespace plumbrule::oracle {
namespace {

template <typename Tree>
const Tree* find(const std::map<std::string, const Tree*>& all, const std::string& name) {
  const auto at = all.find(name);
  return at == all.end() ? nullptr : at->second;
}

template <typename Tree>
void note(std::map<std::string, const Tree*>& all, const syntax::Item& item) {
  if (const auto* tree = std::get_if<Tree>(&item)) {
    all.emplace(tree->name.value, tree);
  }
}

}  // namespace

Rulebook::Rulebook(const source::SourceMap& sources, const std::vector<syntax::RuleFile>& files) : sources_(sources) {
  for (const syntax::RuleFile& file : files) {
    for (const syntax::Item& item : file.items) {
      note(conditions_, item);
      note(categories_, item);
      note(tables_, item);
      note(gradings_, item);
      note(terms_, item);
      if (const auto* measure = std::get_if<syntax::Measure>(&item)) {
        measures_.emplace(measure->name.value, MeasureOf{measure, &file});
      }
    }
  }
  for (const syntax::Item& item : files.front().items) {
    if (const auto* specification = std::get_if<syntax::Specification>(&item)) {
      specification_ = specification;
    } else if (const auto* requirement = std::get_if<syntax::Requirement>(&item)) {
      requirements_.push_back(requirement);
    }
  }
}

const syntax::Measure* Rulebook::measure(const std::string& name) const {
  const auto at = measures_.find(name);
  return at == measures_.end() ? nullptr : at->second.tree;
}

const syntax::Category* Rulebook::category(const std::string& name) const { return find(categories_, name); }
const syntax::Table* Rulebook::table(const std::string& name) const { return find(tables_, name); }
const syntax::Term* Rulebook::term(const std::string& name) const { return find(terms_, name); }

}  // namespace plumbrule::oracle
