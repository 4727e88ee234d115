#include "doors/command/followup.hpp"

#include "apply/followup/report.hpp"
#include "show/report/followup/followup.hpp"

namespace plumbrule::command {
namespace {

std::string follow_up_page(const followup::FollowUpReport& report, const FollowUpOptions& options) {
  return options.format == Format::html       ? report::follow_up_html(report)
         : options.format == Format::json     ? report::follow_up_json(report)
         : options.format == Format::markdown ? report::follow_up_markdown(report)
                                              : report::follow_up_text(report, options.out.empty() && colour_output());
}

}  // namespace

Exit follow_up(const FollowUpOptions& options) {
  if (!is_day(options.rules.on)) {
    return Exit::unusable;
  }
  Workplace place;
  const auto rules = rules_in_force(place, options.rules);
  if (!rules) {
    return Exit::rules_broken;
  }
  const auto before = read_submittal(place, options.before, {options.record_before, "--record-before"});
  const auto after = read_submittal(place, options.after, {options.record_after, "--record-after"});
  if (!before || !after) {
    return Exit::unusable;
  }
  const followup::Followed followed = followup::follow_up(place.sources, *rules, *before, *after);
  print_diagnostics(followed.problems_before, place.sources);
  print_diagnostics(followed.problems_after, place.sources);
  if (!followed.report) {
    return Exit::unusable;
  }
  return write_output(follow_up_page(*followed.report, options), options.out, place.sources)
             ? exit_of(followup::upshot(*followed.report))
             : Exit::unusable;
}

}  // namespace plumbrule::command
