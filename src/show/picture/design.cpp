// Values against a design value.

#include "show/picture/chart.hpp"

namespace plumbrule::picture {
namespace {

constexpr double panel_height = 130;
constexpr double design_right = page_width - 6;

Extent values(const Panel& panel) {
  Extent out;
  for (const Reading& one : panel.readings) {
    out.add(one);
  }
  for (const Limit& one : panel.limits) {
    out.add(one.value.at);
    out.add(one.unrounded);
  }
  return out;
}

Range across(const DesignChart& chart) {
  Extent out;
  for (const Panel& panel : chart.panels) {
    for (const Reading& one : panel.readings) {
      out.add(one.at.at);
    }
  }
  for (const Band& one : chart.windows) {
    out.add(one.low.at);
    out.add(one.high.at);
  }
  out.add(chart.job_mix);
  if (chart.tolerance) {
    out.add(chart.tolerance->low.at);
    out.add(chart.tolerance->high.at);
  }
  return out.padded(0.05);
}

class DesignDrawer {
 public:
  explicit DesignDrawer(const DesignChart& chart) : chart_(chart), range_(across(chart)) {
    for (const Panel& panel : chart.panels) {
      left_ = std::max(left_, tick_room(value_range(values(panel)), most_value_ticks));
    }
  }

  Picture run() {
    double y = 2;
    for (std::size_t at = 0; at < chart_.panels.size(); ++at) {
      y = panel(chart_.panels[at], at + 1 == chart_.panels.size(), y);
    }
    y = rows(y);
    y = seen_.key(drawing_, y);
    const std::string said = description();
    return {drawing_.finish(y + 2, chart_.title, said), chart_.title, said, table()};
  }

 private:
  const DesignChart& chart_;
  Range range_;
  double left_ = 30;
  Drawing drawing_;
  Seen seen_;

  [[nodiscard]] Plot plot(double top, const Range& of) const {
    const Box area{left_, top, design_right, top + panel_height};
    return {area,
            {ScaleKind::linear, range_.low, range_.high, area.left, area.right},
            {ScaleKind::linear, of.low, of.high, area.bottom, area.top}};
  }

  void ends(const Plot& plot, const Band& band, const Pen& pen) {
    for (const double x : {plot.x.at(band.low.at), plot.x.at(band.high.at)}) {
      drawing_.line({x, plot.area.top}, {x, plot.area.bottom}, pen);
    }
  }

  void ground(const Plot& plot) {
    for (const Band& one : chart_.windows) {
      drawing_.rectangle({plot.x.at(one.low.at), plot.area.top, plot.x.at(one.high.at), plot.area.bottom}, Ink::window,
                         0.16);
      ends(plot, one, {Ink::window, 1, {}});
    }
    if (chart_.tolerance) {
      ends(plot, *chart_.tolerance, {Ink::tolerance, 1.5, "2 3"});
    }
    if (chart_.job_mix) {
      const double x = plot.x.at(chart_.job_mix->at);
      drawing_.line({x, plot.area.top}, {x, plot.area.bottom}, {Ink::text, 1, "5 3"});
    }
  }

  double panel(const Panel& panel, bool last, double y) {
    y = paragraph(drawing_, {2, y}, page_width - 4, panel.title, text_size, Ink::text, true);
    y = paragraph(drawing_, {2, y}, page_width - 4, panel.unit, small_size) + 6;
    const Plot here = plot(y, value_range(values(panel)));
    ground(here);
    value_axis(drawing_, here);
    for (const Limit& one : panel.limits) {
      limit_line(drawing_, here, one);
    }
    curve(drawing_, here, panel.readings);
    seen_.add(panel.readings);
    across_axis(drawing_, here, last);
    y = last ? across_title(drawing_, here, chart_.axis) : here.area.bottom + 8;
    for (const std::string_view one : labels(here, panel)) {
      y = paragraph(drawing_, {2, y}, page_width - 4, "limit: " + std::string(one), small_size);
    }
    for (const Limit& one : panel.limits) {
      if (stands_apart(here, one)) {
        y = paragraph(drawing_, {2, y}, page_width - 4, "dotted: " + one.label + ", unrounded " + one.unrounded->text,
                      small_size);
      }
    }
    return y + 4;
  }

