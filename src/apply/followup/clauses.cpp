#include "apply/followup/clauses.hpp"

#include <algorithm>

#include "apply/followup/class_looks.hpp"

namespace plumbrule::followup {
namespace {

using evaluate::Reason;
using evaluate::Verdict;

bool stands_open(Verdict verdict, bool optional) {
  return verdict == Verdict::fails || (verdict == Verdict::not_shown && !optional);
}

// The test was not submitted, or not for the job mix and the conditions of the clause.
bool not_submitted(const evaluate::Finding& finding) {
  return finding.verdict == Verdict::not_shown &&
         (finding.reason == Reason::no_result || finding.reason == Reason::other_conditions ||
          finding.reason == Reason::other_design);
}

std::string withdrawn_note(const Comparison& both, std::uint32_t requirement) {
  const evaluate::Finding& finding = both.after.review.findings[requirement];
  if (finding.verdict == Verdict::does_not_apply) {
    return "the clause no longer applies";
  }
  switch (finding.reason) {
    case Reason::other_conditions:
      return "no result under the conditions of the clause is submitted any more";
    case Reason::other_design:
      return "no result for the job mix is submitted any more";
    default:
      return "no result is submitted any more";
  }
}

// What was asked for is supplied: a class that was not stated. None that was is another one.
bool class_supplied(const Comparison& both, std::uint32_t requirement) {
  const std::set<check::CategoryId> classes = tested_classes(both, requirement);
  return both.before.review.findings[requirement].reason == Reason::class_not_stated &&
         std::all_of(classes.begin(), classes.end(), [&](check::CategoryId category) {
           const Value& from = both.before.evidence.classes[category];
           const Value& to = both.after.evidence.classes[category];
           return !from.usable() || (from.kind == to.kind && from.word == to.word);
         });
}

void follow_clause(Comparison& both, std::uint32_t requirement) {
  const evaluate::Finding& from = both.before.review.findings[requirement];
  const evaluate::Finding& to = both.after.review.findings[requirement];
  const plan::Requirement& rule = both.after.plan.requirements[requirement];
  const bool was = stands_open(from.verdict, rule.optional);
  const bool is = stands_open(to.verdict, rule.optional);
  if (!was && !is) {
    return;
  }
  ClauseProgress one{requirement, Progress::still_open, rule.severity != check::Severity::advise, is, {}};
  const bool taken_away = is ? from.verdict == Verdict::fails && not_submitted(to) : to.verdict != Verdict::complies;
  if (!was) {
    one.progress = Progress::fresh;
  } else if (to.verdict == Verdict::does_not_apply && class_supplied(both, requirement)) {
    one.progress = Progress::closed;
    one.note = "the class is stated now; the clause does not apply";
  } else if (taken_away) {
    one.progress = Progress::withdrawn;
    one.note = withdrawn_note(both, requirement);
  } else if (!is) {
    one.progress = Progress::closed;
  }
  both.out.clauses.push_back(one);
}

}  // namespace

void follow_clauses(Comparison& both) {
  for (std::uint32_t at = 0; at < both.after.review.findings.size(); ++at) {
    follow_clause(both, at);
  }
}

}  // namespace plumbrule::followup
