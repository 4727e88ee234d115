#include "doors/command/recite.hpp"

#include "doors/command/workplace.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::command {
namespace {

constexpr std::size_t recite_width = 120;

std::string recite_page(const check::Rules& rules, const report::Origin& origin, const ReciteOptions& options) {
  if (options.format == Format::html) {
    return report::recite_html(rules, options.units, origin);
  }
  const report::TableView table = report::limits_table(rules, options.units);
  const bool markdown = options.format == Format::markdown;
  std::string out;
  for (const std::string& line : report::specification_lines(rules)) {
    out += markdown ? (out.empty() ? "# " : "- ") + report::markdown_cell(line) + (out.empty() ? "\n\n" : "\n")
                    : line + "\n";
  }
  out += "\n" + (markdown ? report::markdown_table(table) : report::text_table(table, recite_width));
  return out + (markdown ? report::closing_markdown(origin) : report::closing_text(origin));
}

}  // namespace

Exit recite(const ReciteOptions& options) {
  if (!is_day(options.on)) {
    return Exit::unusable;
  }
  Workplace place;
  const auto rules = rules_in_force(place, {{options.path}, options.amendments, options.libraries, options.on});
  if (!rules) {
    return Exit::rules_broken;
  }
  if (rules->sets.size() != 1) {
    print_error("found " + std::to_string(rules->sets.size()) + " specifications in `" + options.path +
                "`; name the rule file of one");
    return Exit::unusable;
  }
  const library::Origin origin = library::origin_of(place.sources, *rules);
  return write_output(recite_page(rules->sets.front().rules, origin, options), options.out, place.sources)
             ? Exit::complies
             : Exit::unusable;
}

}  // namespace plumbrule::command
