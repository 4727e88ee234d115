#include <algorithm>
#include <array>

#include "report/report.hpp"

namespace plumbrule::report {
namespace {

using explain::Explanation;
using explain::Reason;
using explain::Verdict;

bool decides(const Explanation& one) { return one.severity != check::Severity::advise; }

// What the mix is, its classes and its job mix, is the designer's to say; all else comes from the record of tests.
Hand hand_of(Reason reason) {
  const bool design =
      reason == Reason::class_not_stated || reason == Reason::no_target || reason == Reason::design_not_stated;
  return design ? Hand::designer : Hand::laboratory;
}

class Collector {
 public:
  explicit Collector(const Report& report) : report_(report) {}

  std::vector<Action> run() {
    for (const Problem& one : report_.problems) {
      const std::string help = one.help.empty() ? "" : "; " + one.help;
      out_.push_back({Hand::laboratory, "correct the submittal: " + one.message + help, "", {}, one.place});
    }
    each(&Collector::failing);
    each(&Collector::missing);
    for (const AuditFinding& one : report_.audit.findings) {
      out_.push_back(
          {Hand::laboratory, one.look.empty() ? "look at the reading again" : one.look, one.found, {}, one.place});
    }
    each(&Collector::advice);
    each(&Collector::unconfirmed);
    std::stable_sort(out_.begin(), out_.end(),
                     [](const Action& left, const Action& right) { return left.hand < right.hand; });
    return std::move(out_);
  }

 private:
  const Report& report_;
  std::vector<Action> out_;

  void each(void (Collector::*step)(const SpecificationReport&, const Explanation&)) {
    for (const SpecificationReport& specification : report_.specifications) {
      for (const Explanation& finding : specification.findings) {
        (this->*step)(specification, finding);
      }
    }
  }

  [[nodiscard]] std::string clause(const SpecificationReport& specification, const Explanation& finding) const {
    return (report_.specifications.size() > 1 ? specification.name + " " : "") + finding.number;
  }

  // The same thing asked for twice is one action for both clauses.
  void add(Hand hand, const std::string& what, const std::string& why, const std::string& clause) {
    const auto same = std::find_if(out_.begin(), out_.end(), [&](const Action& one) {
      return one.hand == hand && one.what == what && one.place.empty();
    });
    if (same == out_.end()) {
      out_.push_back({hand, what, why, {clause}, ""});
    } else if (same->clauses.empty() || same->clauses.back() != clause) {
      same->clauses.push_back(clause);
      same->why = same->why == why ? why : "";
    }
  }

  void failing(const SpecificationReport& specification, const Explanation& finding) {
    if (finding.verdict != Verdict::fails || !decides(finding)) {
      return;
    }
    const std::string number = clause(specification, finding);
    if (finding.severity == check::Severity::refer) {
      return add(Hand::agency, "decide on what the specification leaves to the engineer: " + finding.title, finding.why,
                 number);
    }
    add(Hand::designer,
        finding.mend.empty() ? "change the mix or its materials so that it is met: " + finding.sentence : finding.mend,
        finding.title + ": " + finding.why, number);
    add(Hand::laboratory, "test the changed mix again under every clause that failed", "", number);
  }

  void missing(const SpecificationReport& specification, const Explanation& finding) {
    if (finding.verdict == Verdict::not_shown && decides(finding) && !finding.optional) {
      add(hand_of(finding.reason), finding.submit.empty() ? "show that it is met: " + finding.sentence : finding.submit,
          finding.why, clause(specification, finding));
    }
  }

  void advice(const SpecificationReport& specification, const Explanation& finding) {
    if (finding.verdict == Verdict::fails && !decides(finding)) {
      add(Hand::designer, "consider, as advice only: " + (finding.mend.empty() ? finding.sentence : finding.mend),
          finding.title + ": " + finding.why, clause(specification, finding));
    }
  }

  // A limit that nobody confirmed carries no verdict of the contract.
  void unconfirmed(const SpecificationReport& specification, const Explanation& finding) {
    if (finding.verdict == Verdict::does_not_apply || finding.status == check::Status::verified) {
      return;
    }
    const std::string status(explain::status_text(finding.status));
    add(Hand::agency,
        "confirm against the current document the limits of " + specification.title + " that stand here as " + status,
        "", clause(specification, finding));
  }
};

}  // namespace

std::vector<Action> next_actions(const Report& report) { return Collector(report).run(); }

std::string_view hand_text(Hand hand) {
  constexpr std::array<std::string_view, 3> texts{"laboratory", "designer", "agency"};
  return texts.at(static_cast<std::size_t>(hand));
}

}  // namespace plumbrule::report
