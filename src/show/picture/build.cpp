// Values against time, with the levels that are to be reached.

#include "show/picture/chart.hpp"

namespace plumbrule::picture {
namespace {

constexpr double build_height = 190;
constexpr double build_right = page_width - 6;

Extent values(const BuildChart& chart) {
  Extent out;
  for (const Reading& one : chart.readings) {
    out.add(one);
  }
  for (const Level& one : chart.levels) {
    out.add(one.value.at);
    out.add(one.unrounded);
  }
  return out;
}

Range times(const BuildChart& chart) {
  Extent out;
  out.add(0);
  for (const Reading& one : chart.readings) {
    out.add(one.at.at);
  }
  for (const Level& one : chart.levels) {
    out.add(one.asked);
    out.add(one.reached);
  }
  const Range bare = out.padded(0);
  return {bare.low, bare.high + (bare.high - bare.low) * 0.05};
}

Plot plot_of(const BuildChart& chart, double top) {
  const Range of = value_range(values(chart));
  const Range time = times(chart);
  const Box area{std::max(30.0, tick_room(of, most_value_ticks)), top, build_right, top + build_height};
  return {area,
          {ScaleKind::linear, time.low, time.high, area.left, area.right},
          {ScaleKind::linear, of.low, of.high, area.bottom, area.top}};
}

// From the time for which the level is asked on, strokes under its line say that values must not be there.
void draw_level(Drawing& drawing, const Plot& plot, const Level& level) {
  const double y = plot.y.at(level.value.at);
  const double from = level.asked ? plot.x.at(level.asked->at) : plot.area.left;
  drawing.line({plot.area.left, y}, {from, y}, {Ink::fails, 1, "2 3"});
  Plot part = plot;
  part.area.left = from;
  limit_line(drawing, part, {level.value, Limit::Side::lower, "", level.unrounded});
  if (level.asked) {
    drawing.line({from, y}, {from, plot.area.bottom}, {Ink::fails, 1, {}});
  }
  if (level.reached) {
    const double x = plot.x.at(level.reached->at);
    const double met = level.unrounded ? plot.y.at(level.unrounded->at) : y;
    drawing.line({x, met}, {x, plot.area.bottom}, {Ink::window, 1.2, "4 3"});
    drawing.diamond({x, met}, Ink::window);
  }
}

std::string row_text(const Level& level) {
  return limit_text(level.label, level.unrounded) + (level.said.empty() ? "" : ": " + level.said);
}

// What a level stands on, under the axis: the time asked as a bar's end, the time reached as a diamond; then the words.
double level_row(Drawing& drawing, const Plot& plot, double y, const Level& level) {
  if (level.asked) {
    const double x = plot.x.at(level.asked->at);
    drawing.line({x, y + 2}, {x, y + 12}, {Ink::fails, 1.5, {}});
    drawing.line({x, y + 7}, {plot.area.right, y + 7}, {Ink::fails, 1, "2 3"});
  }
  if (level.reached) {
    drawing.diamond({plot.x.at(level.reached->at), y + 7}, Ink::window);
  }
  y += 15;
  drawing.mark({8, y + 8}, level.verdict);
  return paragraph(drawing, {17, y + 1}, page_width - 19, row_text(level), small_size) + 1;
}

std::string describe(const BuildChart& chart) {
  std::vector<std::string> all{chart.value.title + ": " +
                               counted(chart.readings.size(), "tested time", "tested times")};
  for (const Level& one : chart.levels) {
    all.push_back(row_text(one));
  }
  all.insert(all.end(), chart.notes.begin(), chart.notes.end());
  return sentences(all);
}

Table table_of(const BuildChart& chart) {
  Table out{{"what", with_unit(chart.time), with_unit(chart.value), "verdict", "said"}, {}};
  for (const Reading& one : chart.readings) {
    out.rows.push_back({"tested", one.at.text, range_text(one.low, one.high), "", ""});
  }
  for (const Level& one : chart.levels) {
    out.rows.push_back({one.label, one.asked ? one.asked->text : "", limit_text(one.value.text, one.unrounded),
                        std::string(verdict_text(one.verdict)), one.said});
  }
  return out;
}

}  // namespace

Picture draw(const BuildChart& chart) {
  Drawing drawing;
  double y = paragraph(drawing, {2, 2}, page_width - 4, chart.value.title, text_size, Ink::text, true);
  y = paragraph(drawing, {2, y}, page_width - 4, chart.value.unit, small_size) + 6;
  const Plot plot = plot_of(chart, y);
  value_axis(drawing, plot);
  Places places(plot.area);
  keep_off(places, plot, chart.readings);
  std::vector<LineLabel> labels;
  Seen seen;
  for (const Level& one : chart.levels) {
    draw_level(drawing, plot, one);
    labels.push_back({plot.y.at(one.value.at), one.label, one.value.text, true});
    seen.add(one.verdict);
    for (const auto& at : {one.asked, one.reached}) {
      if (at) {
        places.keep_off({plot.x.at(at->at) - 2, plot.y.at(one.value.at) - 6, plot.x.at(at->at) + 2, plot.area.bottom});
      }
    }
  }
  curve(drawing, plot, chart.readings, false);
  (void)label_lines(drawing, plot, places, labels);  // what finds no room stands in the rows
  across_axis(drawing, plot, true);
  y = across_title(drawing, plot, chart.time);
  for (const Level& one : chart.levels) {
    y = level_row(drawing, plot, y, one);
  }
  y = seen.key(drawing, y);
  const std::string said = describe(chart);
  return {drawing.finish(y + 2, chart.title, said), chart.title, said, table_of(chart)};
}

}  // namespace plumbrule::picture
