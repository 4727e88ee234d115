#include "doors/command/window.hpp"

#include <algorithm>

#include "doors/command/log.hpp"
#include "doors/command/origin.hpp"
#include "base/diagnose/suggest.hpp"
#include "judge/evidence/written.hpp"
#include "show/report/review/glance.hpp"
#include "show/report/window/window.hpp"

namespace plumbrule::command {
namespace {

using window::Standing;

struct Seen {
  report::WindowReport report;
  diagnose::Diagnostics problems;
  bool usable = true;
};

std::vector<check::MeasureId> variables(const check::Rules& rules, const evidence::Evidence& evidence,
                                        const std::string& vary) {
  if (vary.empty()) {
    return window::variables(evidence);
  }
  std::vector<check::MeasureId> out;
  for (std::uint32_t at = 0; at < rules.measures.size(); ++at) {
    if (rules.measures[at].name == vary && !rules.measures[at].type.is_word()) {
      out.push_back(at);
    }
  }
  return out;
}

// `0.5 %` in the unit of the variable; a difference for temperatures. Nothing, if it cannot be one.
std::optional<quantity::Decimal> tolerance(const std::string& text, const check::Rules& rules,
                                           const evidence::Evidence& evidence, check::MeasureId variable) {
  const auto read = evidence::read_written(text);
  const auto* written = std::get_if<evidence::Written>(&read);
  if (written == nullptr || written->bound != quantity::Bound::exact || written->value < 0 || !written->basis.empty()) {
    return std::nullopt;
  }
  quantity::UnitTable units = evidence.units;
  const auto unit = units.find(written->unit);
  const quantity::Unit& wanted = units.at(units.difference(rules.measures[variable].type.unit));
  if (!unit || !quantity::convertible(units.at(*unit), wanted) ||
      !quantity::same_kind_of_number(units.at(*unit), wanted)) {
    return std::nullopt;
  }
  return quantity::convert(written->value, units.at(*unit), wanted);
}

// The windows of one specification; false, with the reason printed, if an option does not fit it.
bool look(const explain::Context& context, const WindowOptions& options, bool errors,
          window::SpecificationWindows& out) {
  for (const check::MeasureId variable : variables(context.rules, context.evidence, options.vary)) {
    window::Wish wish;
    wish.curve = options.curve;
    if (!options.tolerance.empty()) {
      wish.tolerance = tolerance(options.tolerance, context.rules, context.evidence, variable);
      if (!wish.tolerance) {
        print_error("found `" + options.tolerance + "`, no tolerance for `" + context.rules.measures[variable].name +
                    "`; write a number with the unit of the measure, such as `0.5 %`");
        return false;
      }
    }
    window::Window found = window::find(context.plan, context.evidence, context.review, variable, wish.tolerance);
    found.submittal_has_errors = errors;
    out.windows.push_back(window::describe(context, found, wish));
  }
  out.strengths = window::strengths(context);
  return true;
}

Seen run(const source::SourceMap& sources, const evidence::Node& document, const std::vector<RuleSet>& sets,
         const WindowOptions& options) {
  Seen out;
  Merged merged;
  const evidence::KnownNames names = names_of(sets);
  for (const RuleSet& set : sets) {
    diagnose::Diagnostics problems;
    auto evidence = evidence::bind(document, set.rules, names, problems);
    merged.add(problems);
    if (!evidence) {
      out.usable = false;
      break;
    }
    if (const auto on = evidence::read_date(options.rules.on)) {
      evidence->date = *on;
    }
    out.report.identity = evidence->identity;
    const evaluate::Review review = evaluate::evaluate(set.plan, *evidence);
    const explain::Context context{sources, set.rules, set.plan, *evidence, review};
    window::SpecificationWindows part{head_of(set), {}, {}};
    if (!look(context, options, problems.has_errors(), part)) {
      out.usable = false;
      break;
    }
    out.report.specifications.push_back(std::move(part));
  }
  out.problems = merged.take();
  out.report.problems = problems_of(out.problems, diagnose::Severity::error, sources);
  out.report.warnings = problems_of(out.problems, diagnose::Severity::warning, sources);
  return out;
}

// language.md, section 15.8.
Exit status(const report::WindowReport& report) {
  Exit out = report::leaves_open(report.origin) ? Exit::incomplete : Exit::complies;
  for (const window::SpecificationWindows& one : report.specifications) {
    out = one.windows.empty() ? Exit::incomplete : out;
    for (const window::WindowReport& part : one.windows) {
      if (part.outcome == Standing::fails) {
        return Exit::fails;
      }
      out = part.outcome == Standing::open ? Exit::incomplete : out;
    }
  }
  return out;
}

// A name that no specification knows is a slip of the pen.
bool known_variable(const std::vector<RuleSet>& sets, const std::string& vary) {
  std::vector<std::string_view> known;
  for (const RuleSet& set : sets) {
    for (const check::Measure& measure : set.rules.measures) {
      if (!measure.type.is_word()) {
        known.emplace_back(measure.name);
      }
    }
  }
  if (vary.empty() || std::find(known.begin(), known.end(), vary) != known.end()) {
    return true;
  }
  print_error("found `" + vary + "` for --vary, no measure of that name with a number; " +
              diagnose::suggestion(vary, known));
  return false;
}

std::optional<std::string> written(const report::WindowReport& report, const WindowOptions& options) {
  if (options.explain.empty()) {
    const bool colour = options.out.empty() && colour_output();
    if (options.format == Format::html) {
      return report::window_html(report);
    }
    return options.format == Format::json                ? report::window_json(report)
           : brief(options.detail, !options.out.empty()) ? report::glance(report, output_width(), colour)
                                                         : report::window_text(report, colour);
  }
  auto out = report::window_explained(report, options.explain);
  if (!out) {
    print_error("found no clause `" + options.explain + "` that has to do with a window of this submittal");
  }
  return out;
}

}  // namespace

Exit window(const WindowOptions& options) {
  const Log log(options.log);
  if (options.format == Format::html && !options.explain.empty()) {
    print_error("found `--explain` beside `--format html`; the page holds the derivations of all clauses");
    return Exit::unusable;
  }
  if (!options.rules.on.empty() && !evidence::read_date(options.rules.on)) {
    print_error("found `" + options.rules.on + "`, no date; write year, month and day: 2026-03-20");
    return Exit::unusable;
  }
  source::SourceMap sources;
  const auto rules = prepare_all(sources, options.rules);
  if (!rules) {
    return Exit::rules_broken;
  }
  log.note("rules checked and compiled: " + std::to_string(rules->sets.size()) + " specifications");
  const auto document = read_submittal(sources, options.submittal, options.record);
  if (!document || !known_variable(rules->sets, options.vary)) {
    return Exit::unusable;
  }
  Seen seen = run(sources, *document->tree, rules->sets, options);
  print_diagnostics(seen.problems, sources);
  if (!seen.usable) {
    return Exit::unusable;
  }
  log.note("windows found, " + std::to_string(seen.report.problems.size()) + " errors of the submittal");
  seen.report.submittal = document->name;
  seen.report.origin = origin_of(sources, *rules, {document->tree->span.file});
  const auto text = written(seen.report, options);
  if (!text || !write_output(*text, options.out, sources)) {
    return Exit::unusable;
  }
  return status(seen.report);
}

}  // namespace plumbrule::command
