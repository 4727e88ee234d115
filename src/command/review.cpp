#include "command/review.hpp"

#include <algorithm>
#include <set>
#include <tuple>

#include "command/log.hpp"
#include "command/rule_set.hpp"
#include "diagnose/encoding.hpp"
#include "diagnose/suggest.hpp"
#include "evidence/written.hpp"
#include "report/report.hpp"

namespace plumbrule::command {
namespace {

// Of several editions of one specification the one that was in force on the day: the latest that had become effective.
void keep_in_force(std::vector<RuleSet>& sets, const std::string& on, diagnose::Diagnostics& diagnostics) {
  std::vector<RuleSet> out;
  for (RuleSet& set : sets) {
    const check::Specification& own = *set.rules.specification;
    if (!own.effective.empty() && own.effective > on) {
      continue;
    }
    const auto same = std::find_if(out.begin(), out.end(),
                                   [&](const RuleSet& other) { return other.rules.specification->name == own.name; });
    if (same == out.end()) {
      out.push_back(std::move(set));
    } else if (same->rules.specification->effective < own.effective) {
      *same = std::move(set);
    }
  }
  if (out.empty()) {
    diagnostics.error(diagnose::Code::clause_missing, {}, "found no specification in force on " + on,
                      "check the day and the `effective` clauses");
  }
  sets = std::move(out);
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

std::optional<std::vector<RuleSet>> prepare_all(source::SourceMap& sources, const ReviewOptions& options) {
  std::vector<RuleSet> out;
  diagnose::Diagnostics diagnostics;
  const auto libraries = library_folders(options.libraries);
  for (const std::string& path : options.against) {
    auto set = prepare(sources, {path, options.amendments, libraries}, options.on, diagnostics);
    if (set && !set->rules.specification) {
      diagnostics.error(diagnose::Code::clause_missing, {set->rules.file, 0, 0},
                        "found no specification in `" + path + "`", "a submittal is reviewed against a specification");
    } else if (set) {
      out.push_back(std::move(*set));
    }
  }
  if (!out.empty()) {
    report_mismatches(out, diagnostics);
  }
  if (!options.on.empty() && !diagnostics.has_errors()) {
    keep_in_force(out, options.on, diagnostics);
  }
  print_diagnostics(diagnostics, sources);
  return diagnostics.has_errors() ? std::nullopt : std::optional(std::move(out));
}

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

// The same error is met once for each specification; it is reported once.
class Merged {
 public:
  void add(const diagnose::Diagnostics& from) {
    for (const diagnose::Diagnostic& one : from.all()) {
      const source::Span& span = one.primary.span;
      if (seen_.emplace(one.code, span.file, span.begin, span.end).second) {
        all_.add(one);
      }
    }
  }
  diagnose::Diagnostics take() {
    all_.sort_by_place();
    return std::move(all_);
  }

 private:
  diagnose::Diagnostics all_;
  std::set<std::tuple<diagnose::Code, source::FileId, std::uint32_t, std::uint32_t>> seen_;
};

report::SpecificationReport head(const RuleSet& set) {
  const check::Specification& specification = *set.rules.specification;
  report::SpecificationReport out;
  out.name = specification.name;
  out.title = specification.title;
  out.edition = specification.edition;
  out.agency = specification.agency;
  out.file = set.path;
  out.source = specification.provenance.source;
  out.status = specification.provenance.status;
  out.status_note = specification.provenance.status_note;
  out.amendments = specification.amendments;
  for (const syntax::Withdrawn& one : set.rules.withdrawn) {
    out.withdrawn.push_back(one.number + " " + one.title + ": withdrawn by " + one.by +
                            (one.because.empty() ? "" : " (" + one.because + ")"));
  }
  return out;
}

struct Reviewed {
  report::Report report;
  diagnose::Diagnostics problems;
  bool usable = true;
};

Reviewed run(const source::SourceMap& sources, const evidence::Node& document, const std::vector<RuleSet>& sets,
             const std::optional<std::int32_t>& on) {
  Reviewed out;
  Merged merged;
  audit::Inspection inspection;
  const evidence::KnownNames names = names_of(sets);
  for (const RuleSet& set : sets) {
    diagnose::Diagnostics problems;
    auto evidence = evidence::bind(document, set.rules, names, problems);
    merged.add(problems);
    if (!evidence) {
      out.usable = false;
      out.problems = merged.take();
      return out;
    }
    if (on) {
      evidence->date = *on;
    }
    out.report.identity = evidence->identity;
    const evaluate::Review review = evaluate::evaluate(set.plan, *evidence);
    const explain::Context context{sources, set.rules, set.plan, *evidence, review};
    report::SpecificationReport part = head(set);
    for (const evaluate::Finding& finding : review.findings) {
      part.findings.push_back(explain::explain(context, finding));
    }
    audit::join(inspection, audit::inspect(context));
    part.outcome = evaluate::outcome(set.plan, review.findings);
    // A submittal with errors is never wholly complying: what was misread might have failed.
    if (problems.has_errors() && part.outcome == evaluate::Outcome::no_exception_taken) {
      part.outcome = evaluate::Outcome::incomplete;
    }
    out.report.specifications.push_back(std::move(part));
  }
  out.report.audit = report::audit_report(inspection, sources);
  out.problems = merged.take();
  for (const diagnose::Diagnostic& one : out.problems.all()) {
    if (one.severity != diagnose::Severity::error) {
      continue;
    }
    out.report.problems.push_back(
        {std::string(diagnose::text(one.code)), sources.place_text(one.primary.span), one.message, one.help});
  }
  return out;
}

Exit status(const report::Report& report) {
  Exit out = Exit::complies;
  for (const report::SpecificationReport& one : report.specifications) {
    if (one.outcome == evaluate::Outcome::revise_and_resubmit || one.outcome == evaluate::Outcome::refer_to_engineer) {
      return Exit::fails;
    }
    out = one.outcome == evaluate::Outcome::incomplete ? Exit::incomplete : out;
  }
  return out;
}

std::optional<std::string> explained(const report::Report& report, const std::string& clause, bool colour) {
  std::string out;
  std::vector<std::string_view> known;
  for (const report::SpecificationReport& specification : report.specifications) {
    for (const explain::Explanation& finding : specification.findings) {
      known.emplace_back(finding.number);
      if (finding.number == clause) {
        out += specification.title + ", edition " + specification.edition + "\n" +
               report::explanation_text(finding, colour);
      }
    }
  }
  if (out.empty()) {
    print_error("found no clause `" + clause + "` in these specifications; " + diagnose::suggestion(clause, known));
    return std::nullopt;
  }
  return out + "\nCaution: " + std::string(report::caution) + "\n";
}

}  // namespace

Exit review(const ReviewOptions& options) {
  const Log log(options.log);
  const auto on = evidence::read_date(options.on);
  if (!options.on.empty() && !on) {
    print_error("found `" + options.on + "`, no date; write year, month and day: 2026-03-20");
    return Exit::unusable;
  }
  source::SourceMap sources;
  const auto sets = prepare_all(sources, options);
  if (!sets) {
    return Exit::rules_broken;
  }
  log.note("rules checked and compiled: " + std::to_string(sets->size()) + " specifications");
  const auto document = read_submittal(sources, options.submittal);
  if (!document) {
    return Exit::unusable;
  }
  log.note("submittal read: " + options.submittal);
  Reviewed reviewed = run(sources, *document, *sets, on);
  print_diagnostics(reviewed.problems, sources);
  if (!reviewed.usable) {
    return Exit::unusable;
  }
  log.note("reviewed, " + std::to_string(reviewed.problems.all().size()) + " errors of the submittal");
  reviewed.report.submittal = options.submittal;
  const bool colour = options.out.empty() && colour_output();
  std::optional<std::string> text;
  if (!options.explain.empty()) {
    text = explained(reviewed.report, options.explain, colour);
  } else {
    text = options.format == Format::json ? report::json(reviewed.report) : report::text(reviewed.report, colour);
  }
  if (!text || !write_output(*text, options.out)) {
    return Exit::unusable;
  }
  return status(reviewed.report);
}

}  // namespace plumbrule::command
