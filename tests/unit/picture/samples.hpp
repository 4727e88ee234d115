#pragma once
// Data for pictures. Every number and name is invented: what is looked at is where texts stand, not what they say.

#include <string>
#include <vector>

#include "show/picture/picture.hpp"

namespace plumbrule::picture {

inline Value value(double at, const std::string& text) { return {at, text}; }

inline Reading reading(double at, double is, Verdict verdict) {
  const auto text = [](double number) { return std::to_string(static_cast<int>(number)); };
  return {value(at, text(at)), value(is, text(is)), value(is, text(is)), verdict, true};
}

inline DesignChart design_sample() {
  DesignChart out;
  out.title = "Window of residual binder content";
  out.axis = {"residual binder content", "% of dry aggregate"};
  out.panels.push_back({"wet-track abrasion loss, soak 1 h",
                        "g/m2",
                        {reading(6.5, 674, Verdict::fails), reading(7, 569, Verdict::fails),
                         reading(7.5, 467, Verdict::complies), reading(8.5, 331, Verdict::complies)},
                        {{value(538, "538 g/m2"), Limit::Side::upper, "at most 538 g/m2"}},
                        ""});
  out.panels.push_back({"sand adhesion under the loaded wheel",
                        "g/m2",
                        {reading(6.5, 340, Verdict::complies), reading(7, 406, Verdict::complies),
                         reading(7.5, 480, Verdict::complies), reading(8.5, 650, Verdict::fails)},
                        {{value(538, "538 g/m2"), Limit::Side::upper, "at most 538 g/m2"}},
                        ""});
  out.windows.push_back({value(7.15, "7.15"), value(7.85, "7.85"), "7.15 to 7.85 % of dry aggregate"});
  out.job_mix = value(7.5, "7.5 % of dry aggregate");
  out.tolerance = Band{value(7.0, "7 %"), value(8.0, "8 %"), "production may stray by 0.5 %: 7 to 8 %"};
  out.notes = {"Between tested values straight lines are assumed"};
  return out;
}

inline BuildChart build_sample() {
  BuildChart out;
  out.title = "Strength build at the job mix";
  out.time = {"cure", "min"};
  out.value = {"wet cohesion", "kg-cm"};
  out.readings = {reading(20, 8, Verdict::fails), reading(30, 13, Verdict::complies),
                  reading(60, 21, Verdict::complies), reading(90, 23, Verdict::complies)};
  out.levels.push_back({value(12, "12 kg-cm"), "512.3.5: at least 12 kg-cm", value(30, "30 min"), value(27, "27 min"),
                        "reached after 27 min", Verdict::complies});
  out.levels.push_back({value(20, "20 kg-cm"), "512.3.4: at least 20 kg-cm", value(60, "60 min"),
                        value(54.4, "54.375 min"), "reached after 54.375 min", Verdict::complies});
  return out;
}

inline GradingChart grading_sample(SieveAxis axis) {
  GradingChart out;
  out.title = "Aggregate grading";
  out.axis = axis;
  const std::vector<std::string> names{"No. 200", "No. 100", "No. 50", "No. 30", "No. 16", "No. 8", "No. 4", "3/8 in"};
  const std::vector<double> openings{0.075, 0.15, 0.3, 0.6, 1.18, 2.36, 4.75, 9.5};
  const std::vector<double> lows{5, 7, 12, 19, 28, 45, 70, 100};
  const std::vector<double> highs{15, 18, 25, 34, 50, 70, 90, 100};
  const std::vector<double> passing{9, 13, 19, 29, 51, 60, 82, 100};
  const auto percent = [](double at) { return Value{at, std::to_string(static_cast<int>(at)) + " %"}; };
  for (std::size_t at = 0; at < names.size(); ++at) {
    const bool out_of_band = passing[at] > highs[at];
    out.sieves.push_back({openings[at], names[at], percent(lows[at]), percent(highs[at]), percent(passing[at] - 3),
                          percent(passing[at] + 3), percent(passing[at]),
                          out_of_band ? Verdict::fails : Verdict::complies});
  }
  return out;
}

inline MarginChart margin_sample(std::size_t clauses) {
  MarginChart out;
  out.title = "Margins of all clauses";
  for (std::size_t at = 0; at < clauses; ++at) {
    const double headroom = static_cast<double>((at * 37) % 171) - 60;
    Margin one;
    one.number = "512.3." + std::to_string(at + 1);
    one.title = at % 3 == 0 ? "Abrasion loss after a one-hour soak, heavy traffic and cold nights" : "Sand equivalent";
    if (at % 9 == 4) {
      one.verdict = Verdict::not_shown;
      one.shown = "not shown";
    } else if (at % 13 == 7) {
      one.verdict = Verdict::does_not_apply;
      one.shown = "does not apply";
    } else {
      one.verdict = headroom < 0 ? Verdict::fails : Verdict::complies;
      one.headroom = headroom;
      one.shown = std::to_string(static_cast<int>(headroom)) + ".0 %";
      one.margin = "12 g/m2 inside the limit (8.0 % of it)";
    }
    out.margins.push_back(one);
  }
  return out;
}

inline ScatterChart scatter_sample() {
  ScatterChart out;
  out.title = "Specimens";
  out.strips.push_back({"wet-track abrasion loss, soak 1 h",
                        "g/m2",
                        {value(460, "460"), value(474, "474"), value(462, "462"), value(520, "520")},
                        value(479, "479 g/m2"),
                        "mean",
                        {{value(538, "538"), Limit::Side::upper, "at most 538 g/m2"}},
                        Verdict::complies});
  out.strips.push_back(
      {"residual binder content by extraction, of three samples from the paver",
       "% of dry aggregate",
       {value(9.4, "9.4"), value(9.6, "9.6")},
       value(9.5, "9.5 %"),
       "mean",
       {{value(6.5, "6.5"), Limit::Side::lower, "at least 6.5 %"}, {value(9, "9"), Limit::Side::upper, "at most 9 %"}},
       Verdict::fails});
  return out;
}

inline MatrixChart matrix_sample(std::size_t columns) {
  MatrixChart out;
  out.title = "One submittal, many specifications";
  const std::vector<std::string> rows{
      "wet-track abrasion loss, soak 1 h", "wet-track abrasion loss, soak 6 d",    "wet cohesion, cure 30 min",
      "wet cohesion, cure 60 min",         "sand adhesion under the loaded wheel", "mix time, temperature 25 degC",
      "percent passing, sieve No. 4"};
  for (std::size_t at = 0; at < columns; ++at) {
    out.columns.push_back({"agency_" + std::to_string(at + 1) + "_section_512_2026",
                           at % 2 == 0 ? "No exception taken" : "Revise and resubmit: at least one clause fails"});
  }
  for (std::size_t row = 0; row < rows.size(); ++row) {
    MatrixRow one{rows[row], {}};
    for (std::size_t at = 0; at < columns; ++at) {
      one.cells.push_back({static_cast<Verdict>((row * 5 + at * 3) % 4), (row + at) % 5 != 0, "474 g/m2"});
    }
    out.rows.push_back(one);
  }
  return out;
}

}  // namespace plumbrule::picture
