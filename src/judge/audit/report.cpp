#include "judge/audit/report.hpp"

#include "base/diagnose/quote.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::audit {
namespace {

constexpr std::size_t most_quoted = 60;

}  // namespace

AuditReport audit_report(const Inspection& inspection, const source::SourceMap& sources) {
  AuditReport out;
  out.recomputed = inspection.recomputed.size();
  out.compared = inspection.compared.size();
  out.tested = inspection.tested.size();
  out.outliers = inspection.outliers;
  for (const Finding& one : inspection.findings) {
    AuditFinding shown;
    shown.code = diagnose::text(one.code);
    shown.place = sources.place_text(one.place);
    shown.span = one.place;
    if (one.place.known()) {
      shown.line = sources.place(one.place).line;
      const std::string quoted = diagnose::quoted(explain::one_line(sources.text(one.place)), most_quoted);
      shown.text = quoted.substr(1, quoted.size() - 2);  // without its backticks
    }
    shown.found = one.found;
    shown.expected = one.expected;
    shown.look = one.look;
    for (const diagnose::Label& other : one.related) {
      shown.related.push_back({sources.place_text(other.span), other.text, other.span});
    }
    out.findings.push_back(std::move(shown));
  }
  return out;
}

}  // namespace plumbrule::audit
