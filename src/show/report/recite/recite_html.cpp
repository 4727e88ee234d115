#include "show/report/parts/html.hpp"
#include "show/report/recite/recite.hpp"

namespace plumbrule::report {

std::string recite_html(const check::Rules& rules, Units units, const Origin& origin) {
  const std::vector<std::string> lines = specification_lines(rules);
  Page out{"Limits of a specification", lines.front(), {}, {}};
  std::vector<Markup> items;
  for (std::size_t at = 1; at < lines.size(); ++at) {
    items.push_back(escaped(lines[at]));
  }
  out.lead = items.empty() ? Markup() : list(items);
  const TableView table = limits_table(rules, units);
  Markup body =
      table.rows.empty() ? paragraph("It has no limit.") : html_table("Limits, in the order of the clauses", table);
  body += units == Units::printed ? Markup()
                                  : paragraph("Converted values are only for reading: the printed limit is the limit.");
  out.parts.push_back({"Limits", body});
  out.parts.push_back(files(origin));
  return page(std::move(out));
}

}  // namespace plumbrule::report
