#include "apply/contrast/held.hpp"

namespace plumbrule::contrast {
namespace {

using evaluate::Verdict;

// What hangs on a verdict is told where it is not that all of it does.
std::string stated(const std::string& number, const Judged& judged) {
  if (number.empty()) {
    return "";
  }
  const Judgement& one = judged.clauses.at(number);
  std::string weight(one.severity == check::Severity::reject ? "" : explain::severity_text(one.severity));
  weight += one.optional ? (weight.empty() ? "" : ", ") + std::string("optional test") : "";
  return number + " " + std::string(explain::verdict_text(one.verdict)) + (weight.empty() ? "" : " (" + weight + ")");
}

// A clause may be held against several, each for other mixes: only one that is for this mix says something.
class Held {
 public:
  Held(const Judged& before, const Judged& after, const Clauses& clauses)
      : before_(before), after_(after), clauses_(clauses) {
    for (const auto& [left, right] : clauses) {
      if (!left.empty() && !right.empty() && applies(before, left) && applies(after, right)) {
        left_.insert(left);
        right_.insert(right);
      }
    }
  }

  [[nodiscard]] std::vector<Filed::Clause> changed() const {
    std::vector<Filed::Clause> out;
    for (const auto& [left, right] : clauses_) {
      if (differs(left, right)) {
        out.push_back({stated(left, before_), stated(right, after_)});
      }
    }
    return out;
  }

 private:
  const Judged& before_;
  const Judged& after_;
  const Clauses& clauses_;
  std::set<std::string> left_, right_;  // those that apply, as does one that they are held against

  static bool applies(const Judged& judged, const std::string& number) {
    return judged.clauses.at(number).verdict != Verdict::does_not_apply;
  }
  // Of a clause that stands on one side only: a failure, or that something is missing; that it complies, only where the
  // outcome is another one, which may hang on it.
  [[nodiscard]] bool decides(const Judgement& one) const {
    return one.verdict == Verdict::fails || one.verdict == Verdict::not_shown ||
           (one.verdict == Verdict::complies && one.severity != check::Severity::advise &&
            before_.outcome != after_.outcome);
  }
  // The same verdict, of which something else follows (language.md, 7.7).
  [[nodiscard]] bool weighs_otherwise(const Judgement& left, const Judgement& right) const {
    switch (left.verdict) {
      case Verdict::does_not_apply:
        return false;
      case Verdict::fails:
        return left.severity != right.severity;
      case Verdict::not_shown:
        return left.severity != right.severity || left.optional != right.optional;
      default:
        return left.severity != right.severity && before_.outcome != after_.outcome;
    }
  }
  [[nodiscard]] bool differs(const std::string& left, const std::string& right) const {
    if (left.empty() || right.empty()) {
      return decides(left.empty() ? after_.clauses.at(right) : before_.clauses.at(left));
    }
    const bool held_elsewhere =
        (!applies(after_, right) && left_.count(left) > 0) || (!applies(before_, left) && right_.count(right) > 0);
    const Judgement& then = before_.clauses.at(left);
    const Judgement& now = after_.clauses.at(right);
    return !held_elsewhere && (then.verdict != now.verdict || weighs_otherwise(then, now));
  }
};

}  // namespace

Judged judged(const assess::Assessment& assessment) {
  Judged out;
  out.outcome = assessment.outcome();
  for (const evaluate::Finding& finding : assessment.findings()) {
    const check::Requirement& requirement = assessment.context().rules.requirements[finding.requirement];
    out.clauses.emplace(requirement.number, Judgement{finding.verdict, requirement.severity, requirement.optional});
  }
  return out;
}

Clauses paired_clauses(const Contrast& differences) {
  Clauses out;
  std::set<std::string> left, right;
  for (const Change& change : differences.changes) {
    if (change.before != nullptr && change.after != nullptr) {
      out.emplace(change.before->requirement->number, change.after->requirement->number);
      left.insert(change.before->requirement->number);
      right.insert(change.after->requirement->number);
    }
  }
  for (const Change& change : differences.changes) {
    if (change.after == nullptr && left.count(change.before->requirement->number) == 0) {
      out.emplace(change.before->requirement->number, "");
    }
    if (change.before == nullptr && right.count(change.after->requirement->number) == 0) {
      out.emplace("", change.after->requirement->number);
    }
  }
  return out;
}

std::vector<Filed::Clause> judged_otherwise(const Judged& before, const Judged& after, const Clauses& clauses) {
  return Held(before, after, clauses).changed();
}

}  // namespace plumbrule::contrast
