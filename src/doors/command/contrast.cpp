#include "doors/command/contrast.hpp"

#include <algorithm>

#include "doors/command/contrast_archive.hpp"
#include "doors/command/origin.hpp"
#include "doors/command/submission.hpp"

namespace plumbrule::command {
namespace {

constexpr std::size_t contrast_width = 120;

std::optional<RuleSet> specification(source::SourceMap& sources, const std::string& path,
                                     const std::vector<std::string>& amendments, const ContrastOptions& options) {
  diagnose::Diagnostics diagnostics;
  auto set = prepare_specification(sources, {path, amendments, library_folders(options.libraries)}, "", diagnostics);
  if (set) {
    diagnostics.append(set->mismatches);
  }
  print_diagnostics(diagnostics, sources);
  return diagnostics.has_errors() ? std::nullopt : std::move(set);
}

std::string page(const report::ContrastReport& report, Format format) {
  return format == Format::html       ? report::contrast_html(report)
         : format == Format::json     ? report::contrast_json(report)
         : format == Format::markdown ? report::contrast_markdown(report)
                                      : report::contrast_text(report, contrast_width);
}

Exit status(const report::ContrastReport& report) {
  const auto any = [&](auto test) { return std::any_of(report.filed.begin(), report.filed.end(), test); };
  const bool unread = any([](const report::Filed& one) { return !one.before || !one.errors.empty(); });
  const bool judged_otherwise =
      any([](const report::Filed& one) { return one.before != one.after || !one.clauses.empty(); });
  return contrast::differs(report.contrast) || judged_otherwise ? Exit::fails
         : unread                                               ? Exit::incomplete
                                                                : Exit::complies;
}

}  // namespace

Exit contrast(const ContrastOptions& options) {
  source::SourceMap sources;
  if (options.after.empty() && options.amendments.empty()) {
    print_error("found one specification and no amendment; name another specification, or an amendment with --with");
    return Exit::unusable;
  }
  auto before = specification(sources, options.before, options.before_amendments, options);
  auto after =
      specification(sources, options.after.empty() ? options.before : options.after, options.amendments, options);
  if (!before || !after) {
    return Exit::rules_broken;
  }
  const auto filed = filed_in(options.archive);
  if (!filed) {
    return Exit::unusable;
  }
  std::vector<RuleSet> sets;
  sets.push_back(std::move(*before));
  sets.push_back(std::move(*after));
  const contrast::Contrast differences = contrast::contrast(sets.front().rules, sets.back().rules);
  report::ContrastReport report{sets.front().rules, sets.back().rules, differences, !options.archive.empty(), {}, {}};
  std::vector<source::FileId> submittals;
  if (report.archive) {
    report.filed = judge_filed(sources, sets, differences, *filed, submittals);
  }
  report.origin = origin_of(sources, sets, submittals);
  return write_output(page(report, options.format), options.out, sources) ? status(report) : Exit::unusable;
}

}  // namespace plumbrule::command
