#include <algorithm>
#include <map>
#include <type_traits>

#include "language/check/check.hpp"

namespace plumbrule::check {
namespace {

using syntax::Change;

class Amender {
 public:
  Amender(syntax::RuleFile& file, diagnose::Diagnostics& diagnostics) : file_(file), diagnostics_(diagnostics) {}

  void apply(const syntax::Amendment& amendment) {
    // New titles first: a clause may be retitled and withdrawn by one amendment, in whatever order it is written.
    for (const bool titles : {true, false}) {
      for (const Change& change : amendment.changes) {
        if ((change.kind == Change::Kind::retitle) == titles && !conflicts(change, amendment)) {
          apply(change, amendment);
        }
      }
    }
  }

 private:
  struct Made {
    std::string day;
    Span span;
    bool title = false;
  };
  syntax::RuleFile& file_;
  diagnose::Diagnostics& diagnostics_;
  std::multimap<std::string, Made> made_;

  // A later day outdoes an earlier one; of one day, neither does.
  bool conflicts(const Change& change, const syntax::Amendment& amendment) {
    const bool title = change.kind == Change::Kind::retitle;
    const auto [first, last] = made_.equal_range(change.number.value);
    for (auto at = first; at != last; ++at) {
      if (at->second.day == first_day(amendment.effective.value) && at->second.title == title) {
        auto& report =
            diagnostics_.error(diagnose::Code::amendment_conflict, change.span,
                               "found a second change of clause `" + change.number.value + "` effective the same day",
                               "withdraw one of them, or give one a later day");
        report.secondary.push_back({at->second.span, "the first one"});
        return true;
      }
    }
    made_.emplace(change.number.value, Made{first_day(amendment.effective.value), change.span, title});
    return false;
  }

  [[nodiscard]] std::vector<syntax::Item>::iterator find(const std::string& number) {
    return std::find_if(file_.items.begin(), file_.items.end(), [&](const syntax::Item& item) {
      const auto* requirement = std::get_if<syntax::Requirement>(&item);
      return requirement != nullptr && requirement->number.value == number;
    });
  }

  void add(const Change& change, const syntax::Amendment& amendment) {
    syntax::Requirement requirement = *change.requirement;
    requirement.amended_by.push_back(label(amendment));
    // Behind the last requirement, so that it lands in the last section.
    file_.items.emplace_back(std::move(requirement));
  }

  static std::string label(const syntax::Amendment& amendment) {
    return amendment.title.value + ", effective " + amendment.effective.value;
  }

  void set_limit(const Change& change, syntax::Requirement& requirement) {
    if (requirement.alternatives.size() != 1) {
      diagnostics_.error(diagnose::Code::clause_conflict, change.span,
                         "found a new limit for clause `" + change.number.value + "`, which has alternatives",
                         "replace the whole requirement");
      return;
    }
    requirement.alternatives.front().limit = *change.limit;
  }

