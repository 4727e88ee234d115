#include "doors/command/window.hpp"

#include "apply/window/windows.hpp"
#include "doors/command/log.hpp"
#include "show/report/review/glance.hpp"
#include "show/report/window/window.hpp"

namespace plumbrule::command {
namespace {

std::optional<std::string> window_page(const window::Windows& report, const WindowOptions& options) {
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
  if (!is_day(options.rules.on)) {
    return Exit::unusable;
  }
  Workplace place;
  const auto rules = rules_in_force(place, options.rules);
  if (!rules) {
    return Exit::rules_broken;
  }
  log.note("rules checked and compiled: " + std::to_string(rules->sets.size()) + " specifications");
  const auto submittal = read_submittal(place, options.submittal, {options.record});
  if (!submittal) {
    return Exit::unusable;
  }
  const window::Sought sought =
      window::seek(place.sources, *rules, *submittal, {options.vary, options.tolerance, options.curve});
  if (!sought.misfit.empty()) {
    print_error(sought.misfit);
  }
  print_diagnostics(sought.problems, place.sources);
  if (!sought.windows) {
    return Exit::unusable;
  }
  log.note("windows found, " + std::to_string(sought.windows->problems.size()) + " errors of the submittal");
  const auto text = window_page(*sought.windows, options);
  if (!text || !write_output(*text, options.out, place.sources)) {
    return Exit::unusable;
  }
  return exit_of(window::upshot(*sought.windows));
}

}  // namespace plumbrule::command
