#include "show/report/parts/json_parts.hpp"
#include "show/report/window/window.hpp"

namespace plumbrule::report {
namespace {

// A list of parts, each written by `write`.
template <typename Part, typename Write>
Json list(const std::vector<Part>& parts, Write write) {
  Json out = Json::array();
  for (const Part& one : parts) {
    out.push_back(write(one));
  }
  return out;
}

Json window_line(const explain::Line& one) { return {{"depth", one.depth}, {"text", one.text}, {"place", one.place}}; }

std::string kind(window::EndKind one) {
  return one == window::EndKind::limit ? "limit" : one == window::EndKind::edge ? "edge_of_tested_range" : "not_shown";
}

Json end(const window::EndReport& one) {
  return {{"value", one.at.exact},
          {"inside", one.inside},
          {"kind", kind(one.kind)},
          {"bracketed", one.kind == window::EndKind::limit},
          {"clauses", one.clauses},
          {"why", one.said},
          {"steps", list(one.steps, window_line)}};
}

Json piece(const window::PieceReport& one) {
  return {{"low", end(one.low)},
          {"high", end(one.high)},
          {"middle", one.middle.exact},
          {"width", one.width.exact},
          {"holds_job_mix", one.holds_choice}};
}

Json reading(const window::ReadingReport& one) {
  return {{"at", one.at},
          {"value", one.value},
          {"least", one.least},
          {"greatest", one.greatest},
          {"verdict", text_of(explain::verdict_text(one.verdict))},
          {"why", one.why},
          {"place", one.place}};
}

Json series(const window::SeriesReport& one) {
  return {{"label", one.label},
          {"limit", one.limit},
          {"threshold", one.threshold},
          {"tested", list(one.readings, reading)},
          {"cautions", one.warnings}};
}

Json stretch(const window::Stretch& one) {
  return {{"low", one.low.stripped().text()},
          {"low_inside", one.low_inside},
          {"high", one.high.stripped().text()},
          {"high_inside", one.high_inside}};
}

std::string role(window::Role one) {
  switch (one) {
    case window::Role::varies:
      return "varies";
    case window::Role::own_limit:
      return "limits_the_variable";
    case window::Role::tolerance:
      return "tolerance_of_production";
    default:
      return "does_not_vary";
  }
}

Json window_clause(const window::ClauseReport& one) {
  return {{"clause", one.number},
          {"title", one.title},
          {"role", role(one.role)},
          {"counts", one.counts},
          {"optional", one.optional},
          {"verdict_at_job_mix", text_of(explain::verdict_text(one.verdict))},
          {"why", one.why},
          {"complies", list(one.stretches, stretch)},
          {"series", list(one.series, series)}};
}

Json change(const window::ChangeReport& one) {
  return {{"clause", one.clause}, {"title", one.title},       {"now", one.now},
          {"change", one.move},   {"possible", one.possible}, {"others", one.others}};
}

Json curve(const window::CurveReport& one) {
  const auto point = [](const window::ReadingReport& part) {
    return Json{{"at", part.at}, {"curve", part.value}, {"left_over", part.why}};
  };
  return {{"clause", one.clause},
          {"label", one.label},
          {"formula", one.formula},
          {"complies", one.within},
          {"points", list(one.points, point)}};
}

std::string outcome(window::Standing one) {
  return one == window::Standing::holds ? "holds" : one == window::Standing::fails ? "fails" : "open";
}

Json window_of(const window::VariableWindow& one) {
  return {{"variable", one.variable},
          {"title", one.title},
          {"unit", one.unit},
          {"tested", one.tested},
          {"job_mix", one.choice ? Json(one.choice->exact) : Json()},
          {"outcome", outcome(one.outcome)},
          {"windows", list(one.pieces, piece)},
          {"empty_because", one.conflict},
          {"choice", one.standing},
          {"tolerance", one.tolerance},
          {"cautions", one.cautions},
          {"clauses", list(one.clauses, window_clause)},
          {"changes", list(one.changes, change)},
          {"curves", list(one.curves, curve)}};
}

Json strength(const window::StrengthReport& one) {
  return {{"clause", one.clause},
          {"title", one.title},
          {"limit", one.limit},
          {"asked", one.asked},
          {"build", one.reached},
          {"time", one.exact ? Json(*one.exact) : Json()},
          {"tested", list(one.readings, reading)},
          {"level", one.level},
          {"source", one.source},
          {"meaning", one.meaning},
          {"mend", one.mend},
          {"cautions", one.cautions},
          {"steps", list(one.steps, window_line)}};
}

Json window_specification(const window::SpecificationWindows& one) {
  Json out = head_json(one);
  out["variables"] = list(one.windows, window_of);
  out["strength_build"] = list(one.strengths, strength);
  return out;
}

}  // namespace

std::string window_json(const Windows& report) {
  Json out = submittal_json("window_report", report.submittal, report.identity, report.problems, report.warnings);
  out["specifications"] = list(report.specifications, window_specification);
  out["estimate"] = text_of(estimate);
  close_json(out, report.origin);
  // Submittal texts are checked UTF-8; the handler only guards shortened ones.
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace plumbrule::report
