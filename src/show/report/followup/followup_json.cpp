#include "show/report/followup/followup.hpp"
#include "show/report/parts/json_parts.hpp"

namespace plumbrule::report {
namespace {

Json submittal(const FollowedSubmittal& one) {
  const evidence::Identity& who = one.identity;
  return {{"file", one.file},
          {"project", who.project},
          {"mix", who.mix},
          {"laboratory", who.laboratory},
          {"prepared_by", who.prepared_by},
          {"date", who.date},
          {"problems", problems_json(one.problems)},
          {"warnings", problems_json(one.warnings)}};
}

Json state(const explain::Explanation& one) {
  Json comparisons = Json::array();
  for (const explain::Comparison& part : one.comparisons) {
    comparisons.push_back({{"label", part.label},
                           {"limit", part.limit},
                           {"value", part.value},
                           {"margin", part.margin},
                           {"verdict", text_of(explain::verdict_text(part.verdict))},
                           {"place", part.place}});
  }
  return {{"verdict", text_of(explain::verdict_text(one.verdict))},
          {"reason_code", text_of(explain::reason_code(one.reason))},
          {"why", one.why},
          {"submit", one.submit},
          {"comparisons", comparisons}};
}

Json clause(const ClauseFollowUp& one) {
  return {{"clause", one.after.number},
          {"title", one.after.title},
          {"progress", text_of(followup::progress_text(one.progress))},
          {"counts", one.counts},
          {"open", one.open},
          {"note", one.note},
          {"demand", one.after.sentence},
          {"limits",
           {{"status", text_of(explain::status_text(one.after.status))},
            {"note", one.after.status_note},
            {"source", one.after.source}}},
          {"amended_by", one.after.amended_by},
          {"before", state(one.before)},
          {"now", state(one.after)}};
}

Json specification(const SpecificationFollowUp& one) {
  Json findings = Json::array();
  for (const ClauseFollowUp& part : one.findings) {
    findings.push_back(clause(part));
  }
  const Tally counts = tally(one);
  Json out = head_json(one);
  out["outcome_before"] = text_of(explain::outcome_text(one.before));
  out["outcome"] = text_of(explain::outcome_text(one.after));
  out["counts"] = {{"closed", counts.closed},
                   {"still_open", counts.still_open},
                   {"new", counts.fresh},
                   {"withdrawn", counts.withdrawn}};
  out["clauses"] = one.clauses;
  out["findings"] = findings;
  return out;
}

Json differences(const FollowUpReport& report) {
  Json values = Json::array();
  for (const ValueFollowUp& one : report.values) {
    values.push_back({{"subject", one.subject},
                      {"what", one.what},
                      {"before", one.before},
                      {"now", one.after},
                      {"difference", one.difference},
                      {"place_before", one.before_place},
                      {"place", one.after_place}});
  }
  Json results = Json::array();
  for (const ResultFollowUp& one : report.results) {
    results.push_back({{"change", one.added ? "added" : "removed"},
                       {"subject", one.subject},
                       {"value", one.value},
                       {"place", one.place}});
  }
  return {{"values", values}, {"results", results}};
}

Json looks(const FollowUpReport& report) {
  Json out = Json::array();
  for (const LookFollowUp& one : report.looks) {
    out.push_back({{"code", one.code},
                   {"found", one.found},
                   {"look", one.look},
                   {"place_before", one.before_place},
                   {"place", one.after_place}});
  }
  return out;
}

Json audits(const FollowUpReport& report) {
  Json out = Json::array();
  for (const AuditFollowUp& one : report.audit) {
    out.push_back({{"progress", text_of(followup::progress_text(one.progress))},
                   {"code", one.finding.code},
                   {"place", one.finding.place},
                   {"message", one.finding.found},
                   {"expected", one.finding.expected},
                   {"look", one.finding.look}});
  }
  return out;
}

}  // namespace

std::string follow_up_json(const FollowUpReport& report) {
  Json specifications = Json::array();
  for (const SpecificationFollowUp& one : report.specifications) {
    specifications.push_back(specification(one));
  }
  Json out = {{"follow_up", 1},
              {"before", submittal(report.before)},
              {"now", submittal(report.after)},
              {"on", report.on},
              {"specifications", specifications},
              {"looks", looks(report)},
              {"changes", differences(report)},
              {"audit", audits(report)}};
  close_json(out, report.origin);
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace plumbrule::report
