#include "apply/sweep/judgement.hpp"

#include <algorithm>

#include "apply/sweep/short_number.hpp"
#include "judge/explain/headroom.hpp"

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
  evaluate::Together all;
  for (std::size_t at = 0; at < out.verdicts.size(); ++at) {
    all.add(against.plan->requirements[at], out.verdicts[at]);
  }
  out.outcome = all.outcome(faulty);
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
