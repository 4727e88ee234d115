#include <set>

#include "base/diagnose/render.hpp"
#include "base/diagnose/sarif_parts.hpp"
#include "base/source/digest.hpp"

namespace plumbrule::diagnose {
namespace {

std::string_view level(Severity severity) {
  return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "note";
}

SarifJson result(const Diagnostic& one, const source::SourceMap& sources) {
  SarifJson locations = SarifJson::array();
  if (one.primary.span.known()) {
    locations.push_back(sarif_location(sources, one.primary));
  }
  SarifJson related = SarifJson::array();
  for (const Label& label : one.secondary) {
    if (label.span.known()) {
      related.push_back(sarif_location(sources, label));
    }
  }
  const std::string help = one.help.empty() ? "" : "; to mend: " + one.help;
  return {{"ruleId", std::string(text(one.code))},
          {"level", std::string(level(one.severity))},
          {"message", {{"text", one.message + help}}},
          {"locations", locations},
          {"relatedLocations", related}};
}

// A vocabulary that several files use was read for each of them and stands once.
SarifJson artifacts(const source::SourceMap& sources) {
  SarifJson out = SarifJson::array();
  std::set<std::string_view> known;
  for (source::FileId file = 0; file < sources.size(); ++file) {
    if (known.insert(sources.name(file)).second) {
      out.push_back(
          sarif_artifact(std::string(sources.name(file)), source::sha256(sources.text(file)), "analysisTarget"));
    }
  }
  return out;
}

}  // namespace

std::string render_sarif(const Diagnostics& diagnostics, const source::SourceMap& sources, const std::string& version) {
  SarifRun run;
  run.version = version;
  for (const std::string_view code : code_texts) {
    run.rules.push_back({{"id", std::string(code)}});
  }
  for (const Diagnostic& one : diagnostics.all()) {
    run.results.push_back(result(one, sources));
  }
  run.artifacts = artifacts(sources);
  return sarif_log(run);
}

}  // namespace plumbrule::diagnose
