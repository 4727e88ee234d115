#include "apply/window/windows.hpp"

#include <algorithm>
#include <utility>

#include "base/diagnose/suggest.hpp"
#include "judge/evidence/written.hpp"

namespace plumbrule::window {
namespace {

std::vector<check::MeasureId> asked_for(const check::Rules& rules, const evidence::Evidence& evidence,
                                        const std::string& vary) {
  if (vary.empty()) {
    return variables(evidence);
  }
  std::vector<check::MeasureId> out;
  for (std::uint32_t at = 0; at < rules.measures.size(); ++at) {
    if (rules.measures[at].name == vary && !rules.measures[at].type.is_word()) {
      out.push_back(at);
    }
  }
  return out;
}

// `0.5 %` in the unit of the variable; a difference for temperatures. Nothing, if it cannot be one.
std::optional<quantity::Decimal> read_tolerance(const std::string& text, const check::Rules& rules,
                                                const evidence::Evidence& evidence, check::MeasureId variable) {
  const auto read = evidence::read_written(text);
  const auto* written = std::get_if<evidence::Written>(&read);
  if (written == nullptr || written->bound != quantity::Bound::exact || written->value < 0 || !written->basis.empty()) {
    return std::nullopt;
  }
  quantity::UnitTable units = evidence.units;
  const auto unit = units.find(written->unit);
  const quantity::Unit& wanted = units.at(units.difference(rules.measures[variable].type.unit));
  if (!unit || !quantity::convertible(units.at(*unit), wanted) ||
      !quantity::same_kind_of_number(units.at(*unit), wanted)) {
    return std::nullopt;
  }
  return quantity::convert(written->value, units.at(*unit), wanted);
}

// The windows of one specification; the reason, if the tolerance does not fit it.
std::string look(const assess::Assessment& assessment, const Question& question, SpecificationWindows& out) {
  const explain::Context& context = assessment.context();
  for (const check::MeasureId variable : asked_for(context.rules, context.evidence, question.vary)) {
    Wish wish;
    wish.curve = question.curve;
    if (!question.tolerance.empty()) {
      wish.tolerance = read_tolerance(question.tolerance, context.rules, context.evidence, variable);
      if (!wish.tolerance) {
        return "found `" + question.tolerance + "`, no tolerance for `" + context.rules.measures[variable].name +
               "`; write a number with the unit of the measure, such as `0.5 %`";
      }
    }
    Window found = find(context.plan, context.evidence, context.review, variable, wish.tolerance);
    found.submittal_has_errors = assessment.faulty();
    out.windows.push_back(describe(context, found, wish));
  }
  out.strengths = strengths(context);
  return {};
}

// A name that no specification knows is a slip of the pen: the reason, or nothing.
std::string unknown_variable(const std::vector<library::RuleSet>& sets, const std::string& vary) {
  std::vector<std::string_view> known;
  for (const library::RuleSet& set : sets) {
    for (const check::Measure& measure : set.rules.measures) {
      if (!measure.type.is_word()) {
        known.emplace_back(measure.name);
      }
    }
  }
  if (vary.empty() || std::find(known.begin(), known.end(), vary) != known.end()) {
    return {};
  }
  return "found `" + vary + "` for --vary, no measure of that name with a number; " + diagnose::suggestion(vary, known);
}

}  // namespace

Sought seek(const source::SourceMap& sources, const library::RulesInForce& rules,
            const evidence::SubmittalRecord& submittal, const Question& question) {
  Sought out;
  out.misfit = unknown_variable(rules.sets, question.vary);
  if (!out.misfit.empty()) {
    return out;
  }
  Windows windows;
  diagnose::Merged merged;
  const assess::Asked asked = assess::asked_of(sources, rules.sets, evidence::read_date(rules.on));
  for (const library::RuleSet& set : rules.sets) {
    const auto assessment = assess::assess(asked, *submittal.tree, set, merged);
    SpecificationWindows part{assess::head_of(set), {}, {}};
    out.misfit = assessment ? look(*assessment, question, part) : "";
    if (!assessment || !out.misfit.empty()) {
      out.problems = merged.take();
      return out;
    }
    windows.identity = assessment->evidence().identity;
    windows.specifications.push_back(std::move(part));
  }
  out.problems = merged.take();
  windows.submittal = submittal.name;
  windows.problems = diagnose::problems_of(out.problems, diagnose::Severity::error, sources);
  windows.warnings = diagnose::problems_of(out.problems, diagnose::Severity::warning, sources);
  windows.origin = library::origin_of(sources, rules, {submittal.tree->span.file});
  out.windows = std::move(windows);
  return out;
}

assess::Upshot upshot(const Windows& windows) {
  bool open = library::leaves_open(windows.origin) || windows.specifications.empty();
  for (const SpecificationWindows& specification : windows.specifications) {
    open = open || specification.windows.empty();
    for (const auto& window : specification.windows) {
      if (window.outcome == Standing::fails) {
        return assess::Upshot::fails;
      }
      open = open || window.outcome == Standing::open;
    }
  }
  return open ? assess::Upshot::incomplete : assess::Upshot::complies;
}

}  // namespace plumbrule::window
