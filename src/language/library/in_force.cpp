#include "language/library/in_force.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace plumbrule::library {
namespace {

// Became effective later; of two that say no day, or the same, the later edition.
bool later(const check::Specification& one, const check::Specification& other) {
  const std::string left = one.effective.empty() ? "" : check::first_day(one.effective);
  const std::string right = other.effective.empty() ? "" : check::first_day(other.effective);
  return left != right ? left > right : check::first_day(one.edition) > check::first_day(other.edition);
}

std::string named(const RuleSet& set) {
  const check::Specification& own = *set.rules.specification;
  return "specification " + own.name + ", edition " + own.edition + " (" + set.path + ")";
}

// Of several editions of one specification the one that was in force on the day: the latest that had become effective.
// Gives those that are passed over.
std::vector<RuleSet> keep_in_force(RulesInForce& rules, diagnose::Diagnostics& diagnostics) {
  std::vector<RuleSet> out;
  std::vector<RuleSet> waiting;
  std::vector<RuleSet> past;
  const auto replaced = [&](const RuleSet& set, const RuleSet& by) {
    rules.aside.push_back({named(set), "edition " + by.rules.specification->edition + " is in force", false});
  };
  for (RuleSet& set : rules.sets) {
    const check::Specification& own = *set.rules.specification;
    const auto same = std::find_if(out.begin(), out.end(),
                                   [&](const RuleSet& other) { return other.rules.specification->name == own.name; });
    if (!own.effective.empty() && check::first_day(own.effective) > rules.on) {
      waiting.push_back(std::move(set));
    } else if (same == out.end()) {
      out.push_back(std::move(set));
    } else if (later(own, *same->rules.specification)) {
      replaced(*same, set);
      past.push_back(std::exchange(*same, std::move(set)));
    } else {
      replaced(set, *same);
      past.push_back(std::move(set));
    }
  }
  for (const RuleSet& set : waiting) {
    const check::Specification& own = *set.rules.specification;
    const bool other_edition = std::any_of(
        out.begin(), out.end(), [&](const RuleSet& other) { return other.rules.specification->name == own.name; });
    rules.aside.push_back({named(set), "effective " + own.effective, !other_edition && set.by_name});
  }
  if (out.empty()) {
    diagnostics.error(diagnose::Code::clause_missing, {}, "found no specification in force on " + rules.on,
                      "check the day and the `effective` clauses");
  }
  rules.sets = std::move(out);
  std::move(waiting.begin(), waiting.end(), std::back_inserter(past));
  return past;
}

// Those of the specifications under review that are not in force yet, and all of those that are passed over.
void set_amendments_aside(RulesInForce& rules, const std::vector<RuleSet>& passed_over,
                          const source::SourceMap& sources) {
  const auto set_aside = [&](const check::Loaded::Fitting& one, const std::string& why) {
    rules.aside.push_back({"amendment " + one.title + " (" + std::string(sources.name(one.file)) + ")", why, false});
  };
  for (const RuleSet& set : rules.sets) {
    for (const check::Loaded::Fitting& one : set.fitting) {
      if (!one.in_force) {
        set_aside(one, "effective " + one.effective);
      }
    }
  }
  for (const RuleSet& set : passed_over) {
    for (const check::Loaded::Fitting& one : set.fitting) {
      set_aside(one, one.in_force ? "it amends edition " + set.rules.specification->edition + " of " +
                                        set.rules.specification->name + ", which is not"
                                  : "effective " + one.effective);
    }
  }
}

// An amendment may be about one of several specifications; one that is about none of them is an error.
void report_mismatches(const std::vector<RuleSet>& sets, diagnose::Diagnostics& diagnostics) {
  for (const diagnose::Diagnostic& one : sets.front().mismatches.all()) {
    const bool everywhere = std::all_of(sets.begin(), sets.end(), [&](const RuleSet& set) {
      const auto& all = set.mismatches.all();
      return std::any_of(all.begin(), all.end(),
                         [&](const diagnose::Diagnostic& other) { return other.message == one.message; });
    });
    if (everywhere) {
      diagnostics.add(one);
    }
  }
}

}  // namespace

std::optional<RulesInForce> choose(check::Shelf& shelf, const RuleChoice& choice, diagnose::Diagnostics& diagnostics) {
  RulesInForce out;
  for (const std::string& path : specifications_in(shelf, choice.against, diagnostics)) {
    auto set = prepare_specification(shelf, {path, choice.amendments, choice.libraries}, choice.on, diagnostics);
    if (set) {
      set->by_name = std::find(choice.against.begin(), choice.against.end(), path) != choice.against.end();
      out.sets.push_back(std::move(*set));
    }
  }
  if (!out.sets.empty()) {
    report_mismatches(out.sets, diagnostics);
  }
  if (!choice.on.empty() && !diagnostics.has_errors()) {
    out.on = choice.on;
    const std::vector<RuleSet> passed_over = keep_in_force(out, diagnostics);
    set_amendments_aside(out, passed_over, shelf.sources());
  }
  return diagnostics.has_errors() ? std::nullopt : std::optional(std::move(out));
}

}  // namespace plumbrule::library
