#include <algorithm>

#include "show/report/parts/html.hpp"
#include "show/report/parts/page_parts.hpp"
#include "show/report/review/pictures.hpp"

namespace plumbrule::report {
namespace {

using explain::Comparison;
using explain::Explanation;
using explain::Verdict;

std::string capital(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  }
  return text;
}

// One comparison a row. What is not shown says why instead of a margin.
Markup comparisons(const Explanation& finding) {
  HtmlTable out{
      "Clause " + finding.number + ", compared", {"Test", "Value", "Limit", "Margin", "Verdict", "Place"}, {}};
  for (const Comparison& one : finding.comparisons) {
    const bool open = one.verdict == Verdict::not_shown;
    out.rows.push_back({escaped(one.label), escaped(one.value), escaped(one.limit),
                        escaped(open ? one.why : one.margin), verdict_mark(one.verdict), place_mark(one.place)});
  }
  return out.rows.empty() ? Markup() : html_table(out);
}

Markup remarks(const Explanation& one) {
  const bool failed = one.verdict == Verdict::fails;
  // What single comparisons do not tell.
  const bool whole = one.verdict == Verdict::not_shown || (failed && one.reason != explain::Reason::none);
  const bool confirmed = one.status == check::Status::verified;
  return facts({fact("Why", whole ? one.why : ""), fact("Reason", failed ? one.because : ""), fact("To mend", one.mend),
                fact("Submit", one.submit), fact("Amended by", joined(one.amended_by)), fact("Cited", one.cite),
                fact("Limit", confirmed ? "" : limit_standing(one)), fact("Note", one.note)});
}

Markup article(const Explanation& one, const std::string& id) {
  const std::vector<std::string> qualified = marks(one);
  return fill<templates::finding>(
      hole<"kind">(style_of(one.verdict)), hole<"id">(id), hole<"number">(one.number), hole<"title">(one.title),
      hole<"verdict">(verdict_mark(one.verdict)),
      hole<"marks">(qualified.empty() ? Markup() : fill<templates::mark>(hole<"text">(joined(qualified)))),
      hole<"demand">(capital(one.sentence)), hole<"comparisons">(comparisons(one)), hole<"facts">(remarks(one)),
      hole<"derivation">(derivation("From reading to verdict, clause " + one.number, one.steps)));
}

// Clauses that do not apply need no more than the reason.
Markup set_aside(const SpecificationReport& report) {
  HtmlTable out{"Clauses that do not apply, and why", {"Clause", "Title", "Why", "Verdict", "Place"}, {}};
  for (const Explanation& one : report.findings) {
    if (one.verdict == Verdict::does_not_apply) {
      const auto placed = std::find_if(one.steps.rbegin(), one.steps.rend(),
                                       [](const explain::Line& line) { return !line.place.empty(); });
      out.rows.push_back({escaped(one.number), escaped(one.title), escaped(one.why), verdict_mark(one.verdict),
                          placed == one.steps.rend() ? Markup() : place_mark(placed->place)});
    }
  }
  return out.rows.empty() ? Markup() : subpart("Does not apply", fill<templates::aside>(hole<"body">(html_table(out))));
}

Markup outcome(const SpecificationReport& one) {
  Markup out = outcome_mark(one.outcome);
  out += escaped(" " + std::string(outcome_meaning(one)));
  return out;
}

Markup heading(const SpecificationReport& one) {
  std::vector<Fact> all = head_facts(one);
  all.push_back({"Outcome", outcome(one)});
  all.push_back(Fact{"Clauses", counts_line(counts(one.findings))});
  return facts(all);
}

// The clauses that apply, under the headings of their sections, and then the others.
void append_findings(std::string& page, const SpecificationReport& report, std::size_t number) {
  Frame section;
  std::string title;
  bool begun = false;
  std::size_t at = 0;
  const auto close = [&] {
    append_breakable(page, begun ? section.after : Markup());
    begun = false;
  };
  for (const Explanation& one : report.findings) {
    if (one.section != title) {
      close();
      title = one.section;
    }
    if (one.verdict == Verdict::does_not_apply) {
      continue;
    }
    if (!begun) {
      section = frame<templates::subpart, "body">(hole<"title">(title.empty() ? "Findings" : title));
      append_breakable(page, section.before);
      begun = true;
    }
    append_breakable(page, article(one, "clause-" + std::to_string(number) + "-" + std::to_string(++at)));
  }
  close();
  append_breakable(page, set_aside(report));
}

// The report must stay until the page is written.
Part specification(const SpecificationReport& report, std::size_t number, const std::vector<Placed>& drawings) {
  Markup body = heading(report);
  body += gallery(report.title, drawings);
  return {report.title, std::move(body),
          [&report, number](std::string& page) { append_findings(page, report, number); }};
}

Part outcomes(const Report& report) {
  HtmlTable out{"Outcome for each specification", {"Specification", "Edition", "Outcome", "Clauses"}, {}};
  for (const SpecificationReport& one : report.specifications) {
    out.rows.push_back({escaped(one.title), escaped(one.edition), outcome(one), counts_line(counts(one.findings))});
  }
  return {"Outcome", html_table(out)};
}

Markup action(const Action& one) {
  Markup out = with_place(capital(one.what), one.place);
  const std::string clauses =
      one.clauses.empty() ? "" : (one.clauses.size() == 1 ? "Clause " : "Clauses ") + joined(one.clauses);
  const std::string remark = clauses + (clauses.empty() || one.why.empty() ? "" : ". ") + capital(one.why);
  out += remark.empty() ? Markup() : fill<templates::remark>(hole<"text">(remark));
  return fill<templates::action>(hole<"text">(out));
}

Part next(const Report& report) {
  Markup out;
  for (const Hand hand : {Hand::laboratory, Hand::designer, Hand::agency}) {
    std::vector<Markup> items;
    for (const Action& one : report.actions) {
      if (one.hand == hand) {
        items.push_back(action(one));
      }
    }
    out += items.empty() ? Markup() : subpart(capital(std::string(hand_text(hand))), list(items, true));
  }
  return {"What must be done next", out.empty() ? paragraph("Nothing is open.") : out};
}

Part audited(const Report& report) {
  Markup body = paragraph(capital(audit_scope(report.audit)) + ". No verdict depends on the audit.");
  if (report.audit.findings.empty()) {
    body += paragraph("Nothing was found.");
    return {"Audit of the readings", std::move(body)};
  }
  HtmlTable out{"What the audit found", {"Found", "Written", "Expected", "Look"}, {}};
  for (const AuditFinding& one : report.audit.findings) {
    Markup found = with_place(one.found, one.place);
    found += fill<templates::remark>(hole<"text">(one.code));
    std::vector<Markup> related;
    std::transform(one.related.begin(), one.related.end(), std::back_inserter(related),
                   [](const Related& other) { return with_place(other.text, other.place); });
    Markup look = escaped(one.look);
    look += related.empty() ? Markup() : list(related);
    out.rows.push_back({found, escaped(one.text), escaped(one.expected), look});
  }
  body += html_table(out);
  return {"Audit of the readings", std::move(body)};
}

}  // namespace

