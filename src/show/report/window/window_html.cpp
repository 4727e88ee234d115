#include <algorithm>

#include "show/report/parts/page_parts.hpp"
#include "show/report/review/pictures.hpp"
#include "show/report/window/window.hpp"

namespace plumbrule::report {
namespace {

using explain::Verdict;
using window::ClauseReport;
using window::Role;

std::string title_of(const ClauseReport& one) {
  return one.number + " " + one.title + (one.counts ? "" : " (advice only)") + (one.optional ? " (optional test)" : "");
}

std::string said(const window::EndReport& end) {
  return end.at.shown + (end.inside ? "" : " (itself outside)") + ": " + end.said;
}

Markup piece(const window::PieceReport& one) {
  const bool point = one.low.at.exact == one.high.at.exact;
  const std::string span = point ? one.low.at.full + " alone" : one.low.at.shown + " to " + one.high.at.full;
  return facts({fact("Window", span + (one.holds_choice ? ", holds the job mix" : "")),
                fact("Lower end", said(one.low)), fact("Upper end", said(one.high)),
                fact("Middle", point ? "" : one.middle.shown + ", width " + one.width.shown)});
}

Markup derivations(const window::PieceReport& one) {
  Markup out = derivation("Where the lower end at " + one.low.at.shown + " comes from", one.low.steps);
  out += derivation("Where the upper end at " + one.high.at.shown + " comes from", one.high.steps);
  return out;
}

Markup readings(const std::string& caption, const std::string& head, const std::vector<window::ReadingReport>& all) {
  HtmlTable out{caption, {head, "Value", "Verdict", "Why", "Place"}, {}};
  for (const window::ReadingReport& one : all) {
    out.rows.push_back(
        {escaped(one.at), escaped(one.value), verdict_mark(one.verdict), escaped(one.why), place_mark(one.place)});
  }
  return out.rows.empty() ? Markup() : html_table(without_empty_columns(out));
}

Markup varying(const ClauseReport& one, const std::string& along) {
  Markup out =
      facts({fact("Complies", one.complying.empty() ? "nowhere in the tested range" : joined(one.complying, "; "))});
  for (const window::SeriesReport& series : one.series) {
    out += facts({fact("Limit", series.label + ": " + series.limit),
                  fact("Unrounded", series.folded ? series.threshold : ""),
                  {"Caution", text_list(series.warnings)}});
    out += readings("Clause " + one.number + ", " + series.label + ", as tested at " + along, "At", series.readings);
  }
  return subpart(title_of(one), out);
}

Markup clauses(const window::VariableWindow& one) {
  Markup out;
  HtmlTable beside{std::string(judged_at_job_mix), {"Clause", "Verdict", "Why"}, {}};
  HtmlTable open{std::string(not_shown_beside), {"Clause", "Verdict", "Why"}, {}};
  for (const ClauseReport& clause : one.clauses) {
    if (clause.role == Role::varies || clause.role == Role::own_limit) {
      out += varying(clause, one.title + ", in " + one.unit);
    } else {
      const std::string why = clause.verdict == Verdict::complies ? "" : clause.why;
      (clause.verdict == Verdict::not_shown ? open : beside)
          .rows.push_back(
              {escaped(title_of(clause)), verdict_mark(clause.verdict),
               escaped(clause.role == Role::tolerance ? "a tolerance of production" + (why.empty() ? "" : "; " + why)
                                                      : why)});
    }
  }
  out +=
      beside.rows.empty() ? Markup() : subpart("Judged at the job mix only", html_table(without_empty_columns(beside)));
  out += open.rows.empty() ? Markup() : subpart("Not shown", html_table(without_empty_columns(open)));
  return out;
}

Markup changes(const window::VariableWindow& one) {
  Markup out;
  for (const window::ChangeReport& change : one.changes) {
    out += facts({fact("Clause", change.clause + " " + change.title),
                  fact("Now", change.now),
                  fact("Change", change.move),
                  {"There", text_list(change.others)}});
  }
  return out.empty() ? out : subpart("What a change would do (an estimate, to be confirmed by test)", out);
}

Markup curves(const window::VariableWindow& one) {
  Markup out;
  for (const window::CurveReport& curve : one.curves) {
    out += facts({fact("Clause", curve.clause + " " + curve.label), fact("Curve", curve.formula),
                  fact("Complies", curve.within)});
    HtmlTable points{"Parabola of clause " + curve.clause + ", " + curve.label,
                     {"At", "Value of the curve", "Tested value off by"},
                     {}};
    for (const window::ReadingReport& point : curve.points) {
      points.rows.push_back({escaped(point.at), escaped(point.value), escaped(point.why)});
    }
    out += html_table(points);
  }
  return out.empty() ? out : subpart("Parabolas, for comparison; the window does not rest on them", out);
}

Markup window_of(const window::VariableWindow& one) {
  Markup out = facts({fact("Window", one.pieces.empty() ? "none: " + one.conflict : "")});
  for (const window::PieceReport& part : one.pieces) {
    out += piece(part);
  }
  out += facts({fact("Job mix", one.choice ? one.choice->full : "not stated"),
                fact("Choice", one.standing),
                fact("Tolerance", one.tolerance),
                fact("Tested at", one.tested.empty() ? "" : joined(one.tested, ", ") + " (" + one.unit + ")"),
                {"Caution", text_list(one.cautions)}});
  for (const window::PieceReport& part : one.pieces) {
    out += derivations(part);
  }
  return subpart("Window of " + one.title, out);
}

Markup strength(const window::StrengthReport& one) {
  Markup out = facts({fact("Asked", one.limit + ", " + one.asked),
                      fact("Build", one.reached),
                      {"Caution", text_list(one.cautions)},
                      fact("Level", one.level),
                      fact("Source", one.source),
                      fact("Meaning", one.meaning),
                      fact("To mend", one.mend)});
  HtmlTable tested{"Clause " + one.clause + ", as tested", {"At", "Value", "Against the level", "Place"}, {}};
  for (const window::ReadingReport& reading : one.readings) {
    const std::string meets = reading.verdict == Verdict::complies ? "meets it"
                              : reading.verdict == Verdict::fails  ? "does not meet it"
                                                                   : "not shown: " + reading.why;
    tested.rows.push_back({escaped(reading.at), escaped(reading.value), escaped(meets), place_mark(reading.place)});
  }
  out += tested.rows.empty() ? Markup() : html_table(tested);
  out += derivation("Where the time of clause " + one.clause + " comes from", one.steps);
  return subpart("Strength build: " + one.clause + " " + one.title, out);
}

Part specification(const window::SpecificationWindows& one, const std::vector<Placed>& drawings) {
  Markup body = facts(head_facts(one));
  for (const window::VariableWindow& part : one.windows) {
    body += window_of(part);
  }
  body += one.windows.empty()
              ? paragraph("No window: no result says with “at” that it was tested at another design value.")
              : Markup();
  body += gallery(one.title, drawings);
  for (const window::VariableWindow& part : one.windows) {
    body += clauses(part);
    body += changes(part);
    body += curves(part);
  }
  for (const window::StrengthReport& part : one.strengths) {
    body += strength(part);
  }
  return {one.title, std::move(body)};
}

}  // namespace

std::string window_html(const Windows& report) {
  const evidence::Identity& who = report.identity;
  Page out{"Window of a design value", "Window of " + (who.mix.empty() ? report.submittal : who.mix), {}, {}};
  out.lead = facts({fact("Project", who.project), fact("Mix", who.mix), fact("Laboratory", who.laboratory),
                    fact("Prepared by", who.prepared_by), fact("Date", who.date), fact("Note", who.note),
                    fact("Submittal", report.submittal)});
  out.lead += paragraph(estimate);
  const Markup errors = problem_table("Errors in the submittal; what they touch is not shown", report.problems);
  if (!errors.empty()) {
    out.parts.push_back({"Errors in the submittal", errors});
  }
  if (!report.warnings.empty()) {
    out.parts.push_back({"Warnings about the submittal",
                         problem_table("Warnings; they change no outcome", report.warnings, "Warning")});
  }
  const std::vector<Placed> drawings = pictures(report);
  for (const window::SpecificationWindows& one : report.specifications) {
    out.parts.push_back(specification(one, drawings));
  }
  out.parts.push_back(files(report.origin));
  return page(std::move(out));
}

}  // namespace plumbrule::report
