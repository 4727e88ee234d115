#include "apply/followup/class_looks.hpp"

#include "base/diagnose/quote.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::followup {
namespace {

using diagnose::quoted;
using evaluate::Reason;
using evaluate::StepKind;
using evaluate::Verdict;

std::uint32_t chosen_case(const Context& context, std::uint32_t requirement) {
  for (const evaluate::Step& step : plan::part(context.review.trace, context.review.findings[requirement].steps)) {
    if (step.kind == StepKind::case_chosen) {
      return step.index;
    }
  }
  return check::none;
}

std::string class_text(const Context& context, const Value& value) {
  return value.kind == Value::Kind::missing ? not_stated : quoted(written(context, value.span));
}

}  // namespace

std::set<check::CategoryId> tested_classes(const Comparison& both, std::uint32_t requirement) {
  std::set<check::CategoryId> out;
  const check::Requirement& rule = both.after.rules.requirements[requirement];
  for (const check::Test& test : rule.where) {
    out.insert(test.category);
  }
  for (const check::Case& one : rule.cases) {
    for (const check::Test& test : one.where) {
      out.insert(test.category);
    }
  }
  return out;
}

namespace {

// What became by the classes of a clause that was open; empty if it asks for what it did.
std::string became_by_class(const Comparison& both, const ClauseProgress& clause) {
  const evaluate::Finding& from = both.before.review.findings[clause.requirement];
  const evaluate::Finding& to = both.after.review.findings[clause.requirement];
  const std::string name = "clause " + both.after.rules.requirements[clause.requirement].number;
  if (clause.progress == Progress::fresh) {
    return {};
  }
  if (to.verdict == Verdict::does_not_apply) {
    return name + " no longer applies";
  }
  if (to.reason == Reason::class_not_stated) {
    return from.reason == Reason::class_not_stated ? "" : "what " + name + " asks for is not known any more";
  }
  const bool other = chosen_case(both.before, clause.requirement) != chosen_case(both.after, clause.requirement);
  const bool less =
      clause.progress == Progress::closed || (from.verdict == Verdict::fails && to.verdict != Verdict::fails);
  return other && less ? name + " now asks for something else" : "";
}

}  // namespace

void look_at_class(Comparison& both, const ClauseProgress& clause) {
  const std::string became = became_by_class(both, clause);
  for (const check::CategoryId category : tested_classes(both, clause.requirement)) {
    const Value& from = both.before.evidence.classes[category];
    const Value& to = both.after.evidence.classes[category];
    if (became.empty() || (from.kind == to.kind && from.word == to.word) || !from.usable()) {
      continue;
    }
    both.look(LookKind::class_changed,
              "class " + quoted(explain::spaced(both.after.rules.categories[category].name)) + " was " +
                  class_text(both.before, from) + " and is " + class_text(both.after, to) + ": " + became,
              "compare the class with the contract", from.span, to.span);
  }
}

}  // namespace plumbrule::followup
