#include <nlohmann/json.hpp>

#include "judge/explain/wording.hpp"
#include "show/report/contrast/contrast.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {
namespace {

using Json = nlohmann::ordered_json;
using contrast::Change;
using contrast::Demand;

Json end(const std::optional<check::End>& one) { return one ? Json(one->value.text()) : Json(nullptr); }

Json demand(const check::Rules& rules, const Demand* one) {
  if (one == nullptr) {
    return nullptr;
  }
  const check::Requirement& requirement = *one->requirement;
  Json out = {{"clause", requirement.number},
              {"title", requirement.title},
              {"for", one->who},
              {"cite", one->one->cite},
              {"weight", contrast::weight_of(*one)},
              {"limit", one->assertion == nullptr ? "not required" : explain::limit_text(one->assertion->limit)}};
  if (one->assertion != nullptr) {
    const check::Limit& limit = one->assertion->limit;
    out["measure"] = one->measure;
    out["conditions"] = explain::conditions(rules, *one->assertion);
    out["statistic"] = contrast::statistic_of(*one);
    out["compared"] = contrast::rounding_of(rules, *one);
    out["beside"] = contrast::beside_of(rules, *one);
    out["low"] = end(limit.low);
    out["high"] = end(limit.high);
    out["tolerance"] = end(limit.tolerance);
    out["unit"] = rules.units.at(limit.unit).text;
  }
  out["amended_by"] = requirement.amended_by;
  return out;
}

Json head(const check::Rules& rules) {
  const check::Specification& one = *rules.specification;
  return {{"name", one.name},
          {"title", one.title},
          {"edition", one.edition},
          {"agency", one.agency},
          {"amendments", one.amendments},
          {"status", std::string(explain::status_text(one.provenance.status))},
          {"source", one.provenance.source}};
}

Json outcome(const std::optional<evaluate::Outcome>& one) {
  return one ? Json(std::string(explain::outcome_text(*one))) : Json(nullptr);
}

Json general(const contrast::Contrast& found) {
  Json out = Json::array();
  for (const contrast::General& one : found.general) {
    out.push_back({{"kind", std::string(contrast::kind_text(one.kind, found.one_family))},
                   {"what", one.what},
                   {"before", one.before},
                   {"after", one.after},
                   {"detail", one.detail}});
  }
  return out;
}

}  // namespace

std::string contrast_json(const ContrastReport& report) {
  Json changes = Json::array();
  for (const Change& change : report.contrast.changes) {
    changes.push_back({{"kind", std::string(contrast::kind_text(change.kind, report.contrast.one_family))},
                       {"for", change.who},
                       {"before", demand(report.before, change.before)},
                       {"after", demand(report.after, change.after)},
                       {"details", change.details}});
  }
  Json out = {{"contrast", 1},
              {"before", head(report.before)},
              {"after", head(report.after)},
              {"changes", changes},
              {"general", general(report.contrast)}};
  if (report.archive) {
    out["archive"] = Json::array();
    for (const Filed& one : report.filed) {
      Json clauses = Json::array();
      for (const Filed::Clause& clause : one.clauses) {
        clauses.push_back({{"before", clause.before}, {"after", clause.after}});
      }
      out["archive"].push_back({{"submittal", one.submittal},
                                {"before", outcome(one.before)},
                                {"after", outcome(one.after)},
                                {"clauses", clauses},
                                {"errors", one.errors}});
    }
  }
  close_json(out, report.origin);
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace plumbrule::report
