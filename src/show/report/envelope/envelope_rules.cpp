#include "apply/contrast/envelope.hpp"
#include "language/syntax/tidy.hpp"
#include "show/report/envelope/envelope.hpp"

namespace plumbrule::report {

std::optional<std::string> envelope_rules(const EnvelopeReport& report, const std::vector<std::string>& vocabularies,
                                          source::SourceMap& own, diagnose::Diagnostics& diagnostics) {
  const std::string text = contrast::rule_file(report.envelope, report.specifications, vocabularies, report.classes) +
                           closing_comments(report.origin);
  auto page = syntax::tidy(own, own.add("envelope.plumb", text), diagnostics);
  return diagnostics.has_errors() ? std::nullopt : std::move(page);
}

}  // namespace plumbrule::report
