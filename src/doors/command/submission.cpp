#include "doors/command/submission.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace plumbrule::command {
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

// Also where it is seen though the report goes to a file.
void warn(const RulesInForce& rules) {
  for (const report::SetAside& one : rules.aside) {
    print_error("not in force on " + rules.on + ": " + report::aside_text(one));
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

std::optional<RulesInForce> prepare_all(source::SourceMap& sources, const RuleChoice& choice) {
  RulesInForce out;
  diagnose::Diagnostics diagnostics;
  const auto libraries = library_folders(choice.libraries);
  for (const std::string& path : specifications_in(choice.against, diagnostics)) {
    auto set = prepare_specification(sources, {path, choice.amendments, libraries}, choice.on, diagnostics);
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
    set_amendments_aside(out, passed_over, sources);
  }
  print_diagnostics(diagnostics, sources);
  if (!diagnostics.has_errors()) {
    warn(out);
  }
  return diagnostics.has_errors() ? std::nullopt : std::optional(std::move(out));
}

std::optional<SubmittalRecord> read_submittal(source::SourceMap& sources, const std::string& path,
                                              const std::string& record, const std::string& option) {
  diagnose::Diagnostics diagnostics;
  auto out = read_record(sources, path, record, diagnostics, option);
  print_diagnostics(diagnostics, sources);
  return diagnostics.has_errors() ? std::nullopt : std::move(out);
}

evidence::KnownNames names_of(const std::vector<RuleSet>& sets) {
  evidence::KnownNames out;
  for (const RuleSet& set : sets) {
    for (const check::Measure& measure : set.rules.measures) {
      out.measures.push_back(measure.name);
      for (const check::Held& one : measure.held) {
        out.held.push_back(one.name);
      }
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

void Merged::add(const diagnose::Diagnostics& from) {
  for (const diagnose::Diagnostic& one : from.all()) {
    const source::Span& span = one.primary.span;
    if (seen_.emplace(one.code, span.file, span.begin, span.end).second) {
      all_.add(one);
    }
  }
}

diagnose::Diagnostics Merged::take() {
  all_.sort_by_place();
  return std::move(all_);
}

std::vector<report::Problem> problems_of(const diagnose::Diagnostics& problems, diagnose::Severity severity,
                                         const source::SourceMap& sources) {
  std::vector<report::Problem> out;
  for (const diagnose::Diagnostic& one : problems.all()) {
    if (one.severity == severity) {
      out.push_back({std::string(diagnose::text(one.code)), sources.place_text(one.primary.span), one.message, one.help,
                     one.primary.span});
    }
  }
  return out;
}

explain::SpecificationHead head_of(const RuleSet& set) {
  const check::Specification& own = *set.rules.specification;
  explain::SpecificationHead out{own.name,
                                 own.title,
                                 own.edition,
                                 own.agency,
                                 set.path,
                                 own.provenance.source,
                                 own.provenance.status,
                                 own.provenance.status_note,
                                 own.amendments,
                                 {}};
  for (const syntax::Withdrawn& one : set.rules.withdrawn) {
    out.withdrawn.push_back(one.number + " " + one.title + ": withdrawn by " + one.by +
                            (one.because.empty() ? "" : " (" + one.because + ")"));
  }
  return out;
}

}  // namespace plumbrule::command
