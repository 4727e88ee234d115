#include "apply/proof/coverage.hpp"

namespace plumbrule::proof {

using evaluate::StepKind;
using evaluate::Verdict;

Coverage::Coverage(const library::RuleSet& set) : set_(set) {
  // The examples of an amendment are about the clauses that it changed.
  const bool amended = set.rules.specification && !set.rules.specification->amendments.empty();
  for (std::uint32_t at = 0; at < set.plan.requirements.size(); ++at) {
    if (!amended || !set.rules.requirements[at].amended_by.empty()) {
      requirement(at);
    }
  }
}

void Coverage::requirement(std::uint32_t index) {
  const plan::Requirement& requirement = set_.plan.requirements[index];
  all_.push_back({index, Kind::complies, 0});
  all_.push_back({index, Kind::fails, 0});
  bool may_not_apply = requirement.tests.size() > 0;
  for (std::uint32_t at = requirement.cases.begin; at < requirement.cases.end; ++at) {
    const plan::Case& one = set_.plan.cases[at];
    may_not_apply = may_not_apply || one.groups.size() == 0;
    if (requirement.cases.size() > 1) {
      all_.push_back({index, Kind::exception, at});
    }
    for (std::uint32_t group = one.groups.begin; group < one.groups.end && one.groups.size() > 1; ++group) {
      all_.push_back({index, Kind::alternative, group});
    }
  }
  if (may_not_apply) {
    all_.push_back({index, Kind::does_not_apply, 0});
  }
}

void Coverage::add(const evaluate::Review& review) {
  for (const evaluate::Finding& finding : review.findings) {
    const std::uint32_t index = finding.requirement;
    if (finding.verdict != Verdict::not_shown) {
      const Kind kind = finding.verdict == Verdict::complies ? Kind::complies
                        : finding.verdict == Verdict::fails  ? Kind::fails
                                                             : Kind::does_not_apply;
      reached_.insert({index, kind, 0});
    }
    for (const evaluate::Step& step : plan::part(review.trace, finding.steps)) {
      if (step.kind == StepKind::case_chosen) {
        reached_.insert({index, Kind::exception, step.index});
      } else if (step.kind == StepKind::group_verdict && step.outcome == Verdict::complies) {
        reached_.insert({index, Kind::alternative, step.index});
      }
    }
  }
}

std::string Coverage::text(const Branch& branch) const {
  std::string number = set_.rules.requirements[branch.requirement].number;
  const plan::Requirement& requirement = set_.plan.requirements[branch.requirement];
  switch (branch.kind) {
    case Kind::complies:
      return number + " complies";
    case Kind::fails:
      return number + " fails";
    case Kind::does_not_apply:
      return number + " does not apply";
    case Kind::exception:
      return branch.index + 1 == requirement.cases.end
                 ? number + ", the general case"
                 : number + ", exception " + std::to_string(branch.index - requirement.cases.begin + 1);
    case Kind::alternative:
      return number + ", an alternative complies";
  }
  return number;
}

std::vector<std::string> Coverage::missed() const {
  std::vector<std::string> out;
  for (const Branch& branch : all_) {
    if (reached_.count(branch) == 0) {
      out.push_back(text(branch));
    }
  }
  return out;
}

}  // namespace plumbrule::proof
