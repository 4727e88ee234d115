#include "doors/command/review.hpp"

#include "apply/review/review.hpp"
#include "base/diagnose/suggest.hpp"
#include "doors/command/log.hpp"
#include "doors/command/workplace.hpp"
#include "show/report/matrix/matrix.hpp"
#include "show/report/review/glance.hpp"
#include "show/report/review/junit.hpp"
#include "show/report/review/sarif.hpp"

namespace plumbrule::command {
namespace {

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
  return out + report::closing_text(report.origin);
}

constexpr std::size_t matrix_width = 160;

std::optional<std::string> review_page(const report::Report& report, const ReviewOptions& options, bool colour) {
  if (options.format == Format::sarif) {
    return report::sarif(report, report.sources);
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
  if (!is_day(options.on)) {
    return Exit::unusable;
  }
  if (const auto conflict = conflict_of(options)) {
    print_error(*conflict);
    return Exit::unusable;
  }
  Workplace place;
  const auto rules = rules_in_force(place, {options.against, options.amendments, options.libraries, options.on});
  if (!rules) {
    return Exit::rules_broken;
  }
  log.note("rules checked and compiled: " + std::to_string(rules->sets.size()) + " specifications");
  const auto submittal = read_submittal(place, options.submittal, {options.record});
  if (!submittal) {
    return Exit::unusable;
  }
  log.note("submittal read: " + options.submittal);
  const review::Reviewed reviewed = review::review(place.sources, *rules, *submittal);
  print_diagnostics(reviewed.problems, place.sources);
  if (!reviewed.report) {
    return Exit::unusable;
  }
  log.note("reviewed, " + std::to_string(reviewed.report->problems.size()) + " errors of the submittal");
  const auto text = review_page(*reviewed.report, options, options.out.empty() && colour_output());
  if (!text || !write_output(*text, options.out, place.sources)) {
    return Exit::unusable;
  }
  return exit_of(review::upshot(*reviewed.report));
}

}  // namespace plumbrule::command
