#include <nlohmann/json.hpp>

#include "diagnose/render.hpp"

namespace plumbrule::diagnose {
namespace {

using Json = nlohmann::ordered_json;

std::string_view level(Severity severity) {
  return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "note";
}

// Columns of SARIF count UTF-16 code units unless the run says otherwise; it says code points, as our places do.
Json region(const source::SourceMap& sources, const source::Span& span) {
  const source::Place begin = sources.place(span);
  const source::Place end = sources.place({span.file, span.end, span.end});
  return {{"startLine", begin.line}, {"startColumn", begin.column}, {"endLine", end.line}, {"endColumn", end.column}};
}

Json location(const source::SourceMap& sources, const Label& label) {
  Json out = {{"physicalLocation",
               {{"artifactLocation", {{"uri", std::string(sources.name(label.span.file))}}},
                {"region", region(sources, label.span)}}}};
  if (!label.text.empty()) {
    out["message"] = {{"text", label.text}};
  }
  return out;
}

Json result(const Diagnostic& one, const source::SourceMap& sources) {
  Json locations = Json::array();
  if (one.primary.span.known()) {
    locations.push_back(location(sources, one.primary));
  }
  Json related = Json::array();
  for (const Label& label : one.secondary) {
    if (label.span.known()) {
      related.push_back(location(sources, label));
    }
  }
  const std::string help = one.help.empty() ? "" : "; to mend: " + one.help;
  return {{"ruleId", std::string(text(one.code))},
          {"level", std::string(level(one.severity))},
          {"message", {{"text", one.message + help}}},
          {"locations", locations},
          {"relatedLocations", related}};
}

}  // namespace

std::string render_sarif(const Diagnostics& diagnostics, const source::SourceMap& sources, const std::string& version) {
  Json rules = Json::array();
  for (const std::string_view code : code_texts) {
    rules.push_back({{"id", std::string(code)}});
  }
  Json results = Json::array();
  for (const Diagnostic& one : diagnostics.all()) {
    results.push_back(result(one, sources));
  }
  const Json out = {
      {"$schema", "https://json.schemastore.org/sarif-2.1.0.json"},
      {"version", "2.1.0"},
      {"runs", Json::array({{{"tool", {{"driver", {{"name", "plumbrule"}, {"version", version}, {"rules", rules}}}}},
                             {"columnKind", "unicodeCodePoints"},
                             {"results", results}}})}};
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace plumbrule::diagnose
