#include "base/diagnose/sarif_parts.hpp"

namespace plumbrule::diagnose {
namespace {

// A colon would make a scheme of the first part of a relative path.
bool plain(char letter) {
  return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') || (letter >= '0' && letter <= '9') ||
         std::string_view("-._~/").find(letter) != std::string_view::npos;
}

std::string uri(const std::string& path) {
  constexpr std::string_view digits = "0123456789ABCDEF";
  std::string out;
  for (const char letter : path) {
    const auto byte = static_cast<unsigned char>(letter);
    if (plain(letter)) {
      out += letter;
    } else {
      out += std::string("%") + digits[byte >> 4U] + digits[byte & 0x0FU];
    }
  }
  // Two slashes at the front would name a host.
  return out.rfind("//", 0) == 0 ? out.substr(out.find_first_not_of('/') - 1) : out;
}

// Columns of SARIF count UTF-16 code units unless the run says otherwise; it says code points, as our places do.
SarifJson region(const source::SourceMap& sources, const source::Span& span) {
  const source::Place begin = sources.place(span);
  const source::Place end = sources.place({span.file, span.end, span.end});
  return {{"startLine", begin.line}, {"startColumn", begin.column}, {"endLine", end.line}, {"endColumn", end.column}};
}

}  // namespace

SarifJson sarif_file(const std::string& path) { return {{"uri", uri(path)}}; }

SarifJson sarif_location(const source::SourceMap& sources, const Label& label) {
  SarifJson out = {{"physicalLocation",
                    {{"artifactLocation", sarif_file(std::string(sources.name(label.span.file)))},
                     {"region", region(sources, label.span)}}}};
  if (!label.text.empty()) {
    out["message"] = {{"text", label.text}};
  }
  return out;
}

SarifJson sarif_artifact(const std::string& path, const std::string& digest, const std::string& role) {
  return {{"location", sarif_file(path)}, {"roles", SarifJson::array({role})}, {"hashes", {{"sha-256", digest}}}};
}

std::string sarif_log(const SarifRun& run) {
  SarifJson one = {{"tool", {{"driver", {{"name", "plumbrule"}, {"version", run.version}, {"rules", run.rules}}}}},
                   {"columnKind", "unicodeCodePoints"},
                   {"artifacts", run.artifacts},
                   {"results", run.results}};
  if (!run.properties.empty()) {
    one["properties"] = run.properties;
  }
  const SarifJson out = {{"$schema", "https://json.schemastore.org/sarif-2.1.0.json"},
                         {"version", "2.1.0"},
                         {"runs", SarifJson::array({one})}};
  return out.dump(2, ' ', false, SarifJson::error_handler_t::replace) + "\n";
}

}  // namespace plumbrule::diagnose
