#include "doors/command/contrast.hpp"

#include <utility>

#include "apply/contrast/filed.hpp"
#include "doors/command/workplace.hpp"
#include "show/report/contrast/contrast.hpp"

namespace plumbrule::command {
namespace {

constexpr std::size_t contrast_width = 120;

std::optional<library::RuleSet> specification(Workplace& place, const std::string& path,
                                              const std::vector<std::string>& amendments,
                                              const ContrastOptions& options) {
  diagnose::Diagnostics diagnostics;
  auto set = library::prepare_specification(place.shelf, {path, amendments, library_folders(options.libraries)}, "",
                                            diagnostics);
  if (set) {
    diagnostics.append(set->mismatches);
  }
  print_diagnostics(diagnostics, place.sources);
  return diagnostics.has_errors() ? std::nullopt : std::move(set);
}

std::string contrast_page(const contrast::ContrastReport& report, Format format) {
  return format == Format::html       ? report::contrast_html(report)
         : format == Format::json     ? report::contrast_json(report)
         : format == Format::markdown ? report::contrast_markdown(report)
                                      : report::contrast_text(report, contrast_width);
}

// The past submittals, if some are asked for; nothing, with the reason printed, if they cannot all be read.
std::optional<std::vector<std::string>> archive_of(const Workplace& place, const std::string& folder) {
  if (folder.empty()) {
    return std::vector<std::string>();
  }
  diagnose::Diagnostics diagnostics;
  auto out = contrast::filed_in(place.files, folder, diagnostics);
  print_diagnostics(diagnostics, place.sources);
  return diagnostics.has_errors() ? std::nullopt : std::optional(std::move(out));
}

}  // namespace

Exit contrast(const ContrastOptions& options) {
  Workplace place;
  if (options.after.empty() && options.amendments.empty()) {
    print_error("found one specification and no amendment; name another specification, or an amendment with --with");
    return Exit::unusable;
  }
  auto before = specification(place, options.before, options.before_amendments, options);
  auto after =
      specification(place, options.after.empty() ? options.before : options.after, options.amendments, options);
  if (!before || !after) {
    return Exit::rules_broken;
  }
  const auto archive = archive_of(place, options.archive);
  if (!archive) {
    return Exit::unusable;
  }
  std::vector<library::RuleSet> sets;
  sets.push_back(std::move(*before));
  sets.push_back(std::move(*after));
  const contrast::Contrast differences = contrast::contrast(sets.front().rules, sets.back().rules);
  contrast::FiledReview past;
  if (!options.archive.empty()) {
    past = contrast::judge_filed(place.files, place.sources, sets, differences, *archive);
  }
  for (const diagnose::Diagnostics& problems : past.problems) {
    print_diagnostics(problems, place.sources);
  }
  const contrast::ContrastReport report{sets.front().rules,    sets.back().rules,
                                        differences,           !options.archive.empty(),
                                        std::move(past.filed), library::origin_of(place.sources, sets, past.read)};
  return write_output(contrast_page(report, options.format), options.out, place.sources)
             ? exit_of(contrast::upshot(report))
             : Exit::unusable;
}

}  // namespace plumbrule::command
