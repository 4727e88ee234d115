#include "show/report/parts/html.hpp"

#include <algorithm>

#include "show/picture/picture.hpp"

namespace plumbrule::report {
namespace {

std::string id_of(std::size_t part) { return "part-" + std::to_string(part + 1); }

// A value with its unit, a date, the number of a clause: kept on one line where there is room.
bool is_short(const Markup& cell) {
  constexpr std::size_t most = 12;
  return cell.html().size() <= most && cell.html().find('<') == std::string::npos;
}

Markup row_head(const Markup& text) {
  if (text.empty()) {
    return fill<templates::empty_cell>();  // a row that goes on has no head of its own
  }
  return is_short(text) ? fill<templates::short_head>(hole<"text">(text))
                        : fill<templates::row_head>(hole<"text">(text));
}

Markup cell(std::string_view label, const Markup& text) {
  if (text.empty()) {
    return fill<templates::empty_cell>();
  }
  return is_short(text) ? fill<templates::short_cell>(hole<"label">(label), hole<"text">(text))
                        : fill<templates::cell>(hole<"label">(label), hole<"text">(text));
}

Markup cells(const HtmlTable& table, const std::vector<Markup>& row) {
  Markup out = row_head(row.front());
  for (std::size_t at = 1; at < row.size(); ++at) {
    out += cell(at < table.heads.size() ? std::string_view(table.heads[at]) : "", row[at]);
  }
  return out;
}

Markup mark(std::string_view style, std::string_view word) {
  return fill<templates::verdict>(hole<"kind">(style), hole<"word">(word));
}

}  // namespace

// Part by part, each of which is let go when it stands on the page.
std::string page(Page page) {
  Markup style = fill<templates::page_css>();
  style += Markup::of_drawing("\n<style>\n" + std::string(picture::style_sheet()) + "</style>");
  Markup links;
  for (std::size_t at = 0; at < page.parts.size(); ++at) {
    links += fill<templates::link>(hole<"id">(id_of(at)), hole<"title">(page.parts[at].title));
  }
  const Frame whole = frame<templates::page, "body">(hole<"title">(page.title), hole<"kind">(page.kind),
                                                     hole<"style">(style), hole<"lead">(breakable(page.lead)),
                                                     hole<"links">(links), hole<"caution">(caution));
  std::string out = whole.before.html();
  for (std::size_t at = 0; at < page.parts.size(); ++at) {
    Part& part = page.parts[at];
    const Frame about = frame<templates::part, "body">(hole<"id">(id_of(at)), hole<"title">(part.title));
    append_breakable(out, about.before);
    append_breakable(out, part.body);
    part.body = Markup();
    if (part.rest) {
      part.rest(out);
    }
    append_breakable(out, about.after);
  }
  out += whole.after.html();
  return out;
}

Fact fact(const std::string& name, std::string_view value) { return {name, escaped(value)}; }

Markup facts(const std::vector<Fact>& all) {
  Markup rows;
  for (const Fact& one : all) {
    if (!one.value.empty()) {
      rows += fill<templates::fact>(hole<"name">(one.name), hole<"value">(one.value));
    }
  }
  return rows.empty() ? rows : fill<templates::facts>(hole<"rows">(rows));
}

Markup html_table(const HtmlTable& table) {
  Markup heads, rows;
  for (const std::string& head : table.heads) {
    heads += fill<templates::column_head>(hole<"text">(head));
  }
  for (const std::vector<Markup>& row : table.rows) {
    rows +=
        row.size() == 1 && table.heads.size() > 1
            ? fill<templates::group_row>(hole<"columns">(std::to_string(table.heads.size())), hole<"text">(row.front()))
            : fill<templates::row>(hole<"cells">(cells(table, row)));
  }
  return fill<templates::table>(hole<"caption">(table.caption), hole<"heads">(heads), hole<"rows">(rows));
}

HtmlTable without_empty_columns(HtmlTable table) {
  for (std::size_t at = table.heads.size(); at-- > 1;) {
    const auto empty = [at](const std::vector<Markup>& row) { return at >= row.size() || row[at].empty(); };
    if (std::all_of(table.rows.begin(), table.rows.end(), empty)) {
      table.heads.erase(table.heads.begin() + static_cast<std::ptrdiff_t>(at));
      for (std::vector<Markup>& row : table.rows) {
        row.erase(row.begin() + static_cast<std::ptrdiff_t>(std::min(at, row.size())),
                  row.begin() + static_cast<std::ptrdiff_t>(std::min(at + 1, row.size())));
      }
    }
  }
  return table;
}

Markup html_table(const std::string& caption, const TableView& table) {
  HtmlTable out{caption, table.heads, {}};
  for (const std::vector<std::string>& row : table.rows) {
    std::vector<Markup>& cells = out.rows.emplace_back();
    std::transform(row.begin(), row.end(), std::back_inserter(cells),
                   [](const std::string& cell) { return escaped(cell); });
  }
  return html_table(out);
}

std::string style_of(explain::Verdict verdict) {
  std::string out(explain::verdict_text(verdict));
  std::replace(out.begin(), out.end(), ' ', '-');
  return out;
}

Markup verdict_mark(explain::Verdict verdict) { return mark(style_of(verdict), explain::verdict_text(verdict)); }

Markup outcome_mark(evaluate::Outcome outcome) {
  using explain::Verdict;
  const Verdict like = outcome == evaluate::Outcome::no_exception_taken ? Verdict::complies
                       : outcome == evaluate::Outcome::incomplete       ? Verdict::not_shown
                                                                        : Verdict::fails;
  return mark(style_of(like), explain::outcome_text(outcome));
}

Markup paragraph(std::string_view text) { return fill<templates::paragraph>(hole<"text">(text)); }

Markup counts_line(std::string_view counts) {
  Markup out;
  while (!counts.empty()) {
    const std::size_t bar = counts.find(" | ");
    const std::size_t size = bar == std::string_view::npos ? counts.size() : bar + 2;
    out += fill<templates::whole>(hole<"text">(counts.substr(0, size)));
    counts.remove_prefix(size);
    if (!counts.empty()) {
      out += escaped(" ");
      counts.remove_prefix(1);
    }
  }
  return out;
}

Markup place_mark(const std::string& place) {
  return place.empty() ? Markup() : fill<templates::place>(hole<"place">(place));
}

Markup subpart(std::string_view title, const Markup& body) {
  return fill<templates::subpart>(hole<"title">(title), hole<"body">(body));
}

Markup disclosure(std::string_view summary, const Markup& body) {
  return fill<templates::disclosure>(hole<"summary">(summary), hole<"body">(body));
}

Markup list(const std::vector<Markup>& items, bool numbered) {
  Markup all;
  for (const Markup& one : items) {
    all += fill<templates::item>(hole<"text">(one));
  }
  return numbered ? fill<templates::numbered>(hole<"items">(all)) : fill<templates::list>(hole<"items">(all));
}

Part files(const Origin& origin) {
  HtmlTable out{"Made by plumbrule " + origin.version + " from these files", {"File", "What it is", "SHA-256"}, {}};
  for (const UsedFile& one : origin.files) {
    const std::string_view digest = one.digest;
    const std::size_t half = digest.size() / 2;  // where the line may break
    out.rows.push_back({escaped(one.path), escaped(one.kind),
                        fill<templates::digest>(hole<"begin">("sha256:" + std::string(digest.substr(0, half))),
                                                hole<"end">(digest.substr(half)))});
  }
  Markup body;
  if (!origin.aside.empty()) {
    std::vector<Markup> items;
    for (const SetAside& one : origin.aside) {
      items.push_back(escaped(aside_text(one)));
    }
    body += paragraph(aside_heading(origin) + ":");
    body += list(items);
  }
  body += html_table(out);
  return {"Files", body};
}

Part signature() { return {"Reviewed by", fill<templates::signature>()}; }

}  // namespace plumbrule::report
