#include <array>

#include "show/report/followup/followup.hpp"
#include "show/report/parts/page_parts.hpp"

namespace plumbrule::report {
namespace {

using followup::Progress;

constexpr std::array<Progress, 4> order{Progress::fresh, Progress::still_open, Progress::withdrawn, Progress::closed};

Markup state(const explain::Explanation& one) {
  Markup out = verdict_mark(one.verdict);
  out += escaped(one.why.empty() ? "" : " " + one.why);
  return out;
}

Markup clause(const ClauseFollowUp& one, check::Status limits) {
  const bool fails = one.after.verdict == explain::Verdict::fails;
  Markup out = facts({{"Before", state(one.before)},
                      {"Now", state(one.after)},
                      fact("Note", one.note),
                      fact("Counts", one.counts ? "" : "no, advice only"),
                      fact("Demand", one.after.sentence),
                      fact("Limits", one.after.status == limits ? "" : limit_standing(one.after)),
                      fact("Amended by", joined(one.after.amended_by)),
                      fact("To mend", one.open && fails ? one.after.mend : ""),
                      fact("Submit", one.open ? one.after.submit : "")});
  const std::string of = ", clause " + one.after.number;
  out += derivation("From reading to verdict, before" + of, one.before.steps);
  out += derivation("From reading to verdict, now" + of, one.after.steps);
  return subpart(one.after.number + " " + one.after.title + ": " + std::string(followup::progress_text(one.progress)),
                 out);
}

Part specification(const SpecificationFollowUp& one) {
  std::vector<Fact> all = head_facts(one);
  all.push_back({"Before", outcome_mark(one.before)});
  all.push_back({"Now", outcome_mark(one.after)});
  all.push_back(Fact{"Findings", counts_line(tally_text(one))});
  Markup body = facts(all);
  for (const Progress progress : order) {
    for (const ClauseFollowUp& finding : one.findings) {
      body += finding.progress == progress ? clause(finding, one.status) : Markup();
    }
  }
  body += one.findings.empty() ? paragraph("No clause is open in either.") : Markup();
  return {one.title, std::move(body)};
}

Part outcomes(const FollowUpReport& report) {
  HtmlTable out{"Outcome before and now, and what became of the findings",
                {"Specification", "Edition", "Before", "Now", "Findings"},
                {}};
  for (const SpecificationFollowUp& one : report.specifications) {
    out.rows.push_back({escaped(one.title), escaped(one.edition), outcome_mark(one.before), outcome_mark(one.after),
                        counts_line(tally_text(one))});
  }
  return {"Outcome", html_table(out)};
}

Part looks(const FollowUpReport& report) {
  if (report.looks.empty()) {
    return {"Worth a look", paragraph("Nothing.")};
  }
  HtmlTable out{"What differs, and what to compare", {"Found", "Look", "Before", "Now", "Code"}, {}};
  for (const LookFollowUp& one : report.looks) {
    out.rows.push_back({escaped(one.found), escaped(one.look), place_mark(one.before_place),
                        place_mark(one.after_place), escaped(one.code)});
  }
  Markup body = paragraph(looks_note);
  body += html_table(out);
  return {"Worth a look", std::move(body)};
}

Part values(const FollowUpReport& report) {
  HtmlTable out{"Values before and now", {"Of", "What", "Before", "Now", "Difference"}, {}};
  for (const ValueFollowUp& one : report.values) {
    out.rows.push_back({escaped(one.subject), escaped(one.what), with_place(one.before, one.before_place),
                        with_place(one.after, one.after_place), escaped(one.difference)});
  }
  return {"Values changed", out.rows.empty() ? paragraph("None.") : html_table(out)};
}

Part results(const FollowUpReport& report) {
  HtmlTable out{"Results that stand in one of the two only", {"Result", "Change", "Value", "Place"}, {}};
  for (const ResultFollowUp& one : report.results) {
    out.rows.push_back({escaped(one.subject), escaped(one.added ? "added" : "not submitted any more"),
                        escaped(one.value), place_mark(one.place)});
  }
  return {"Results added or not submitted any more", html_table(out)};
}

Part audits(const FollowUpReport& report) {
  HtmlTable out{"Findings of the audit", {"Place", "Progress", "Found", "Expected", "Look", "Code"}, {}};
  for (const Progress progress : order) {
    for (const AuditFollowUp& one : report.audit) {
      if (one.progress == progress) {
        out.rows.push_back({place_mark(one.finding.place), escaped(followup::progress_text(progress)),
                            escaped(one.finding.found), escaped(one.finding.expected), escaped(one.finding.look),
                            escaped(one.finding.code)});
      }
    }
  }
  Markup body = paragraph("No verdict depends on the audit.");
  body += out.rows.empty() ? paragraph("Nothing was found in either.") : html_table(out);
  return {"Audit of the readings", std::move(body)};
}

Markup submittals(const FollowUpReport& report) {
  const evidence::Identity& from = report.before.identity;
  const evidence::Identity& to = report.after.identity;
  return html_table("The two submittals", {{"What", "Before", "Now"},
                                           {{"Submittal", report.before.file, report.after.file},
                                            {"Project", from.project, to.project},
                                            {"Mix", from.mix, to.mix},
                                            {"Laboratory", from.laboratory, to.laboratory},
                                            {"Prepared by", from.prepared_by, to.prepared_by},
                                            {"Date", from.date, to.date}}});
}

}  // namespace

std::string follow_up_html(const FollowUpReport& report) {
  const evidence::Identity& who = report.after.identity;
  Page out{"Follow-up of a resubmittal", "Follow-up of " + (who.mix.empty() ? report.after.file : who.mix), {}, {}};
  out.lead = submittals(report);
  out.lead += facts({fact("Review day", report.on), fact("Not reviewed", not_reviewed(report.origin))});
  out.parts.push_back(outcomes(report));
  Markup errors = problem_table("Errors in the submittal before", report.before.problems);
  errors += problem_table("Errors in the submittal now", report.after.problems);
  if (!errors.empty()) {
    out.parts.push_back({"Errors in the submittals", errors});
  }
  Markup warnings = problem_table("Warnings about the submittal before", report.before.warnings, "Warning");
  warnings += problem_table("Warnings about the submittal now", report.after.warnings, "Warning");
  if (!warnings.empty()) {
    out.parts.push_back({"Warnings about the submittals", warnings});
  }
  out.parts.push_back(looks(report));
  for (const SpecificationFollowUp& one : report.specifications) {
    out.parts.push_back(specification(one));
  }
  out.parts.push_back(values(report));
  if (!report.results.empty()) {
    out.parts.push_back(results(report));
  }
  out.parts.push_back(audits(report));
  out.parts.push_back(files(report.origin));
  out.parts.push_back(signature());
  return page(std::move(out));
}

}  // namespace plumbrule::report
