// Percent passing over sieves.

#include <algorithm>

#include "show/picture/chart.hpp"

namespace plumbrule::picture {
namespace {

constexpr double grading_height = 220;
constexpr double grading_left = 38;
constexpr double grading_right = page_width - 12;
constexpr double name_row = 13;
constexpr double longest_name = 110;

std::vector<Sieve> in_order(const GradingChart& chart) {
  std::vector<Sieve> out = chart.sieves;
  std::erase_if(out, [](const Sieve& one) { return !(one.opening > 0); });
  std::stable_sort(out.begin(), out.end(), [](const Sieve& a, const Sieve& b) { return a.opening < b.opening; });
  return out;
}

class GradingDrawer {
 public:
  explicit GradingDrawer(const GradingChart& chart) : chart_(chart), sieves_(in_order(chart)) {}

  Picture run() {
    double y = paragraph(drawing_, {2, 2}, page_width - 4, "percent passing", text_size) + 6;
    const Plot plot = make_plot(y);
    band(plot);
    value_axis(drawing_, plot);
    drawing_.line({plot.area.left, plot.area.bottom}, {plot.area.right, plot.area.bottom}, {});
    edge(plot, &Sieve::low, {Ink::window, 1.5, {}});
    edge(plot, &Sieve::high, {Ink::window, 1.5, {}});
    edge(plot, &Sieve::tolerance_low, {Ink::tolerance, 1.5, "3 3"});
    edge(plot, &Sieve::tolerance_high, {Ink::tolerance, 1.5, "3 3"});
    edge(plot, &Sieve::passing, {Ink::series, 2, {}});
    for (const Sieve& one : sieves_) {
      if (one.passing) {
        drawing_.mark({plot.x.at(one.opening), plot.y.at(std::clamp(one.passing->at, 0.0, 100.0))}, one.verdict);
        seen_.add(one.verdict);
      }
    }
    y = names(plot);
    y = key(y);
    y = seen_.key(drawing_, y);
    const std::string said = describe();
    return {drawing_.finish(y + 2, chart_.title, said), chart_.title, said, table()};
  }

 private:
  const GradingChart& chart_;
  std::vector<Sieve> sieves_;
  Drawing drawing_;
  Seen seen_;

  [[nodiscard]] Plot make_plot(double top) const {
    const Box area{grading_left, top, grading_right, top + grading_height};
    const double least = sieves_.empty() ? 1 : sieves_.front().opening;
    const double greatest = sieves_.empty() ? 10 : sieves_.back().opening;
    const bool power = chart_.axis == SieveAxis::power;
    const double margin = least < greatest ? 1 : 2;  // of one sieve alone
    return {area,
            {power ? ScaleKind::power : ScaleKind::logarithmic, power ? 0 : least / margin, greatest * margin,
             area.left + 6, area.right - 6},
            {ScaleKind::linear, 0, 100, area.bottom, area.top}};
  }

  // Between neighbouring sieves that both have a lower and an upper limit.
  void band(const Plot& plot) {
    for (std::size_t at = 0; at + 1 < sieves_.size(); ++at) {
      const Sieve& one = sieves_[at];
      const Sieve& next = sieves_[at + 1];
      if (one.low && one.high && next.low && next.high) {
        const double x = plot.x.at(one.opening);
        const double there = plot.x.at(next.opening);
        drawing_.area({{x, plot.y.at(one.low->at)},
                       {there, plot.y.at(next.low->at)},
                       {there, plot.y.at(next.high->at)},
                       {x, plot.y.at(one.high->at)}},
                      Ink::window, 0.16);
      }
    }
  }

  void edge(const Plot& plot, std::optional<Value> Sieve::*end, const Pen& pen) {
    std::vector<Point> points;
    for (const Sieve& one : sieves_) {
      if (one.*end) {
        points.push_back({plot.x.at(one.opening), plot.y.at(std::clamp((one.*end)->at, 0.0, 100.0))});
      }
    }
    if (points.size() > 1) {
      drawing_.path(points, pen);
    }
  }