  void apply(const Change& change, const syntax::Amendment& amendment) {
    const auto at = find(change.number.value);
    if (change.kind == Change::Kind::add) {
      if (at != file_.items.end()) {
        diagnostics_.error(diagnose::Code::name_duplicate, change.number.span,
                           "found clause `" + change.number.value + "` added, which is there already",
                           "replace it, or give the new one a number of its own");
        return;
      }
      return add(change, amendment);
    }
    if (at == file_.items.end()) {
      diagnostics_.error(
          diagnose::Code::name_unknown, change.number.span,
          "found a change of clause `" + change.number.value + "`, which the specification does not have",
          "check the number; a clause that was withdrawn can only be added again");
      return;
    }
    if (change.kind == Change::Kind::withdraw) {
      file_.withdrawn.push_back({std::get<syntax::Requirement>(*at).number.value,
                                 std::get<syntax::Requirement>(*at).title.value, label(amendment),
                                 change.because.value});
      file_.items.erase(at);
      return;
    }
    auto& requirement = std::get<syntax::Requirement>(*at);
    if (change.kind == Change::Kind::whole) {
      std::vector<std::string> before = requirement.amended_by;
      requirement = *change.requirement;
      requirement.amended_by = std::move(before);
    } else if (change.kind == Change::Kind::retitle) {
      requirement.title = change.title;
    } else {
      set_limit(change, requirement);
    }
    if (change.cite.given()) {
      requirement.cite = change.cite;
    }
    const auto& by = requirement.amended_by;
    if (std::find(by.begin(), by.end(), label(amendment)) == by.end()) {
      requirement.amended_by.push_back(label(amendment));
    }
  }
};

struct InForce {
  const syntax::Amendment* amendment = nullptr;
  const syntax::RuleFile* file = nullptr;
};

bool fits(const syntax::Amendment& amendment, const syntax::Specification& specification,
          diagnose::Diagnostics& diagnostics, diagnose::Diagnostics& mismatches) {
  if (amendment.broken || !amendment.specification.given() || !amendment.effective.given()) {
    if (!amendment.broken) {
      diagnostics.error(diagnose::Code::clause_missing, amendment.name.span,
                        "found an amendment that lacks its `amends` or its `effective` clause",
                        "write `amends NAME edition DATE` and `effective DATE`");
    }
    return false;
  }
  const bool same = amendment.specification.value == specification.name.value &&
                    amendment.edition.value == specification.edition.value;
  if (!same) {
    auto& report = mismatches.error(
        diagnose::Code::amendment_conflict, source::cover(amendment.specification.span, amendment.edition.span),
        "found an amendment to `" + amendment.specification.value + "` edition `" + amendment.edition.value + "`",
        "the specification is `" + specification.name.value + "` edition `" + specification.edition.value + "`");
    report.secondary.push_back({specification.name.span, "the specification"});
  }
  return same;
}

// The name of an item that belongs into a vocabulary or a specification.
const syntax::Text* foreign_name(const syntax::Item& item) {
  return std::visit(
      [](const auto& tree) -> const syntax::Text* {
        using Tree = std::decay_t<decltype(tree)>;
        constexpr bool foreign = std::is_same_v<Tree, syntax::Measure> || std::is_same_v<Tree, syntax::Condition> ||
                                 std::is_same_v<Tree, syntax::Basis> || std::is_same_v<Tree, syntax::Table> ||
                                 std::is_same_v<Tree, syntax::Vocabulary> ||
                                 std::is_same_v<Tree, syntax::Specification>;
        if constexpr (foreign) {
          return &tree.name;
        } else {
          return nullptr;
        }
      },
      item);
}

// What stands in an amendment file and would have no effect.
void stray_items(const syntax::RuleFile& file, diagnose::Diagnostics& diagnostics) {
  for (const syntax::Item& item : file.items) {
    if (const auto* requirement = std::get_if<syntax::Requirement>(&item)) {
      diagnostics.error(
          diagnose::Code::clause_conflict, requirement->number.span,
          "found requirement `" + requirement->number.value + "` in an amendment, neither added nor replacing another",
          "write `add requirement " + requirement->number.value + " ...` or `replace requirement " +
              requirement->number.value + " ...`");
    } else if (const auto* section = std::get_if<syntax::Section>(&item)) {
      diagnostics.error(diagnose::Code::clause_conflict, section->number.span,
                        "found section `" + section->number.value + "` in an amendment",
                        "an amendment changes clauses; it has no sections of its own");
    } else if (const syntax::Text* name = foreign_name(item)) {
      diagnostics.error(diagnose::Code::clause_conflict, name->span,
                        "found `" + name->value + "` declared in an amendment",
                        "what is measured is declared in a vocabulary");
    }
  }
}

// Examples of the specification are about its own clauses; those of the amendments are about the amended ones.
// Gradings, terms and categories of an amendment join the specification.
void merge_items(syntax::RuleFile& file, const std::vector<InForce>& in_force) {
  file.items.erase(
      std::remove_if(file.items.begin(), file.items.end(),
                     [](const syntax::Item& item) { return std::holds_alternative<syntax::Example>(item); }),
      file.items.end());
  for (const InForce& one : in_force) {
    for (const syntax::Item& item : one.file->items) {
      const bool joins = std::holds_alternative<syntax::Example>(item) ||
                         std::holds_alternative<syntax::Grading>(item) || std::holds_alternative<syntax::Term>(item) ||
                         std::holds_alternative<syntax::Category>(item);
      if (joins) {
        file.items.push_back(item);
      }
    }
  }
}

}  // namespace

std::string first_day(const std::string& mark) {
  return mark + std::string("-01-01").substr(mark.size() == 4 ? 0 : mark.size() == 7 ? 3 : 6);
}

void amend(Loaded& loaded, const std::string& on, diagnose::Diagnostics& diagnostics,
           diagnose::Diagnostics& mismatches) {
  if (loaded.files.empty() || loaded.amendments.empty()) {
    return;
  }
  syntax::RuleFile& file = loaded.files.front();
  const syntax::Specification* specification = nullptr;
  for (const syntax::Item& item : file.items) {
    specification =
        std::holds_alternative<syntax::Specification>(item) ? &std::get<syntax::Specification>(item) : specification;
  }
  if (specification == nullptr) {
    return;
  }
  std::vector<InForce> in_force;
  for (const syntax::RuleFile& amending : loaded.amendments) {
    stray_items(amending, diagnostics);
    for (const syntax::Item& item : amending.items) {
      const auto* amendment = std::get_if<syntax::Amendment>(&item);
      if (amendment == nullptr || !fits(*amendment, *specification, diagnostics, mismatches)) {
        continue;
      }
      const bool now = on.empty() || first_day(amendment->effective.value) <= on;
      loaded.fitting.push_back({amending.file, amendment->title.value, amendment->effective.value, now});
      if (now) {
        in_force.push_back({amendment, &amending});
      }
    }
  }
  std::stable_sort(in_force.begin(), in_force.end(), [](const InForce& left, const InForce& right) {
    return first_day(left.amendment->effective.value) < first_day(right.amendment->effective.value);
  });
  Amender amender(file, diagnostics);
  for (const InForce& one : in_force) {
    file.amended_by.push_back(one.amendment->title.value + ", effective " + one.amendment->effective.value);
    amender.apply(*one.amendment);
  }
  if (!in_force.empty()) {
    merge_items(file, in_force);
  }
}

}  // namespace plumbrule::check
