// The specimens of each test on a strip with a scale of its own.

#include <algorithm>

#include "show/picture/chart.hpp"

namespace plumbrule::picture {
namespace {

constexpr double strip_height = 26;
constexpr double strip_left = 14;
constexpr double strip_right = page_width - 14;
constexpr double dot = 7;  // dots that would overlap stand one over the other

Range values(const Scatter& strip) {
  Extent out;
  for (const Value& one : strip.specimens) {
    out.add(one.at);
  }
  for (const Limit& one : strip.limits) {
    out.add(one.value.at);
  }
  out.add(strip.statistic);
  return out.padded(0.08);
}

std::string facts(const Scatter& strip) {
  std::string out = counted(strip.specimens.size(), "specimen", "specimens");
  if (strip.statistic) {
    out += ", " + strip.statistic_name + " " + strip.statistic->text;
  }
  for (const Limit& one : strip.limits) {
    out += "; " + one.label;
  }
  return out;
}

void dots(Drawing& drawing, const Plot& plot, const Scatter& strip) {
  std::vector<double> places;
  for (const Value& one : strip.specimens) {
    places.push_back(plot.x.at(one.at));
  }
  std::sort(places.begin(), places.end());
  double before = -100;
  double level = 0;
  for (const double x : places) {
    level = x - before < dot ? level + 1 : 0;
    before = level == 0 ? x : before;
    const double y = plot.area.bottom - 6 - std::min(level, 3.0) * 5;
    drawing.area({{x - 3, y - 3}, {x + 3, y - 3}, {x + 3, y + 3}, {x - 3, y + 3}}, Ink::series, 0.85);
  }
}

double draw_strip(Drawing& drawing, double y, const Scatter& strip) {
  drawing.mark({7, y + 8}, strip.verdict);
  y = paragraph(drawing, {16, y}, page_width - 18, strip.title + (strip.unit.empty() ? "" : ", " + strip.unit),
                text_size, Ink::text, true);
  y = paragraph(drawing, {16, y}, page_width - 18, facts(strip), small_size) + 6;
  const Range range = values(strip);
  const Box area{strip_left, y, strip_right, y + strip_height};
  const Plot plot{area,
                  {ScaleKind::linear, range.low, range.high, area.left, area.right},
                  {ScaleKind::linear, 0, 1, area.bottom, area.top}};
  for (const Limit& one : strip.limits) {
    limit_upright(drawing, area, plot.x.at(one.value.at), one.side);
  }
  dots(drawing, plot, strip);
  if (strip.statistic) {
    const double x = plot.x.at(strip.statistic->at);
    drawing.line({x, area.top + 2}, {x, area.bottom}, {Ink::text, 1.2, {}});
    drawing.diamond({x, area.top + 3}, Ink::text);
  }
  across_axis(drawing, plot, true);
  return area.bottom + 30;
}

}  // namespace

Picture draw(const ScatterChart& chart) {
  Drawing drawing;
  double y = 2;
  Seen seen;
  Table table{{"test", "specimens", "statistic", "limit", "verdict"}, {}};
  std::vector<std::string> all;
  for (const Scatter& strip : chart.strips) {
    y = draw_strip(drawing, y, strip);
    seen.add(strip.verdict);
    std::string specimens;
    for (const Value& one : strip.specimens) {
      specimens += (specimens.empty() ? "" : "; ") + one.text;
    }
    std::string limits;
    for (const Limit& one : strip.limits) {
      limits += (limits.empty() ? "" : "; ") + one.label;
    }
    table.rows.push_back({strip.title, specimens,
                          strip.statistic ? strip.statistic_name + " " + strip.statistic->text : "", limits,
                          std::string(verdict_text(strip.verdict))});
    all.push_back(strip.title + ": " + facts(strip));
  }
  drawing.rectangle({5, y + 4, 11, y + 10}, Ink::series, 0.85);
  drawing.text({16, y + 11}, "a specimen", small_size);
  drawing.diamond({108, y + 7}, Ink::text);
  drawing.text({117, y + 11}, "what is compared with the limit", small_size);
  y = seen.key(drawing, y + line_height + 1);
  all.insert(all.end(), chart.notes.begin(), chart.notes.end());
  const std::string said = sentences(all);
  return {drawing.finish(y + 2, chart.title, said), chart.title, said, table};
}

}  // namespace plumbrule::picture
