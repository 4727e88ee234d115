#pragma once
// The common envelope of several specifications, as text, Markdown or JSON.

#include <string>
#include <vector>

#include "apply/contrast/envelope_report.hpp"
#include "show/report/parts/origin.hpp"

namespace plumbrule::report {

using contrast::EnvelopeReport;

[[nodiscard]] std::string envelope_text(const EnvelopeReport& report, std::size_t width);
[[nodiscard]] std::string envelope_markdown(const EnvelopeReport& report);
[[nodiscard]] std::string envelope_json(const EnvelopeReport& report);

}  // namespace plumbrule::report
