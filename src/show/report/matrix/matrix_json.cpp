#include "show/report/matrix/matrix.hpp"
#include "show/report/parts/json_parts.hpp"

namespace plumbrule::report {
namespace {

// In percent of the limit, as a text: no digit is lost to a binary number.
Json room(const std::optional<quantity::Decimal>& value) {
  return value ? Json(quantity::round_to(*value, quantity::Decimal::of("0.01"), quantity::Ties::to_even).text())
               : Json(nullptr);
}

Json cell(const Cell& one) {
  if (!one.asked) {
    return nullptr;
  }
  return {{"verdict", std::string(explain::verdict_text(one.verdict))},
          {"another_way", one.other_way},
          {"this_way", std::string(explain::verdict_text(one.this_way))},
          {"clause", one.clause},
          {"limit", one.limit},
          {"value", one.value},
          {"headroom", room(one.headroom)},
          {"why", one.why}};
}

}  // namespace

std::string matrix_json(const Report& report) {
  const Matrix found = matrix(report);
  Json columns = Json::array();
  for (const Column& column : found.columns) {
    const SpecificationReport& one = *column.specification;
    columns.push_back({{"name", one.name},
                       {"amendments", one.amendments},
                       {"title", one.title},
                       {"edition", one.edition},
                       {"limits", std::string(explain::status_text(one.status))},
                       {"outcome", std::string(explain::outcome_text(one.outcome))},
                       {"governing", column.governing},
                       {"headroom", room(column.headroom)}});
  }
  Json kinds = Json::array();
  for (const TestRow& kind : found.kinds) {
    Json cells = Json::array();
    for (const Cell& one : kind.cells) {
      cells.push_back(cell(one));
    }
    kinds.push_back({{"test", kind.label}, {"cells", cells}});
  }
  Json out = {{"matrix", 1},
              {"submittal", report.submittal},
              {"problems", report.problems.size()},
              {"warnings", problems_json(report.warnings)},
              {"specifications", columns},
              {"tests", kinds}};
  close_json(out, report.origin);
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace plumbrule::report
