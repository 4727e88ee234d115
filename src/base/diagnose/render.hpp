#pragma once
// Diagnostics for people and for programs.

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "base/diagnose/diagnostic.hpp"

namespace plumbrule::diagnose {

/// Text with an excerpt: the place, the code and message, the line with the text underlined, the help. Colour only if
/// asked for; an excerpt never shows more than 120 characters of a line.
[[nodiscard]] std::string render_text(const Diagnostic& diagnostic, const source::SourceMap& sources, bool colour);

/// A JSON list of all diagnostics, with places and underlined texts.
[[nodiscard]] nlohmann::ordered_json render_json(const Diagnostics& diagnostics, const source::SourceMap& sources);

/// The same as a SARIF 2.1.0 log (OASIS standard), for tools that show findings beside the source.
[[nodiscard]] std::string render_sarif(const Diagnostics& diagnostics, const source::SourceMap& sources,
                                       const std::string& version);

}  // namespace plumbrule::diagnose
