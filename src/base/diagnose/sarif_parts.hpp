#pragma once
// Parts of a SARIF 2.1.0 log (OASIS standard) that the logs of `proof` and of `review` share.

#include <nlohmann/json.hpp>
#include <string>

#include "base/diagnose/diagnostic.hpp"

namespace plumbrule::diagnose {

using SarifJson = nlohmann::ordered_json;

/// The file of an artifact or a location; what a URI does not allow in a path is written %XX (RFC 3986).
[[nodiscard]] SarifJson sarif_file(const std::string& path);
/// Precondition: the span is known.
[[nodiscard]] SarifJson sarif_location(const source::SourceMap& sources, const Label& label);
/// A file with its SHA-256; `role` is one of the roles of the standard.
[[nodiscard]] SarifJson sarif_artifact(const std::string& path, const std::string& digest, const std::string& role);

struct SarifRun {
  std::string version;  // of the program
  SarifJson rules = SarifJson::array();
  SarifJson results = SarifJson::array();
  SarifJson artifacts = SarifJson::array();
  SarifJson properties = SarifJson::object();
};
/// The whole log, with one run.
[[nodiscard]] std::string sarif_log(const SarifRun& run);

}  // namespace plumbrule::diagnose
