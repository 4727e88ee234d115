#include "apply/contrast/questions.hpp"

#include <algorithm>

#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

// For which of the mixes a case that is asked before the demand, or is its own, cannot be passed without the class.
void ask(const Asked& of_case, const std::string& category, const Mixes& mixes, const Words& words, Mixes& open) {
  if (of_case.count(category) == 0) {
    return;
  }
  Asked others = of_case;
  others.erase(category);
  for (const Asked& part : common(mixes, mixes_of(others, {}, words), words)) {
    open.push_back(part);
  }
}

void add_categories(const Asked& asked, std::map<std::string, Mixes>& out) {
  for (const auto& [category, wanted] : asked) {
    out.emplace(category, Mixes());
  }
}

// The clauses of one side that ask for a class of which the other side does not ask as much.
void note_asked(const Questions& own, const Questions& other, const Demand& demand, const std::string& category,
                std::vector<std::string>& clauses) {
  const auto asked = own.find(category);
  const auto beside = other.find(category);
  if (asked == own.end() || (beside != other.end() && beside->second >= asked->second)) {
    return;
  }
  const std::string& number = demand.requirement->number;
  if (std::find(clauses.begin(), clauses.end(), number) == clauses.end()) {
    clauses.push_back(number);
  }
}

std::string asked_in(const std::vector<std::string>& clauses) {
  std::string out;
  for (const std::string& number : clauses) {
    out += (out.empty() ? "to be stated for " : ", ") + number;
  }
  return out;
}

}  // namespace

Questions must_state(const check::Rules& rules, const Demand& demand, const Mixes& mixes, const Words& words) {
  std::vector<Asked> cases = demand.exceptions;
  cases.push_back(classes_of(rules, demand.one->where));
  const Asked where = classes_of(rules, demand.requirement->where);
  std::map<std::string, Mixes> open;
  add_categories(where, open);
  for (const Asked& one : cases) {
    add_categories(one, open);
  }
  Questions out;
  for (auto& [category, of] : open) {
    if (where.count(category) > 0) {
      of = mixes;
    }
    for (const Asked& one : cases) {
      ask(one, category, mixes, words, of);
    }
    if (!of.empty()) {
      out.emplace(category, without(mixes, of, words).empty() ? Stated::by_all : Stated::by_some);
    }
  }
  return out;
}

std::string to_state(const Questions& classes) {
  std::string out;
  for (const auto& [category, stated] : classes) {
    out += (out.empty() ? "class to be stated: " : ", ") + explain::spaced(category) +
           (stated == Stated::by_some ? " (for some)" : "");
  }
  return out.empty() ? "no class to be stated" : out;
}

void AskedOtherwise::add(const Questions& before, const Demand& left, const Questions& after, const Demand& right) {
  for (const auto* side : {&before, &after}) {
    for (const auto& [category, stated] : *side) {
      Clauses& clauses = by_class_[category];
      note_asked(before, after, left, category, clauses.before);
      note_asked(after, before, right, category, clauses.after);
    }
  }
}

std::vector<General> AskedOtherwise::told() const {
  std::vector<General> out;
  for (const auto& [category, clauses] : by_class_) {
    if (!clauses.before.empty() || !clauses.after.empty()) {
      out.push_back({ChangeKind::conditions, "class " + explain::spaced(category), asked_in(clauses.before),
                     asked_in(clauses.after), ""});
    }
  }
  return out;
}

}  // namespace plumbrule::contrast
