#include <algorithm>
#include <array>

#include "show/report/review/report.hpp"

namespace plumbrule::report {

using explain::Explanation;
using explain::Verdict;

namespace {

bool applies(const Explanation& one) { return one.verdict != Verdict::does_not_apply; }

}  // namespace

std::string_view outcome_meaning(const SpecificationReport& report) {
  if (nothing_decides(report)) {
    return std::any_of(report.findings.begin(), report.findings.end(), applies)
               ? "no clause that decides applies to what is submitted; nothing can be concluded"
               : "no clause applies to what is submitted; nothing can be concluded";
  }
  constexpr std::array<std::string_view, 4> texts{
      "every clause that applies and decides is shown to be met",
      "a clause fails that the specification leaves to the engineer", "at least one clause fails",
      "evidence is missing or cannot be used; nothing can be concluded yet"};
  return texts.at(static_cast<std::size_t>(report.outcome));
}

std::vector<std::string> marks(const Explanation& finding) {
  std::vector<std::string> out;
  if (finding.optional) {
    out.emplace_back("optional test");
  }
  if (finding.severity == check::Severity::refer && finding.verdict == Verdict::fails) {
    out.emplace_back("for the engineer");
  } else if (finding.severity == check::Severity::advise) {
    out.emplace_back("advice only");
  }
  if (finding.status == check::Status::unverified) {
    out.emplace_back("limit unverified");
  }
  return out;
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  std::string out;
  for (const std::string& one : parts) {
    out.append(out.empty() ? "" : between).append(one);
  }
  return out;
}

std::string marks_text(const Explanation& finding) {
  const std::string all = joined(marks(finding));
  return all.empty() ? all : " (" + all + ")";
}

std::string problem_text(const Problem& one) {
  return (one.place.empty() ? "" : one.place + ": ") + one.message + (one.help.empty() ? "" : "; " + one.help);
}

std::string limit_standing(const Explanation& finding) {
  return std::string(explain::status_text(finding.status)) +
         (finding.status_note.empty() ? "" : ": " + finding.status_note);
}

std::string counts(const std::vector<Explanation>& findings) {
  std::string out;
  for (const Verdict kind : {Verdict::complies, Verdict::fails, Verdict::not_shown, Verdict::does_not_apply}) {
    const auto count =
        std::count_if(findings.begin(), findings.end(), [&](const auto& one) { return one.verdict == kind; });
    out += (out.empty() ? "" : " | ") + std::string(explain::verdict_text(kind)) + " " + std::to_string(count);
  }
  return out;
}

}  // namespace plumbrule::report
