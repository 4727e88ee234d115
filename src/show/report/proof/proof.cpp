#include "show/report/proof/proof.hpp"

#include "base/diagnose/quote.hpp"
#include "base/diagnose/render.hpp"
#include "show/report/parts/json_parts.hpp"

namespace plumbrule::report {
namespace {

std::string counted(std::size_t count, const std::string& noun) {
  const char* const plural = noun.ends_with("ch") ? "es" : "s";
  return std::to_string(count) + " " + noun + (count == 1 ? "" : plural);
}

std::string summary(const Proved& proved) {
  std::string out = diagnose::printable(proved.path) + ": ";
  if (!proved.usable) {
    return out + "not usable\n";
  }
  const std::size_t wrong = proved.wrong();
  out += proved.specification ? counted(proved.requirements, "requirement") : counted(proved.measures, "measure");
  out += proved.cases.empty() ? ", no example: nothing is proved"
                              : ", " + counted(proved.cases.size(), "example") +
                                    (wrong == 0 ? ", as expected" : ", " + std::to_string(wrong) + " not as expected");
  if (!proved.specification) {
    return out + "\n";
  }
  const std::size_t remarks = proved.remarks.all().size();
  out += ", reaching " + std::to_string(proved.branches - proved.missed.size()) + " of " +
         counted(proved.branches, "branch");
  return out + (remarks == 0 ? "" : ", " + counted(remarks, "remark")) + "\n";
}

Json entry(const Proved& proved) {
  Json out{{"file", proved.path}, {"digest", proved.digest}, {"usable", proved.usable}};
  if (!proved.usable) {
    return out;
  }
  out["requirements"] = proved.requirements;
  out["measures"] = proved.measures;
  out["examples"] = proved.cases.size();
  out["not_as_expected"] = proved.wrong();
  if (proved.specification) {
    out["branches"] = proved.branches;
    out["without_example"] = proved.missed;
  }
  return out;
}

}  // namespace

std::string proof_text(const std::vector<Proved>& all, bool show_missed) {
  std::string out;
  for (const Proved& one : all) {
    out += summary(one);
    for (std::size_t at = 0; show_missed && one.specification && at < one.missed.size(); ++at) {
      out += "  no example: " + one.missed[at] + "\n";
    }
  }
  return out;
}

std::string proof_json(const std::vector<Proved>& all, const diagnose::Diagnostics& diagnostics,
                       const source::SourceMap& sources) {
  Json out{{"diagnostics", diagnose::render_json(diagnostics, sources)}, {"proved", Json::array()}};
  for (const Proved& one : all) {
    out["proved"].push_back(entry(one));
  }
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace plumbrule::report
