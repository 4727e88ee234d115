#include "doors/command/recite.hpp"

#include "doors/command/origin.hpp"
#include "doors/command/submission.hpp"
#include "judge/evidence/written.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::command {
namespace {

constexpr std::size_t recite_width = 120;

std::string page(const check::Rules& rules, const report::Origin& origin, const ReciteOptions& options) {
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
  return out + (markdown ? closing_markdown(origin) : closing_text(origin));
}

}  // namespace

Exit recite(const ReciteOptions& options) {
  if (!options.on.empty() && !evidence::read_date(options.on)) {
    print_error("found `" + options.on + "`, no date; write year, month and day: 2026-03-20");
    return Exit::unusable;
  }
  source::SourceMap sources;
  const auto rules = prepare_all(sources, {{options.path}, options.amendments, options.libraries, options.on});
  if (!rules) {
    return Exit::rules_broken;
  }
  if (rules->sets.size() != 1) {
    print_error("found " + std::to_string(rules->sets.size()) + " specifications in `" + options.path +
                "`; name the rule file of one");
    return Exit::unusable;
  }
  const report::Origin origin = origin_of(sources, *rules);
  return write_output(page(rules->sets.front().rules, origin, options), options.out, sources) ? Exit::complies
                                                                                              : Exit::unusable;
}

}  // namespace plumbrule::command
