#include "sweep/judgement.hpp"

#include <algorithm>

#include "explain/headroom.hpp"
#include "sweep/short_number.hpp"

namespace plumbrule::sweep {

std::int32_t margin_of(const std::optional<Decimal>& headroom) {
  if (!headroom || !headroom->finite()) {
    return no_margin;
  }
  const Decimal thousandths = (*headroom * Decimal{10}).floor();
  if (thousandths >= Decimal{widest_margin}) {
    return widest_margin;
  }
  return thousandths <= Decimal{-widest_margin} ? -widest_margin
                                                : static_cast<std::int32_t>(whole_at(thousandths, 0).value_or(0));
}

void conclude(const Against& against, bool faulty, Judgement& out) {
  bool rejected = false;
  bool referred = false;
  bool open = false;
  bool anything = false;
  for (std::size_t at = 0; at < out.verdicts.size(); ++at) {
    const plan::Requirement& requirement = against.plan->requirements[at];
    if (requirement.severity == check::Severity::advise) {
      continue;
    }
    const Verdict verdict = out.verdicts[at];
    rejected = rejected || (verdict == Verdict::fails && requirement.severity == check::Severity::reject);
    referred = referred || (verdict == Verdict::fails && requirement.severity == check::Severity::refer);
    open = open || (verdict == Verdict::not_shown && !requirement.optional);
    anything = anything || verdict == Verdict::complies;
  }
  open = open || !anything || faulty;
  out.outcome = rejected   ? evaluate::Outcome::revise_and_resubmit
                : referred ? evaluate::Outcome::refer_to_engineer
                : open     ? evaluate::Outcome::incomplete
                           : evaluate::Outcome::no_exception_taken;
}

void judge(const Against& against, const evidence::Evidence& evidence, bool faulty, Judgement& out) {
  const evaluate::Review review = evaluate::evaluate(*against.plan, evidence);
  out.verdicts.clear();
  out.margins.clear();
  for (const evaluate::Finding& finding : review.findings) {
    out.verdicts.push_back(finding.verdict);
    out.margins.push_back(margin_of(explain::least_headroom(*against.rules, *against.plan, review, finding)));
  }
  conclude(against, faulty, out);
}

}  // namespace plumbrule::sweep