  // Names end under their tick. Where sieves stand close, names step down; a thin line leads to each.
  double names(const Plot& plot) {
    Places places({-page_width, plot.area.bottom, 2 * page_width, 1e9});
    double lowest = plot.area.bottom + 5;
    double last = -1;
    for (const Sieve& one : sieves_) {
      const double x = plot.x.at(one.opening);
      if (x - last >= 3) {  // not the same sieve once more, or too close to be told apart
        last = x;
        drawing_.line({x, plot.area.top}, {x, plot.area.bottom}, {Ink::quiet, 0.4, {}});
        lowest = std::max(lowest, name(plot, places, x, fitted(one.name, small_size, longest_name)));
      }
    }
    const std::string_view scale =
        chart_.axis == SieveAxis::power ? "sieve, opening to the power 0.45" : "sieve, opening on a logarithmic scale";
    return paragraph(drawing_, {grading_left, lowest + 4}, page_width - grading_left, scale, text_size) + 4;
  }

  // On the first row on which neither the name nor the line to it touches another; there are rows enough for all.
  double name(const Plot& plot, Places& places, double x, const std::string& words) {
    const double width = text_width(words, small_size);
    const double right = std::clamp(x + 4, width + 2, page_width - 1);
    for (std::size_t row = 0; row <= sieves_.size(); ++row) {
      const double y = plot.area.bottom + 5 + name_row * static_cast<double>(row);
      const Box leader{x - 1.5, plot.area.bottom, x + 1.5, y + 2};
      Places tried = places;
      if (tried.take({leader}) && tried.take({{right - width - 2, y + 2.5, right + 1, y + name_row}})) {
        places = tried;
        drawing_.line({x, plot.area.bottom}, {x, y + 1}, {Ink::text, 0.8, {}});
        drawing_.text({right, y + small_size + 1}, words, small_size, Anchor::end);
        return y + name_row;
      }
    }
    return plot.area.bottom;
  }

  [[nodiscard]] bool any(std::optional<Value> Sieve::*end) const {
    return std::any_of(sieves_.begin(), sieves_.end(), [end](const Sieve& one) { return (one.*end).has_value(); });
  }

  double key(double y) {
    double x = 4;
    const auto entry = [&](std::string_view words, const Pen& pen) {
      drawing_.line({x, y + 8}, {x + 20, y + 8}, pen);
      drawing_.text({x + 25, y + 12}, words, small_size);
      x += 25 + text_width(words, small_size) + 18;
    };
    if (any(&Sieve::low) || any(&Sieve::high)) {
      drawing_.rectangle({x, y + 3, x + 20, y + 13}, Ink::window, 0.16);
      entry("band", {Ink::window, 1.5, {}});
    }
    if (any(&Sieve::tolerance_low) || any(&Sieve::tolerance_high)) {
      entry("production tolerance", {Ink::tolerance, 1.5, "3 3"});
    }
    if (any(&Sieve::passing)) {
      entry("tested", {Ink::series, 2, {}});
    }
    return x > 4 ? y + line_height + 3 : y;
  }

  [[nodiscard]] std::string describe() const {
    std::vector<std::string> outside;
    for (const Sieve& one : sieves_) {
      if (one.passing && one.verdict != Verdict::complies) {
        outside.push_back(one.name + " " + std::string(verdict_text(one.verdict)));
      }
    }
    std::vector<std::string> all{counted(sieves_.size(), "sieve", "sieves")};
    all.insert(all.end(), outside.begin(), outside.end());
    if (outside.empty() && any(&Sieve::passing)) {
      all.emplace_back("All tested sieves comply");
    }
    all.insert(all.end(), chart_.notes.begin(), chart_.notes.end());
    return sentences(all);
  }

  [[nodiscard]] Table table() const {
    const bool tolerance = any(&Sieve::tolerance_low) || any(&Sieve::tolerance_high);
    Table out{{"sieve", "at least", "at most", "passing", "verdict"}, {}};
    if (tolerance) {
      out.heads.insert(out.heads.begin() + 3, "production tolerance");
    }
    const auto text = [](const std::optional<Value>& one) { return one ? one->text : std::string(); };
    for (const Sieve& one : sieves_) {
      out.rows.push_back(
          {one.name, text(one.low), text(one.high), text(one.passing), std::string(verdict_text(one.verdict))});
      if (tolerance) {
        const bool both = one.tolerance_low && one.tolerance_high;
        out.rows.back().insert(out.rows.back().begin() + 3, both ? range_text(*one.tolerance_low, *one.tolerance_high)
                                                                 : text(one.tolerance_low) + text(one.tolerance_high));
      }
    }
    return out;
  }
};

}  // namespace

Picture draw(const GradingChart& chart) { return GradingDrawer(chart).run(); }

}  // namespace plumbrule::picture
