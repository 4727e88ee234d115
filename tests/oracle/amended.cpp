#include "amended.hpp"

#include <algorithm>

namespace plumbrule::oracle {
namespace {

using syntax::Change;
using Items = std::vector<syntax::Item>;

Items::iterator clause(Items& items, const std::string& number) {
  return std::find_if(items.begin(), items.end(), [&](const syntax::Item& item) {
    const auto* requirement = std::get_if<syntax::Requirement>(&item);
    return requirement != nullptr && requirement->number.value == number;
  });
}

void apply(const Change& change, Items& items) {
  if (change.kind == Change::Kind::add) {
    items.emplace_back(*change.requirement);
    return;
  }
  const auto at = clause(items, change.number.value);
  if (at == items.end()) {
    return;
  }
  if (change.kind == Change::Kind::withdraw) {
    items.erase(at);
  } else if (change.kind == Change::Kind::whole) {
    *at = *change.requirement;
  } else if (change.kind == Change::Kind::limit) {
    std::get<syntax::Requirement>(*at).alternatives.front().limit = *change.limit;
  }
}

// Words, terms and gradings that an amendment brings along.
bool brought(const syntax::Item& item) {
  return std::holds_alternative<syntax::Grading>(item) || std::holds_alternative<syntax::Term>(item) ||
         std::holds_alternative<syntax::Category>(item);
}

}  // namespace

std::vector<syntax::RuleFile> amended(std::vector<syntax::RuleFile> files,
                                      const std::vector<syntax::RuleFile>& amendments, const std::string& on) {
  if (files.empty()) {
    return files;
  }
  Items& items = files.front().items;
  std::vector<const syntax::Amendment*> in_force;
  for (const syntax::RuleFile& file : amendments) {
    for (const syntax::Item& item : file.items) {
      const auto* amendment = std::get_if<syntax::Amendment>(&item);
      if (amendment != nullptr && (on.empty() || amendment->effective.value <= on)) {
        in_force.push_back(amendment);
        std::copy_if(file.items.begin(), file.items.end(), std::back_inserter(items), brought);
      }
    }
  }
  std::stable_sort(in_force.begin(), in_force.end(),
                   [](const auto* left, const auto* right) { return left->effective.value < right->effective.value; });
  for (const syntax::Amendment* amendment : in_force) {
    for (const Change& change : amendment->changes) {
      apply(change, items);
    }
  }
  return files;
}

}  // namespace plumbrule::oracle
