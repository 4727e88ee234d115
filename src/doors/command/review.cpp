#include "doors/command/review.hpp"

#include <algorithm>

#include "doors/command/log.hpp"
#include "doors/command/origin.hpp"
#include "doors/command/submission.hpp"
#include "base/diagnose/suggest.hpp"
#include "judge/evidence/written.hpp"
#include "show/report/review/glance.hpp"
#include "show/report/review/junit.hpp"
#include "show/report/matrix/matrix.hpp"
#include "show/report/review/sarif.hpp"

namespace plumbrule::command {
namespace {

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
    report::SpecificationReport part{head_of(set), {}, {}};
    for (const evaluate::Finding& finding : review.findings) {
      part.findings.push_back(explain::explain(context, finding));
    }
    audit::join(inspection, audit::inspect(context));
    part.outcome = evaluate::outcome(set.plan, review.findings, problems.has_errors());
    out.report.specifications.push_back(std::move(part));
  }
  out.report.audit = report::audit_report(inspection, sources);
  out.problems = merged.take();
  out.report.problems = problems_of(out.problems, diagnose::Severity::error, sources);
  out.report.warnings = problems_of(out.problems, diagnose::Severity::warning, sources);
  return out;
}

Exit status(const report::Report& report) {
  Exit out = report::leaves_open(report.origin) ? Exit::incomplete : Exit::complies;
  for (const report::SpecificationReport& one : report.specifications) {
    if (one.outcome == evaluate::Outcome::revise_and_resubmit || one.outcome == evaluate::Outcome::refer_to_engineer) {
      return Exit::fails;
    }
    out = one.outcome == evaluate::Outcome::incomplete ? Exit::incomplete : out;
  }
  return out;
}

std::optional<std::string> explained(const report::Report& report, const ReviewOptions& options, bool colour) {
  const std::string& clause = options.explain;
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
  if (options.format == Format::json) {
    return report::json(report, clause);
  }
  return out + closing_text(report.origin);
}

constexpr std::size_t matrix_width = 160;

std::optional<std::string> page(const report::Report& report, const source::SourceMap& sources,
                                const ReviewOptions& options, bool colour) {
  if (options.format == Format::sarif) {
    return report::sarif(report, sources);
  }
  if (options.format == Format::junit) {
    return report::junit(report);
  }
  if (options.matrix) {
    return options.format == Format::json       ? report::matrix_json(report)
           : options.format == Format::markdown ? report::matrix_markdown(report)
           : options.format == Format::html     ? report::matrix_html(report)
                                                : report::matrix_text(report, matrix_width);
  }
  if (!options.explain.empty()) {
    return explained(report, options, colour);
  }
  return options.format == Format::json                ? report::json(report)
         : options.format == Format::html              ? report::html(report)
         : options.format == Format::markdown          ? report::markdown(report)
         : brief(options.detail, !options.out.empty()) ? report::glance(report, output_width(), colour)
                                                       : report::text(report, colour);
}

// Options that cannot stand together.
std::optional<std::string> conflict_of(const ReviewOptions& options) {
  if (options.matrix && !options.explain.empty()) {
    return "found `--explain` beside `--matrix`; one of them decides what is written";
  }
  if (!options.explain.empty() && (options.format == Format::markdown || options.format == Format::html)) {
    return "found `--format " + std::string(options.format == Format::html ? "html" : "markdown") +
           "` beside `--explain`; one clause is written as text or json";
  }
  const bool whole = options.format == Format::sarif || options.format == Format::junit;
  if (whole && (options.matrix || !options.explain.empty())) {
    return "found `--format " + std::string(options.format == Format::sarif ? "sarif" : "junit") + "` beside `" +
           (options.matrix ? "--matrix" : "--explain") + "`; it is written of whole reviews only";
  }
  return std::nullopt;
}

}  // namespace

Exit review(const ReviewOptions& options) {
  const Log log(options.log);
  const auto on = evidence::read_date(options.on);
  if (!options.on.empty() && !on) {
    print_error("found `" + options.on + "`, no date; write year, month and day: 2026-03-20");
    return Exit::unusable;
  }
  if (const auto conflict = conflict_of(options)) {
    print_error(*conflict);
    return Exit::unusable;
  }
  source::SourceMap sources;
  const auto rules = prepare_all(sources, {options.against, options.amendments, options.libraries, options.on});
  if (!rules) {
    return Exit::rules_broken;
  }
  log.note("rules checked and compiled: " + std::to_string(rules->sets.size()) + " specifications");
  const auto document = read_submittal(sources, options.submittal, options.record);
  if (!document) {
    return Exit::unusable;
  }
  log.note("submittal read: " + options.submittal);
  Reviewed reviewed = run(sources, *document->tree, rules->sets, on);
  print_diagnostics(reviewed.problems, sources);
  if (!reviewed.usable) {
    return Exit::unusable;
  }
  log.note("reviewed, " + std::to_string(reviewed.report.problems.size()) + " errors of the submittal");
  reviewed.report.submittal = document->name;
  reviewed.report.on = options.on;
  reviewed.report.origin = origin_of(sources, *rules, {document->tree->span.file});
  reviewed.report.actions = report::next_actions(reviewed.report);
  const std::optional<std::string> text =
      page(reviewed.report, sources, options, options.out.empty() && colour_output());
  if (!text || !write_output(*text, options.out, sources)) {
    return Exit::unusable;
  }
  return status(reviewed.report);
}

}  // namespace plumbrule::command