  std::vector<std::string_view> labels(const Plot& plot, const Panel& panel) {
    Places places(plot.area);
    keep_off(places, plot, panel.readings);
    std::vector<LineLabel> lines;
    for (const Limit& one : panel.limits) {
      lines.push_back({plot.y.at(one.value.at), one.label, one.value.text, one.side == Limit::Side::lower});
    }
    std::vector<std::string_view> out = label_lines(drawing_, plot, places, lines);
    if (!panel.nothing.empty() && panel.readings.empty()) {
      out.push_back(panel.nothing);
    }
    return out;
  }

  double rows(double y) {
    const Plot under = plot(y, {0, 1});
    if (!chart_.windows.empty()) {
      std::vector<Bar> bars;
      std::string words = chart_.windows.size() == 1 ? "window " : "windows ";
      for (const Band& one : chart_.windows) {
        bars.push_back({one.low.at, one.high.at});
        words += (bars.size() == 1 ? "" : "; ") + one.label;
      }
      y = bar_row(drawing_, under, y, bars, std::nullopt, words, Ink::window);
    }
    if (chart_.tolerance) {
      y = bar_row(drawing_, under, y, {{chart_.tolerance->low.at, chart_.tolerance->high.at}}, std::nullopt,
                  chart_.tolerance->label, Ink::tolerance);
    }
    if (chart_.job_mix) {
      y = bar_row(drawing_, under, y, {}, chart_.job_mix->at, "job mix " + chart_.job_mix->text, Ink::text);
    }
    return y;
  }

  [[nodiscard]] std::string description() const {
    std::vector<std::string> all;
    for (const Panel& panel : chart_.panels) {
      std::string one = panel.title + ": " + counted(panel.readings.size(), "tested value", "tested values");
      for (const Limit& limit : panel.limits) {
        one += ", limit " + limit_text(limit.label, limit.unrounded);
      }
      all.push_back(one);
    }
    for (const Band& one : chart_.windows) {
      all.push_back("Window " + one.label);
    }
    if (chart_.job_mix) {
      all.push_back("Job mix " + chart_.job_mix->text);
    }
    if (chart_.tolerance) {
      all.push_back(chart_.tolerance->label);
    }
    all.insert(all.end(), chart_.notes.begin(), chart_.notes.end());
    return sentences(all);
  }

  [[nodiscard]] Table table() const {
    Table out{{"what", with_unit(chart_.axis), "value", "verdict"}, {}};
    for (const Panel& panel : chart_.panels) {
      for (const Reading& one : panel.readings) {
        out.rows.push_back(
            {panel.title, one.at.text, range_text(one.low, one.high), std::string(verdict_text(one.verdict))});
      }
      if (panel.readings.empty()) {
        out.rows.push_back({panel.title, "", panel.nothing, ""});
      }
      for (const Limit& one : panel.limits) {
        out.rows.push_back({panel.title, "all", limit_text(one.label, one.unrounded), "limit"});
      }
    }
    for (const Band& one : chart_.windows) {
      out.rows.push_back({"window", one.label, "", ""});
    }
    if (chart_.job_mix) {
      out.rows.push_back({"job mix", chart_.job_mix->text, "", ""});
    }
    if (chart_.tolerance) {
      out.rows.push_back({"production tolerance", range_text(chart_.tolerance->low, chart_.tolerance->high), "", ""});
    }
    return out;
  }
};

}  // namespace

Picture draw(const DesignChart& chart) { return DesignDrawer(chart).run(); }

}  // namespace plumbrule::picture
