#include "show/report/parts/json_parts.hpp"

namespace plumbrule::report {
namespace {

Json comparison(const explain::Comparison& one) {
  return {{"label", one.label},
          {"limit", one.limit},
          {"value", one.value},
          {"margin", one.margin},
          {"verdict", text_of(explain::verdict_text(one.verdict))},
          {"reason", text_of(explain::reason_code(one.reason))},
          {"why", one.why},
          {"place", one.place}};
}

Json finding(const explain::Explanation& one) {
  Json comparisons = Json::array();
  for (const explain::Comparison& part : one.comparisons) {
    comparisons.push_back(comparison(part));
  }
  Json steps = Json::array();
  for (const explain::Line& line : one.steps) {
    steps.push_back({{"depth", line.depth}, {"text", line.text}, {"place", line.place}});
  }
  return {{"clause", one.number},
          {"title", one.title},
          {"section", one.section},
          {"verdict", text_of(explain::verdict_text(one.verdict))},
          {"reason_code", text_of(explain::reason_code(one.reason))},
          {"why", one.why},
          {"demand", one.sentence},
          {"severity", text_of(explain::severity_text(one.severity))},
          {"optional", one.optional},
          {"cite", one.cite},
          {"amended_by", one.amended_by},
          {"because", one.because},
          {"mend", one.mend},
          {"note", one.note},
          {"submit", one.submit},
          {"limits",
           {{"status", text_of(explain::status_text(one.status))}, {"note", one.status_note}, {"source", one.source}}},
          {"comparisons", comparisons},
          {"steps", steps}};
}

Json specification(const SpecificationReport& one, const std::string& clause) {
  Json findings = Json::array();
  for (const explain::Explanation& part : one.findings) {
    if (clause.empty() || part.number == clause) {
      findings.push_back(finding(part));
    }
  }
  Json out = head_json(one);
  out["outcome"] = text_of(explain::outcome_text(one.outcome));
  out["findings"] = findings;
  return out;
}

Json actions(const std::vector<Action>& all) {
  Json out = Json::array();
  for (const Action& one : all) {
    out.push_back({{"by", text_of(hand_text(one.hand))},
                   {"what", one.what},
                   {"why", one.why},
                   {"clauses", one.clauses},
                   {"place", one.place}});
  }
  return out;
}

Json audited(const AuditFinding& one) {
  Json related = Json::array();
  for (const Related& other : one.related) {
    related.push_back({{"place", other.place}, {"text", other.text}});
  }
  return {{"code", one.code},     {"place", one.place},       {"line", one.line}, {"text", one.text},
          {"message", one.found}, {"expected", one.expected}, {"look", one.look}, {"related", related}};
}

}  // namespace

std::string json(const Report& report, const std::string& clause) {
  Json specifications = Json::array();
  for (const SpecificationReport& one : report.specifications) {
    specifications.push_back(specification(one, clause));
  }
  Json audit = Json::array();
  for (const AuditFinding& one : report.audit.findings) {
    audit.push_back(audited(one));
  }
  const Json scope = {{"recomputed", report.audit.recomputed},
                      {"compared", report.audit.compared},
                      {"outliers_declared", report.audit.outliers},
                      {"tested_for_outliers", report.audit.tested}};
  Json out = submittal_json("report", report.submittal, report.identity, report.problems, report.warnings);
  out["on"] = report.on;
  out["actions"] = actions(report.actions);
  out["specifications"] = specifications;
  out["audit"] = audit;
  out["audited"] = scope;
  close_json(out, report.origin);
  // Submittal texts are checked UTF-8; the handler only guards shortened ones.
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace plumbrule::report
