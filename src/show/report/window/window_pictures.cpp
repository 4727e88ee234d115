// Pictures of windows and strength builds.

#include <algorithm>
#include <cmath>

#include "show/report/review/pictures.hpp"

namespace plumbrule::report {
namespace {

constexpr std::size_t most_panels = 4;  // on one picture, so that it fits a printed page

picture::Verdict curve_verdict(window::Verdict verdict) {
  return verdict == window::Verdict::complies ? picture::Verdict::complies
         : verdict == window::Verdict::fails  ? picture::Verdict::fails
                                              : picture::Verdict::not_shown;
}

picture::Value value_of(const window::Number& number) { return {coordinate(number.exact), number.shown}; }

// Without readings that have no exact value: no line leads to them.
std::vector<picture::Reading> readings_of(const std::vector<window::ReadingReport>& readings) {
  std::vector<picture::Reading> out;
  for (const window::ReadingReport& one : readings) {
    if (one.least.empty()) {
      if (!out.empty()) {
        out.back().joined = false;
      }
      continue;
    }
    out.push_back({{coordinate(one.position), one.at},
                   {coordinate(one.least), one.value},
                   {coordinate(one.greatest), one.value},
                   curve_verdict(one.verdict),
                   true});
  }
  return out;
}

constexpr std::string_view where_lines_stand =
    "The line of a limit stands at the limit as stated; a value beyond it complies if it rounds to the limit";

std::optional<picture::Value> unrounded(const window::LimitEnd& end) {
  return end.threshold.empty() ? std::nullopt : std::optional(picture::Value{coordinate(end.threshold), end.unrounded});
}

// What is not drawn is said.
std::vector<std::string> left_out(const std::string& label, const std::vector<window::ReadingReport>& readings) {
  std::vector<std::string> out;
  for (const window::ReadingReport& one : readings) {
    if (one.least.empty()) {
      out.push_back(label + " at " + one.at +
                    " is not drawn: " + (one.why.empty() ? std::string(explain::verdict_text(one.verdict)) : one.why));
    }
  }
  return out;
}

picture::Panel panel_of(const window::ClauseReport& clause, const window::SeriesReport& series) {
  using Side = picture::Limit::Side;
  picture::Panel out;
  out.title = clause.number + " " + series.label;
  out.unit = series.unit;
  out.readings = readings_of(series.readings);
  const auto add = [&out](const std::optional<window::LimitEnd>& end, Side side) {
    if (end) {
      out.limits.push_back({{coordinate(end->exact), end->said}, side, end->said, unrounded(*end)});
    }
  };
  add(series.low, Side::lower);
  add(series.high, Side::upper);
  out.nothing = out.readings.empty() ? "no exact value to draw" : "";
  return out;
}

picture::DesignChart frame(const window::VariableWindow& one) {
  picture::DesignChart out;
  out.title = "Clauses along " + one.title;
  out.axis = {one.title, one.unit};
  for (const window::PieceReport& piece : one.pieces) {
    out.windows.push_back(
        {value_of(piece.low.at), value_of(piece.high.at), piece.low.at.shown + " to " + piece.high.at.full});
  }
  if (one.choice) {
    out.job_mix = {coordinate(one.choice->exact), one.choice->full};
  }
  if (one.production) {
    out.tolerance = {value_of(one.production->first), value_of(one.production->second), one.tolerance};
  }
  out.notes = {one.conflict.empty() ? "" : "No window: " + one.conflict, std::string(estimate),
               std::string(where_lines_stand)};
  return out;
}

std::vector<picture::Picture> windows(const window::VariableWindow& one) {
  std::vector<picture::DesignChart> charts;
  for (const window::ClauseReport& clause : one.clauses) {
    for (const window::SeriesReport& series : clause.series) {
      if (clause.role != window::Role::varies || (!series.low && !series.high)) {
        continue;
      }
      if (charts.empty() || charts.back().panels.size() == most_panels) {
        charts.push_back(frame(one));
        charts.back().title += charts.size() == 1 ? "" : ", continued";
      }
      charts.back().panels.push_back(panel_of(clause, series));
      const std::vector<std::string> said = left_out(series.label, series.readings);
      charts.back().notes.insert(charts.back().notes.end(), said.begin(), said.end());
    }
  }
  std::vector<picture::Picture> out;
  std::transform(charts.begin(), charts.end(), std::back_inserter(out),
                 [](const picture::DesignChart& chart) { return picture::draw(chart); });
  return out;
}

// Clauses that ask for levels of one series stand on one picture.
bool same_series(const window::StrengthReport& one, const window::StrengthReport& other) {
  const auto same = [](const window::ReadingReport& a, const window::ReadingReport& b) {
    return a.position == b.position && a.least == b.least && a.greatest == b.greatest;
  };
  return one.build.measure == other.build.measure && one.build.unit == other.build.unit &&
         one.build.time_unit == other.build.time_unit &&
         std::equal(one.readings.begin(), one.readings.end(), other.readings.begin(), other.readings.end(), same);
}

picture::Level level_of(const window::StrengthReport& one) {
  picture::Level out;
  out.value = {coordinate(one.build.level.exact), one.build.level.said};
  out.unrounded = unrounded(one.build.level);
  out.label = one.clause + ": " + one.build.level.said + " by " + one.build.asked_text;
  out.asked = {coordinate(one.build.asked), one.build.asked_text};
  if (one.exact) {
    out.reached = {coordinate(*one.exact), *one.exact + " " + one.build.time_unit};
  }
  out.said = one.reached;
  out.verdict = curve_verdict(one.verdict);
  return out;
}

std::vector<picture::Picture> builds(const std::vector<window::StrengthReport>& all) {
  std::vector<picture::Picture> out;
  std::vector<bool> drawn(all.size(), false);
  for (std::size_t at = 0; at < all.size(); ++at) {
    const window::StrengthReport& first = all[at];
    if (drawn[at] || first.readings.empty()) {
      continue;
    }
    picture::BuildChart chart;
    chart.title = "Strength build: " + first.build.measure;
    chart.time = {first.build.time, first.build.time_unit};
    chart.value = {first.build.measure, first.build.unit};
    chart.readings = readings_of(first.readings);
    chart.notes = left_out(first.build.measure, first.readings);
    for (std::size_t other = at; other < all.size(); ++other) {
      if (!drawn[other] && !all[other].readings.empty() && same_series(first, all[other])) {
        drawn[other] = true;
        chart.levels.push_back(level_of(all[other]));
      }
    }
    chart.notes.emplace_back(estimate);
    chart.notes.emplace_back(where_lines_stand);
    out.push_back(picture::draw(chart));
  }
  return out;
}

}  // namespace

std::vector<Placed> pictures(const Windows& report) {
  std::vector<Placed> out;
  for (const window::SpecificationWindows& one : report.specifications) {
    for (const window::VariableWindow& part : one.windows) {
      for (picture::Picture& each : windows(part)) {
        out.push_back({one.title, std::move(each)});
      }
    }
    for (picture::Picture& each : builds(one.strengths)) {
      out.push_back({one.title, std::move(each)});
    }
  }
  return out;
}

}  // namespace plumbrule::report
