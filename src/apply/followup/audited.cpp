#include "apply/followup/audited.hpp"

#include <algorithm>
#include <map>

namespace plumbrule::followup {
namespace {

// Findings of the audit are about the same thing if code and result agree; those about no result, if their words do.
class AuditedResults {
 public:
  AuditedResults(const Context& context, const std::vector<Pair>& pairs, bool before) {
    const auto& results = context.evidence.results;
    for (const Pair& pair : pairs) {
      const std::uint32_t own = before ? pair.before : pair.after;
      results_.emplace_back(results[own].span, pair.after);
    }
  }
  [[nodiscard]] std::string key(const audit::Finding& finding) const {
    const std::pair<Span, std::uint32_t>* best = nullptr;
    for (const auto& one : results_) {
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
  std::vector<std::pair<Span, std::uint32_t>> results_;
};

bool inside_any(const Span& place, const std::vector<std::uint32_t>& removed, const evidence::Evidence& evidence) {
  return std::any_of(removed.begin(), removed.end(), [&](std::uint32_t at) {
    const Span& span = evidence.results[at].span;
    return span.file == place.file && span.begin <= place.begin && place.end <= span.end;
  });
}

}  // namespace

void follow_audit(Comparison& both, const std::vector<audit::Finding>& before,
                  const std::vector<audit::Finding>& after) {
  const AuditedResults earlier(both.before, both.matching.pairs, true);
  const AuditedResults later(both.after, both.matching.pairs, false);
  std::multimap<std::string, const audit::Finding*> open;
  for (const audit::Finding& one : before) {
    open.emplace(earlier.key(one), &one);
  }
  for (const audit::Finding& one : after) {
    const auto found = open.find(later.key(one));
    const bool known = found != open.end();
    both.out.audit.push_back({known ? Progress::still_open : Progress::fresh, one});
    if (known) {
      open.erase(found);
    }
  }
  for (const audit::Finding& one : before) {
    const bool left = std::any_of(open.begin(), open.end(), [&](const auto& entry) { return entry.second == &one; });
    if (left) {
      const bool gone = inside_any(one.place, both.matching.removed, both.before.evidence);
      both.out.audit.push_back({gone ? Progress::withdrawn : Progress::closed, one});
    }
  }
}

}  // namespace plumbrule::followup
