#include "show/report/parts/page_parts.hpp"

#include <algorithm>

namespace plumbrule::report {

std::vector<Fact> head_facts(const explain::SpecificationHead& one) {
  const std::string note = one.status_note.empty() ? "" : ": " + one.status_note;
  std::vector<Fact> out{fact("Edition", one.edition), fact("Agency", one.agency),
                        fact("Limits", std::string(explain::status_text(one.status)) + note),
                        fact("Source", one.source), fact("Rules", one.file)};
  for (const std::string& amendment : one.amendments) {
    out.push_back(fact("Amended by", amendment));
  }
  for (const std::string& clause : one.withdrawn) {
    out.push_back(fact("Withdrawn", clause));
  }
  return out;
}

Markup drawn(const picture::Picture& picture) { return Markup::of_drawing(picture.svg); }

Markup figure(const picture::Picture& picture) {
  const Markup table =
      disclosure("The same as a table", html_table(picture.title, TableView{picture.table.heads, picture.table.rows}));
  return fill<templates::figure>(hole<"drawing">(drawn(picture)), hole<"caption">(picture.title), hole<"table">(table));
}

Markup gallery(const std::string& specification, const std::vector<Placed>& drawings) {
  Markup out;
  for (const Placed& one : drawings) {
    out += one.specification == specification ? figure(one.picture) : Markup();
  }
  return out.empty() ? out : subpart("Pictures", fill<templates::figures>(hole<"figures">(out)));
}

Markup problem_table(const std::string& caption, const std::vector<Problem>& problems, const std::string& grade) {
  HtmlTable out{caption, {"Place", grade, "Help", "Code"}, {}};
  for (const Problem& one : problems) {
    out.rows.push_back({place_mark(one.place), escaped(one.message), escaped(one.help), escaped(one.code)});
  }
  return out.rows.empty() ? Markup() : html_table(out);
}

Markup derivation(std::string_view summary, const std::vector<explain::Line>& lines) {
  Markup steps;
  for (const explain::Line& line : lines) {
    steps += fill<templates::step>(hole<"depth">(std::to_string(std::min(line.depth, 4))), hole<"text">(line.text),
                                   hole<"place">(place_mark(line.place)));
  }
  return steps.empty() ? steps : disclosure(summary, fill<templates::steps>(hole<"items">(steps)));
}

Markup with_place(std::string_view text, const std::string& place) {
  Markup out = escaped(text);
  if (!place.empty()) {
    out += escaped(" ");
    out += place_mark(place);
  }
  return out;
}

Markup text_list(const std::vector<std::string>& texts) {
  if (texts.size() == 1) {
    return escaped(texts.front());
  }
  std::vector<Markup> items;
  std::transform(texts.begin(), texts.end(), std::back_inserter(items), [](const auto& one) { return escaped(one); });
  return items.empty() ? Markup() : list(items);
}

}  // namespace plumbrule::report
