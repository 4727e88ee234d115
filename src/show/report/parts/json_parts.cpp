#include "show/report/parts/json_parts.hpp"

namespace plumbrule::report {

Json head_json(const explain::SpecificationHead& one) {
  return {
      {"name", one.name},
      {"title", one.title},
      {"edition", one.edition},
      {"agency", one.agency},
      {"rules", one.file},
      {"amendments", one.amendments},
      {"withdrawn", one.withdrawn},
      {"limits",
       {{"status", std::string(explain::status_text(one.status))}, {"note", one.status_note}, {"source", one.source}}}};
}

Json problems_json(const std::vector<Problem>& problems) {
  Json out = Json::array();
  for (const Problem& one : problems) {
    out.push_back({{"code", one.code}, {"place", one.place}, {"message", one.message}, {"help", one.help}});
  }
  return out;
}

Json submittal_json(const std::string& report, const std::string& submittal, const evidence::Identity& who,
                    const std::vector<Problem>& problems, const std::vector<Problem>& warnings) {
  return {{report, 1},
          {"submittal", submittal},
          {"project", who.project},
          {"mix", who.mix},
          {"laboratory", who.laboratory},
          {"prepared_by", who.prepared_by},
          {"date", who.date},
          {"note", who.note},
          {"problems", problems_json(problems)},
          {"warnings", problems_json(warnings)}};
}

}  // namespace plumbrule::report
