// The margins of all clauses on one scale.

#include <algorithm>

#include "show/picture/chart.hpp"

namespace plumbrule::picture {
namespace {

constexpr double bar_line = 13;
constexpr double row_gap = 3;
constexpr std::size_t most_folded = 28;  // with more clauses each has one line, so that they fit a printed page
constexpr double label_width = 184;
constexpr double bar_left = 194;
constexpr double bar_right = 310;
constexpr double shown_left = 321;
constexpr std::size_t most_ticks = 4;  // their texts fit over the bars
constexpr double no_bar = 8;           // where the sign of a clause without a margin stands, from the line of the limit
constexpr double most_percent = 100;   // what lies beyond is drawn as an arrow; its number stands beside it

Range percents(const MarginChart& chart) {
  Extent out;
  out.add(-20);
  out.add(50);
  for (const Margin& one : chart.margins) {
    if (one.headroom) {
      out.add(std::clamp(*one.headroom, -most_percent, most_percent));
    }
  }
  return out.padded(0);
}

Ink ink_of(Verdict verdict) {
  return verdict == Verdict::complies ? Ink::complies : verdict == Verdict::fails ? Ink::fails : Ink::not_shown;
}

// A share of the limit, so that nobody takes it for the unit of the measure.
std::string share(const Margin& one, const std::string& of) { return one.shown + (one.headroom ? of : ""); }

// At most two lines; what does not fit is cut, and stands whole in the table.
std::vector<std::string> label_of(const Margin& one, bool single) {
  const std::string label = one.number + (one.number.empty() ? "" : "  ") + one.title;
  std::vector<std::string> lines = folded(label, small_size, label_width);
  if (single || lines.size() == 1) {
    return {fitted(label, small_size, label_width)};
  }
  const std::size_t rest = label.find(lines[1], lines[0].size());
  return {lines[0], rest == std::string::npos ? lines[1] : fitted(label.substr(rest), small_size, label_width)};
}

double row_height(const Margin& one, bool single) {
  return row_gap + bar_line * static_cast<double>(label_of(one, single).size());
}

double draw_row(Drawing& drawing, const Scale& scale, double y, const Margin& one, bool single) {
  const double height = row_height(one, single);
  const double middle = y + height / 2;
  double base = y + row_gap / 2 - 3;
  for (const std::string& words : label_of(one, single)) {
    base += bar_line;
    drawing.text({2, base}, words, small_size);
  }
  const std::string shown = fitted(share(one, " of limit"), small_size, page_width - shown_left - 1);
  drawing.text({shown_left, middle + small_size * 0.35}, shown, small_size);
  const double zero = scale.at(0);
  if (!one.headroom) {
    drawing.mark({zero + (one.verdict == Verdict::fails ? -no_bar : no_bar), middle}, one.verdict);
    return y + height;
  }
  const double end = scale.at(std::clamp(*one.headroom, -most_percent, most_percent));
  drawing.line({zero, middle}, {end, middle}, {ink_of(one.verdict), 4, {}});
  if (*one.headroom < -most_percent || *one.headroom > most_percent) {
    drawing.beyond({end + (*one.headroom > 0 ? 4 : -4), middle}, *one.headroom > 0, ink_of(one.verdict));
  }
  drawing.mark({end, middle}, one.verdict);
  return y + height;
}

void scale_line(Drawing& drawing, const Scale& scale, double top, double bottom) {
  for (const Tick& one : ticks(scale.low(), scale.high(), most_ticks)) {
    const double x = scale.at(one.at);
    const bool zero = one.at == 0;
    drawing.line({x, top}, {x, bottom}, {zero ? Ink::text : Ink::quiet, zero ? 1.5 : 0.4, {}});
  }
}

double scale_texts(Drawing& drawing, const Scale& scale, double y) {
  drawing.text({page_width - 2, y + small_size}, "margin as % of the limit", small_size, Anchor::end);
  y += line_height;
  drawing.text({scale.at(0) - 6, y + small_size}, "outside", small_size, Anchor::end);
  drawing.text({scale.at(0) + 6, y + small_size}, "inside", small_size);
  y += line_height;
  for (const Tick& one : ticks(scale.low(), scale.high(), most_ticks)) {
    drawing.text({scale.at(one.at), y + small_size}, one.text, small_size, Anchor::middle);
  }
  return y + line_height + 2;
}

std::string describe(const MarginChart& chart) {
  std::array<std::size_t, 4> counts{};
  const Margin* least = nullptr;
  for (const Margin& one : chart.margins) {
    ++counts.at(static_cast<std::size_t>(one.verdict));
    if (one.headroom && (least == nullptr || *one.headroom < *least->headroom)) {
      least = &one;
    }
  }
  std::string said = counted(chart.margins.size(), "clause", "clauses") + ":";
  for (std::size_t at = 0; at < counts.size(); ++at) {
    said += (at == 0 ? " " : ", ") + std::string(verdict_text(static_cast<Verdict>(at))) + " " +
            std::to_string(counts.at(at));
  }
  std::vector<std::string> all{said};
  if (least != nullptr) {
    all.push_back("The least margin: " + least->number + " " + least->title + ", " + share(*least, " of the limit"));
  }
  all.insert(all.end(), chart.notes.begin(), chart.notes.end());
  return sentences(all);
}

}  // namespace

Picture draw(const MarginChart& chart) {
  Drawing drawing;
  const Range range = percents(chart);
  const Scale scale(ScaleKind::linear, range.low, range.high, bar_left, bar_right);
  double y = scale_texts(drawing, scale, 2);
  const bool single = chart.margins.size() > most_folded;
  double bottom = y;
  for (const Margin& one : chart.margins) {
    bottom += row_height(one, single);
  }
  scale_line(drawing, scale, y, bottom);
  Seen seen;
  Table table{{"clause", "title", "verdict", "value", "limit", "margin", "margin as % of the limit"}, {}};
  for (const Margin& one : chart.margins) {
    y = draw_row(drawing, scale, y, one, single);
    seen.add(one.verdict);
    table.rows.push_back({one.number, one.title, std::string(verdict_text(one.verdict)), one.value, one.limit,
                          one.margin, one.headroom ? share(one, " of the limit") : ""});
  }
  y = seen.key(drawing, y + 4);
  const std::string said = describe(chart);
  return {drawing.finish(y + 2, chart.title, said), chart.title, said, table};
}

}  // namespace plumbrule::picture