std::string html(const Report& report) {
  const evidence::Identity& who = report.identity;
  Page out{"Review of a submittal", "Review of " + (who.mix.empty() ? report.submittal : who.mix), {}, {}};
  out.lead = facts({fact("Project", who.project), fact("Mix", who.mix), fact("Laboratory", who.laboratory),
                    fact("Prepared by", who.prepared_by), fact("Date", who.date), fact("Note", who.note),
                    fact("Submittal", report.submittal), fact("Review day", report.on),
                    fact("Not reviewed", not_reviewed(report.origin))});
  out.parts.push_back(outcomes(report));
  out.parts.push_back(next(report));
  if (!report.problems.empty()) {
    out.parts.push_back({"Errors in the submittal",
                         problem_table("Errors in the submittal; what they touch is not shown", report.problems)});
  }
  if (!report.warnings.empty()) {
    out.parts.push_back({"Warnings about the submittal",
                         problem_table("Warnings; they change no outcome", report.warnings, "Warning")});
  }
  const std::vector<Placed> drawings = pictures(report);
  for (std::size_t at = 0; at < report.specifications.size(); ++at) {
    out.parts.push_back(specification(report.specifications[at], at + 1, drawings));
  }
  out.parts.push_back(audited(report));
  out.parts.push_back(files(report.origin));
  out.parts.push_back(signature());
  return page(std::move(out));
}

}  // namespace plumbrule::report
