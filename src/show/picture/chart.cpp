#include "show/picture/chart.hpp"

#include <algorithm>
#include <cmath>

namespace plumbrule::picture {
namespace {

constexpr double stroke_gap = 9;  // between the strokes of a limit
constexpr double upright_gap = 6;
constexpr double stroke_reach = 5;  // how far they reach
constexpr Pen grid{Ink::quiet, 0.4, {}};
constexpr Pen axis_pen{Ink::text, 1, {}};
constexpr Pen limit_pen{Ink::fails, 1.5, {}};
constexpr Pen limit_stroke{Ink::fails, 0.8, {}};
constexpr Pen rounded_pen{Ink::fails, 0.8, "1 2"};

std::vector<Tick> value_ticks(const Plot& plot) { return ticks(plot.y.low(), plot.y.high(), most_value_ticks); }

int strokes_on(double length, double gap) { return length > 0 ? static_cast<int>(length / gap) : 0; }

// As many ticks as their texts allow.
std::vector<Tick> across_ticks(const Plot& plot) {
  for (std::size_t most = 10; most > 2; --most) {
    std::vector<Tick> out = ticks(plot.x.low(), plot.x.high(), most);
    bool fits = true;
    for (std::size_t at = 0; at + 1 < out.size(); ++at) {
      const double room = plot.x.at(out[at + 1].at) - plot.x.at(out[at].at);
      fits = fits && (text_width(out[at].text, small_size) + text_width(out[at + 1].text, small_size)) / 2 + 6 <= room;
    }
    if (fits) {
      return out;
    }
  }
  return {};
}

// Where a label of this width may stand at its line, the best first: from the right to the left.
std::vector<Box> beside(const Plot& plot, const LineLabel& label, double width) {
  constexpr int steps = 16;
  const double over = label.y - 8 - small_size;
  const double under = label.y + 4;
  std::vector<Box> out;
  for (const double top : {label.over ? over : under, label.over ? under : over}) {
    for (int step = 0; step <= steps; ++step) {
      const double left = plot.area.right - 4 - width - step * (plot.area.right - plot.area.left - 8 - width) / steps;
      out.push_back({left, top, left + width, top + small_size + 2});
    }
  }
  return out;
}

}  // namespace

void Extent::add(double value) {
  if (std::isfinite(value)) {
    range_ = empty_ ? Range{value, value} : Range{std::min(range_.low, value), std::max(range_.high, value)};
    empty_ = false;
  }
}

void Extent::add(const std::optional<Value>& value) {
  if (value) {
    add(value->at);
  }
}

void Extent::add(const Reading& reading) {
  add(reading.low.at);
  add(reading.high.at);
}

Range Extent::padded(double share) const {
  if (empty_) {
    return {0, 1};
  }
  const double width = range_.high > range_.low ? range_.high - range_.low : std::max(std::abs(range_.low), 1.0);
  return {range_.low - width * share, range_.high + width * share};
}

Range value_range(const Extent& extent) {
  const Range bare = extent.padded(0);
  Range out = extent.padded(0.06);
  if (bare.low >= 0 && (out.low < 0 || bare.low < bare.high * 0.4)) {
    out.low = 0;
  }
  return rounded_out(out, most_value_ticks);
}

double tick_room(const Range& range, std::size_t most) {
  double out = 0;
  for (const Tick& one : ticks(range.low, range.high, most)) {
    out = std::max(out, text_width(one.text, small_size));
  }
  return out + 7;
}

double paragraph(Drawing& drawing, const Point& at, double width, std::string_view words, double size, Ink ink,
                 bool bold) {
  double y = at.y;
  if (words.empty()) {
    return y;
  }
  for (const std::string& line : folded(words, bold ? size * bold_share : size, width)) {
    drawing.text({at.x, y + size}, line, size, Anchor::start, ink, bold);
    y += line_height;
  }
  return y;
}

void value_axis(Drawing& drawing, const Plot& plot) {
  for (const Tick& one : value_ticks(plot)) {
    const double y = plot.y.at(one.at);
    drawing.line({plot.area.left, y}, {plot.area.right, y}, grid);
    drawing.text({plot.area.left - 5, y + small_size * 0.35}, one.text, small_size, Anchor::end);
  }
  drawing.line({plot.area.left, plot.area.top}, {plot.area.left, plot.area.bottom}, axis_pen);
}

void across_axis(Drawing& drawing, const Plot& plot, bool words) {
  const double y = plot.area.bottom;
  for (const Tick& one : across_ticks(plot)) {
    const double x = plot.x.at(one.at);
    drawing.line({x, y}, {x, y + 4}, axis_pen);
    if (words) {
      drawing.text({x, y + 6 + small_size}, one.text, small_size, Anchor::middle);
    }
  }
  drawing.line({plot.area.left, y}, {plot.area.right, y}, axis_pen);
}

double across_title(Drawing& drawing, const Plot& plot, const Axis& axis) {
  const double width = plot.area.right - plot.area.left;
  return paragraph(drawing, {plot.area.left, plot.area.bottom + 22}, width, with_unit(axis), text_size) + 4;
}

void limit_line(Drawing& drawing, const Plot& plot, const Limit& limit) {
  const double y = plot.y.at(limit.value.at);
  const double reach = limit.side == Limit::Side::upper ? -stroke_reach : stroke_reach;
  drawing.line({plot.area.left, y}, {plot.area.right, y}, limit_pen);
  const double from = limit.unrounded ? plot.y.at(limit.unrounded->at) : y;
  if (stands_apart(plot, limit)) {
    drawing.line({plot.area.left, from}, {plot.area.right, from}, rounded_pen);
  }
  const int strokes = strokes_on(plot.area.right - plot.area.left - 4 - stroke_reach, stroke_gap);
  for (int at = 0; at < strokes; ++at) {
    const double x = plot.area.left + 4 + at * stroke_gap;
    drawing.line({x, from}, {x + stroke_reach, from + reach}, limit_stroke);
  }
}

bool stands_apart(const Plot& plot, const Limit& limit) {
  constexpr double least = 1.5;
  return limit.unrounded && std::abs(plot.y.at(limit.unrounded->at) - plot.y.at(limit.value.at)) >= least;
}

std::string limit_text(const std::string& label, const std::optional<Value>& unrounded) {
  return label + (unrounded ? " (unrounded: " + unrounded->text + ")" : "");
}

void limit_upright(Drawing& drawing, const Box& area, double x, Limit::Side side) {
  const double reach = side == Limit::Side::upper ? stroke_reach : -stroke_reach;
  drawing.line({x, area.top}, {x, area.bottom}, limit_pen);
  const int strokes = strokes_on(area.bottom - area.top, upright_gap);
  for (int at = 1; at <= strokes; ++at) {
    const double y = area.top + at * upright_gap;
    drawing.line({x, y}, {x + reach, y - stroke_reach}, limit_stroke);
  }
}

void curve(Drawing& drawing, const Plot& plot, const std::vector<Reading>& readings, bool verdicts) {
  const auto mark = [&](double x, double y, Verdict verdict) {
    if (verdicts || verdict == Verdict::not_shown) {
      drawing.mark({x, y}, verdict);
    } else {
      drawing.dot({x, y}, Ink::series);
    }
  };
  const auto joined = [&](const Value Reading::*end) {
    for (std::size_t at = 0; at + 1 < readings.size(); ++at) {
      const Reading& from = readings[at];
      const Reading& to = readings[at + 1];
      if (from.joined) {
        drawing.line({plot.x.at(from.at.at), plot.y.at((from.*end).at)}, {plot.x.at(to.at.at), plot.y.at((to.*end).at)},
                     {Ink::series, 1.6, {}});
      }
    }
  };
  joined(&Reading::low);
  if (std::any_of(readings.begin(), readings.end(), [](const Reading& one) { return one.low.at < one.high.at; })) {
    joined(&Reading::high);
  }
  for (const Reading& one : readings) {
    const double x = plot.x.at(one.at.at);
    if (one.low.at < one.high.at) {
      drawing.line({x, plot.y.at(one.low.at)}, {x, plot.y.at(one.high.at)}, {Ink::series, 1.6, {}});
      mark(x, plot.y.at(one.high.at), one.verdict);
    }
    mark(x, plot.y.at(one.low.at), one.verdict);
  }
}

void keep_off(Places& places, const Plot& plot, const std::vector<Reading>& readings) {
  constexpr double room = 6;
  for (std::size_t at = 0; at < readings.size(); ++at) {
    const Reading& one = readings[at];
    const double x = plot.x.at(one.at.at);
    places.keep_off({x - room, plot.y.at(one.high.at) - room, x + room, plot.y.at(one.low.at) + room});
    if (at + 1 == readings.size() || !one.joined) {
      continue;
    }
    // A slanted line as a row of small boxes.
    constexpr int parts = 24;
    for (int part = 0; part < parts; ++part) {
      const double share = (part + 0.5) / parts;
      const double there = x + share * (plot.x.at(readings[at + 1].at.at) - x);
      for (const auto& [from, to] :
           {std::pair{one.low.at, readings[at + 1].low.at}, std::pair{one.high.at, readings[at + 1].high.at}}) {
        const double y = plot.y.at(from) + share * (plot.y.at(to) - plot.y.at(from));
        places.keep_off({there - room, y - 3, there + room, y + 3});
      }
    }
  }
}

std::vector<std::string_view> label_lines(Drawing& drawing, const Plot& plot, Places& places,
                                          const std::vector<LineLabel>& labels) {
  std::vector<std::string_view> out;
  for (const LineLabel& one : labels) {
    places.keep_off({plot.area.left, one.y - 1, plot.area.right, one.y + 1});
  }
  for (const LineLabel& one : labels) {
    bool written = false;
    for (const std::string_view words : {one.words, one.shorter}) {
      const auto box = words.empty() ? std::nullopt : places.take(beside(plot, one, text_width(words, small_size)));
      if (box) {
        drawing.label({box->left, box->top + small_size}, words, small_size);
        written = true;
        break;
      }
    }
    if (!written) {
      out.push_back(one.words);
    }
  }
  return out;
}

double bar_row(Drawing& drawing, const Plot& plot, double y, const std::vector<Bar>& bars,
               const std::optional<double>& diamond, std::string_view words, Ink ink) {
  const double middle = y + 7;
  double sum = 0;
  std::size_t count = 0;
  for (const Bar& one : bars) {
    const double low = plot.x.at(one.low);
    const double high = plot.x.at(one.high);
    drawing.line({low, middle}, {high, middle}, {ink, 3, {}});
    drawing.line({low, middle - 5}, {low, middle + 5}, {ink, 1.5, {}});
    drawing.line({high, middle - 5}, {high, middle + 5}, {ink, 1.5, {}});
    sum += low + high;
    count += 2;
  }
  if (diamond) {
    drawing.diamond({plot.x.at(*diamond), middle}, ink);
    sum += plot.x.at(*diamond);
    ++count;
  }
  y += 15;
  const double wished = count == 0 ? plot.area.left : sum / static_cast<double>(count);
  for (const std::string& line : folded(words, small_size, page_width - 4)) {
    const double half = text_width(line, small_size) / 2;
    const double x = std::clamp(wished, 2 + half, std::max(page_width - 2 - half, 2 + half));
    drawing.text({x, y + small_size - 1}, line, small_size, Anchor::middle);
    y += line_height;
  }
  return y + 1;
}

void Seen::add(const std::vector<Reading>& readings) {
  for (const Reading& one : readings) {
    add(one.verdict);
  }
}

double Seen::key(Drawing& drawing, double y) const {
  double x = 6;
  bool any = false;
  for (std::size_t at = 0; at < seen_.size(); ++at) {
    if (!seen_.at(at)) {
      continue;
    }
    const auto verdict = static_cast<Verdict>(at);
    const double width = 14 + text_width(verdict_text(verdict), small_size) + 16;
    if (any && x + width > page_width) {
      x = 6;
      y += line_height;
    }
    drawing.mark({x, y + 8}, verdict);
    drawing.text({x + 9, y + 12}, verdict_text(verdict), small_size);
    x += width;
    any = true;
  }
  return any ? y + line_height + 3 : y;
}

std::string sentences(const std::vector<std::string>& all) {
  std::string out;
  for (const std::string& one : all) {
    if (!one.empty()) {
      const bool stopped = one.back() == '.';
      out += (out.empty() ? "" : " ") + one + (stopped ? "" : ".");
    }
  }
  return out;
}

std::string with_unit(const Axis& axis) { return axis.title + (axis.unit.empty() ? "" : ", " + axis.unit); }

std::string range_text(const Value& low, const Value& high) {
  return low.text == high.text ? low.text : low.text + " to " + high.text;
}

std::string counted(std::size_t number, std::string_view one, std::string_view many) {
  return std::to_string(number) + " " + std::string(number == 1 ? one : many);
}

}  // namespace plumbrule::picture
