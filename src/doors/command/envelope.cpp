#include "doors/command/envelope.hpp"

#include "apply/contrast/envelope_report.hpp"
#include "doors/command/workplace.hpp"
#include "show/report/envelope/envelope.hpp"

namespace plumbrule::command {
namespace {

constexpr std::size_t envelope_width = 140;

std::optional<std::vector<library::RuleSet>> specifications(Workplace& place, const EnvelopeOptions& options) {
  std::vector<library::RuleSet> out;
  diagnose::Diagnostics diagnostics;
  for (const std::string& path : library::specifications_in(place.shelf, options.paths, diagnostics)) {
    auto set =
        library::prepare_specification(place.shelf, {path, {}, library_folders(options.libraries)}, "", diagnostics);
    if (set) {
      out.push_back(std::move(*set));
    }
  }
  print_diagnostics(diagnostics, place.sources);
  return diagnostics.has_errors() ? std::nullopt : std::optional(std::move(out));
}

// Nothing if the rule file could not be read back.
std::optional<std::string> envelope_page(const contrast::EnvelopeReport& report, const source::SourceMap& sources,
                                         const std::vector<library::RuleSet>& sets, Format format) {
  if (format == Format::json) {
    return report::envelope_json(report);
  }
  if (format == Format::markdown) {
    return report::envelope_markdown(report);
  }
  if (format == Format::text) {
    return report::envelope_text(report, envelope_width);
  }
  source::SourceMap own;
  diagnose::Diagnostics diagnostics;
  auto page = report::envelope_rules(report, contrast::vocabularies_of(sources, sets), own, diagnostics);
  print_diagnostics(diagnostics, own);
  return page;
}

}  // namespace

Exit envelope(const EnvelopeOptions& options) {
  Workplace place;
  const auto sets = specifications(place, options);
  if (!sets) {
    return Exit::rules_broken;
  }
  if (const std::string unlike = contrast::unlike_names(place.sources, *sets); !unlike.empty()) {
    print_error(unlike);
    return Exit::rules_broken;
  }
  const contrast::Chosen chosen = contrast::choose_classes(*sets, options.classes);
  if (!chosen.misfit.empty()) {
    print_error(chosen.misfit);
    return Exit::unusable;
  }
  std::vector<const check::Rules*> rules;
  rules.reserve(sets->size());
  for (const library::RuleSet& set : *sets) {
    rules.push_back(&set.rules);
  }
  const contrast::Envelope found = contrast::envelope(rules, chosen.classes);
  const contrast::EnvelopeReport report{rules, found, chosen.classes, library::origin_of(place.sources, *sets)};
  const auto page = envelope_page(report, place.sources, *sets, options.format);
  if (!page) {
    return Exit::rules_broken;
  }
  if (!write_output(*page, options.out, place.sources)) {
    return Exit::unusable;
  }
  return exit_of(contrast::upshot(report));
}

}  // namespace plumbrule::command
