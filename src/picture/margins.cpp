// The margins of all clauses on one scale.

#include <algorithm>

#include "picture/chart.hpp"

namespace plumbrule::picture {
namespace {

constexpr double row = 16;
constexpr double label_width = 184;
constexpr double bar_left = 194;
constexpr double bar_right = 322;
constexpr double shown_left = 330;
constexpr double most_percent = 100;  // what lies beyond is drawn as an arrow; its number stands beside it

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

void draw_row(Drawing& drawing, const Scale& scale, double y, const Margin& one) {
  const double middle = y + row / 2;
  const double base = middle + small_size * 0.35;
  const std::string label = one.number + (one.number.empty() ? "" : "  ") + one.title;
  drawing.text({2, base}, fitted(label, small_size, label_width), small_size);
  drawing.text({shown_left, base}, fitted(one.shown, small_size, page_width - shown_left - 1), small_size);
  const double zero = scale.at(0);
  if (!one.headroom) {
    drawing.mark({zero, middle}, one.verdict);
    return;
  }
  const double end = scale.at(std::clamp(*one.headroom, -most_percent, most_percent));
  drawing.line({zero, middle}, {end, middle}, {ink_of(one.verdict), 4, {}});
  if (*one.headroom < -most_percent || *one.headroom > most_percent) {
    drawing.beyond({end, middle}, *one.headroom > 0, ink_of(one.verdict));
  }
  drawing.mark({end, middle}, one.verdict);
}

void scale_line(Drawing& drawing, const Scale& scale, double top, double bottom) {
  for (const Tick& one : ticks(scale.low(), scale.high(), 5)) {
    const double x = scale.at(one.at);
    const bool zero = one.at == 0;
    drawing.line({x, top}, {x, bottom}, {zero ? Ink::text : Ink::quiet, zero ? 1.5 : 0.4, {}});
  }
}

double scale_texts(Drawing& drawing, const Scale& scale, double y) {
  drawing.text({scale.at(0) - 6, y + small_size}, "outside", small_size, Anchor::end);
  drawing.text({scale.at(0) + 6, y + small_size}, "inside the limit", small_size);
  y += line_height;
  for (const Tick& one : ticks(scale.low(), scale.high(), 4)) {
    drawing.text({scale.at(one.at), y + small_size}, one.text, small_size, Anchor::middle);
  }
  drawing.text({shown_left, y + small_size}, "% of the limit", small_size);
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
    all.push_back("The least margin: " + least->number + " " + least->title + ", " + least->shown);
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
  const double bottom = y + row * static_cast<double>(chart.margins.size());
  scale_line(drawing, scale, y, bottom);
  Seen seen;
  Table table{{"clause", "title", "verdict", "value", "limit", "margin"}, {}};
  for (const Margin& one : chart.margins) {
    draw_row(drawing, scale, y, one);
    seen.add(one.verdict);
    table.rows.push_back(
        {one.number, one.title, std::string(verdict_text(one.verdict)), one.value, one.limit, one.shown});
    y += row;
  }
  y = seen.key(drawing, y + 4);
  const std::string said = describe(chart);
  return {drawing.finish(y + 2, chart.title, said), chart.title, said, table};
}

}  // namespace plumbrule::picture
