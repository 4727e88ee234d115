#pragma once
// The common envelope of several specifications, as text, Markdown or JSON.

#include <optional>
#include <string>
#include <vector>

#include "apply/contrast/envelope_report.hpp"
#include "show/report/parts/origin.hpp"

namespace plumbrule::report {

using contrast::EnvelopeReport;

[[nodiscard]] std::string envelope_text(const EnvelopeReport& report, std::size_t width);
[[nodiscard]] std::string envelope_markdown(const EnvelopeReport& report);
[[nodiscard]] std::string envelope_json(const EnvelopeReport& report);

/// As a rule file that can be reviewed against. `vocabularies`: the names under which it uses them. Nothing, and the
/// errors in `own`, if it could not be read back.
[[nodiscard]] std::optional<std::string> envelope_rules(const EnvelopeReport& report,
                                                        const std::vector<std::string>& vocabularies,
                                                        source::SourceMap& own, diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::report
