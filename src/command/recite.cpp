#include "command/recite.hpp"

#include "command/origin.hpp"
#include "command/rule_set.hpp"
#include "evidence/written.hpp"
#include "report/report.hpp"

namespace plumbrule::command {
namespace {

constexpr std::size_t page_width = 120;

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
  out += "\n" + (markdown ? report::markdown_table(table) : report::text_table(table, page_width));
  return out + (markdown ? closing_markdown(origin) : closing_text(origin));
}

}  // namespace

Exit recite(const ReciteOptions& options) {
  if (!options.on.empty() && !evidence::read_date(options.on)) {
    print_error("found `" + options.on + "`, no date; write year, month and day: 2026-03-20");
    return Exit::unusable;
  }
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  const auto set = prepare_specification(
      sources, {options.path, options.amendments, library_folders(options.libraries)}, options.on, diagnostics);
  if (set) {
    diagnostics.append(set->mismatches);
  }
  print_diagnostics(diagnostics, sources);
  if (diagnostics.has_errors()) {
    return Exit::rules_broken;
  }
  const report::Origin origin = origin_of(sources, std::span(&*set, 1));
  return write_output(page(set->rules, origin, options), options.out) ? Exit::complies : Exit::unusable;
}

}  // namespace plumbrule::command
