// What became of the findings of the review and of the audit.

#include <algorithm>
#include <map>

#include "apply/followup/comparer.hpp"

namespace plumbrule::followup {
namespace {

using evaluate::Reason;
using evaluate::Verdict;

bool open(Verdict verdict, bool optional) {
  return verdict == Verdict::fails || (verdict == Verdict::not_shown && !optional);
}

// The test was not submitted, or not for the job mix and the conditions of the clause.
bool not_submitted(const evaluate::Finding& finding) {
  return finding.verdict == Verdict::not_shown &&
         (finding.reason == Reason::no_result || finding.reason == Reason::other_conditions ||
          finding.reason == Reason::other_design);
}

// Findings of the audit are about the same thing if code and result agree; those about no result, if their words do.
class Owners {
 public:
  Owners(const Context& context, const std::vector<Pair>& pairs, bool before) {
    const auto& results = context.evidence.results;
    for (const Pair& pair : pairs) {
      const std::uint32_t own = before ? pair.before : pair.after;
      owners_.emplace_back(results[own].span, pair.after);
    }
  }
  [[nodiscard]] std::string key(const audit::Finding& finding) const {
    const std::pair<Span, std::uint32_t>* best = nullptr;
    for (const auto& one : owners_) {
      const Span& span = one.first;
      const bool inside =
          span.file == finding.place.file && span.begin <= finding.place.begin && finding.place.end <= span.end;
      if (inside && (best == nullptr || span.end - span.begin < best->first.end - best->first.begin)) {
        best = &one;
      }
    }
    const std::string code(diagnose::text(finding.code));
    return best == nullptr ? code + "|" + finding.found : code + "#" + std::to_string(best->second);
  }

 private:
  std::vector<std::pair<Span, std::uint32_t>> owners_;
};

bool inside_any(const Span& place, const std::vector<std::uint32_t>& removed, const evidence::Evidence& evidence) {
  return std::any_of(removed.begin(), removed.end(), [&](std::uint32_t at) {
    const Span& span = evidence.results[at].span;
    return span.file == place.file && span.begin <= place.begin && place.end <= span.end;
  });
}

}  // namespace

std::string Comparer::withdrawn_note(std::uint32_t requirement) const {
  const evaluate::Finding& finding = after_.review.findings[requirement];
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
bool Comparer::supplied(std::uint32_t requirement) const {
  const std::set<check::CategoryId> classes = tested_classes(requirement);
  return before_.review.findings[requirement].reason == Reason::class_not_stated &&
         std::all_of(classes.begin(), classes.end(), [&](check::CategoryId category) {
           const Value& from = before_.evidence.classes[category];
           const Value& to = after_.evidence.classes[category];
           return !from.usable() || (from.kind == to.kind && from.word == to.word);
         });
}

void Comparer::progress(std::uint32_t requirement) {
  const evaluate::Finding& from = before_.review.findings[requirement];
  const evaluate::Finding& to = after_.review.findings[requirement];
  const plan::Requirement& rule = after_.plan.requirements[requirement];
  const bool was = open(from.verdict, rule.optional);
  const bool is = open(to.verdict, rule.optional);
  if (!was && !is) {
    return;
  }
  ClauseProgress one{requirement, Progress::still_open, rule.severity != check::Severity::advise, is, {}};
  const bool taken_away = is ? from.verdict == Verdict::fails && not_submitted(to) : to.verdict != Verdict::complies;
  if (!was) {
    one.progress = Progress::fresh;
  } else if (to.verdict == Verdict::does_not_apply && supplied(requirement)) {
    one.progress = Progress::closed;
    one.note = "the class is stated now; the clause does not apply";
  } else if (taken_away) {
    one.progress = Progress::withdrawn;
    one.note = withdrawn_note(requirement);
  } else if (!is) {
    one.progress = Progress::closed;
  }
  out_.clauses.push_back(one);
}

void Comparer::clauses() {
  for (std::uint32_t at = 0; at < after_.review.findings.size(); ++at) {
    progress(at);
  }
}

void Comparer::audits() {
  const Owners earlier(before_, matching_.pairs, true);
  const Owners later(after_, matching_.pairs, false);
  std::multimap<std::string, const audit::Finding*> open;
  for (const audit::Finding& one : earlier_audit_.findings) {
    open.emplace(earlier.key(one), &one);
  }
  for (const audit::Finding& one : later_audit_.findings) {
    const auto found = open.find(later.key(one));
    const bool known = found != open.end();
    out_.audit.push_back({known ? Progress::still_open : Progress::fresh, one});
    if (known) {
      open.erase(found);
    }
  }
  for (const audit::Finding& one : earlier_audit_.findings) {
    const bool left = std::any_of(open.begin(), open.end(), [&](const auto& entry) { return entry.second == &one; });
    if (left) {
      const bool gone = inside_any(one.place, matching_.removed, before_.evidence);
      out_.audit.push_back({gone ? Progress::withdrawn : Progress::closed, one});
    }
  }
}

}  // namespace plumbrule::followup
