#include "show/report/followup/followup.hpp"

#include <algorithm>

namespace plumbrule::report {

std::string tally_text(const SpecificationFollowUp& one) {
  const Tally counts = tally(one);
  const auto standing = static_cast<std::size_t>(
      std::count_if(one.findings.begin(), one.findings.end(), [](const ClauseFollowUp& clause) {
        return clause.progress == followup::Progress::withdrawn && clause.open && clause.counts;
      }));
  std::string out = "closed " + std::to_string(counts.closed) + " | still open " + std::to_string(counts.still_open) +
                    " | new " + std::to_string(counts.fresh) + " | withdrawn " + std::to_string(counts.withdrawn);
  if (standing > 0) {
    out += " (" + std::to_string(standing) + " not shown)";
  }
  return out;
}

std::string state_text(const explain::Explanation& one) {
  return std::string(explain::verdict_text(one.verdict)) + (one.why.empty() ? "" : ": " + one.why);
}

std::string change_text(const ValueFollowUp& one) {
  return one.before + " -> " + one.after + (one.difference.empty() ? "" : " (" + one.difference + ")");
}

}  // namespace plumbrule::report
