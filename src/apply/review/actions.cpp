#include <algorithm>
#include <array>
#include <map>

#include "apply/review/report.hpp"

namespace plumbrule::review {
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

// The value that a clause turns on; empty if it is several.
std::string place_of(const Explanation& one) {
  std::string out;
  for (const explain::Comparison& comparison : one.comparisons) {
    if (comparison.verdict != one.verdict || comparison.place.empty() || comparison.place == out) {
      continue;
    }
    if (!out.empty()) {
      return {};
    }
    out = comparison.place;
  }
  return out;
}

class Collector {
 public:
  Collector(const Found& found, const library::Origin& origin) : report_(found), origin_(origin) {}

  std::vector<Action> run() {
    for (const diagnose::Problem& one : report_.problems) {
      const std::string help = one.help.empty() ? "" : "; " + one.help;
      out_.push_back({Hand::laboratory, "correct the submittal: " + one.message + help, "", {}, one.place});
    }
    each(&Collector::failing);
    each(&Collector::missing);
    for (const SpecificationReport& specification : report_.specifications) {
      inapplicable(specification);
    }
    for (const audit::AuditFinding& one : report_.audit.findings) {
      out_.push_back(
          {Hand::laboratory, one.look.empty() ? "look at the reading again" : one.look, one.found, {}, one.place});
    }
    each(&Collector::advice);
    for (const library::SetAside& one : origin_.aside) {
      if (one.open) {
        out_.push_back({Hand::agency,
                        "say which edition applies on " + origin_.on + ", and review against it",
                        library::aside_text(one),
                        {},
                        ""});
      }
    }
    for (const SpecificationReport& specification : report_.specifications) {
      unconfirmed(specification);
    }
    std::stable_sort(out_.begin(), out_.end(),
                     [](const Action& left, const Action& right) { return left.hand < right.hand; });
    return std::move(out_);
  }

 private:
  const Found& report_;
  const library::Origin& origin_;
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

  // The same thing asked for twice is one action for both clauses, with the reason and the place that both have.
  void add(Hand hand, const std::string& what, const std::string& why, const std::string& clause,
           const std::string& place) {
    const auto same = std::find_if(out_.begin(), out_.end(), [&](const Action& one) {
      return one.hand == hand && one.what == what && !one.clauses.empty();
    });
    if (same == out_.end()) {
      out_.push_back({hand, what, why, {clause}, place});
    } else if (same->clauses.back() != clause) {
      same->clauses.push_back(clause);
      same->why = same->why == why ? why : "";
      same->place = same->place == place ? place : "";
    }
  }

  void failing(const SpecificationReport& specification, const Explanation& finding) {
    if (finding.verdict != Verdict::fails || !decides(finding)) {
      return;
    }
    const std::string number = clause(specification, finding);
    if (finding.severity == check::Severity::refer) {
      return add(Hand::agency, "decide on what the specification leaves to the engineer: " + finding.title, finding.why,
                 number, place_of(finding));
    }
    add(Hand::designer,
        finding.mend.empty() ? "change the mix or its materials so that it is met: " + finding.sentence : finding.mend,
        finding.title + ": " + finding.why, number, place_of(finding));
    add(Hand::laboratory, "test the mix again, once it is changed, under every clause that failed", "", number, "");
  }

  void missing(const SpecificationReport& specification, const Explanation& finding) {
    if (finding.verdict == Verdict::not_shown && decides(finding) && !finding.optional) {
      add(hand_of(finding.reason), finding.submit.empty() ? "show that it is met: " + finding.sentence : finding.submit,
          finding.why, clause(specification, finding), place_of(finding));
    }
  }

  void inapplicable(const SpecificationReport& specification) {
    if (nothing_decides(specification)) {
      out_.push_back({Hand::designer,
                      "compare the classes of the submittal with those of " + specification.title +
                          ", or review against another specification",
                      "no clause of it that decides applies",
                      {},
                      ""});
    }
  }

  void advice(const SpecificationReport& specification, const Explanation& finding) {
    if (finding.verdict == Verdict::fails && !decides(finding)) {
      add(Hand::designer, "consider, as advice only: " + (finding.mend.empty() ? finding.sentence : finding.mend),
          finding.title + ": " + finding.why, clause(specification, finding), place_of(finding));
    }
  }

  // A limit that nobody confirmed carries no verdict of the contract. All of a specification need no list.
  void unconfirmed(const SpecificationReport& specification) {
    std::map<check::Status, std::vector<std::string>> numbers;
    std::size_t applying = 0;
    for (const Explanation& finding : specification.findings) {
      if (finding.verdict != Verdict::does_not_apply) {
        ++applying;
        numbers[finding.status].push_back(clause(specification, finding));
      }
    }
    numbers.erase(check::Status::verified);
    for (const auto& [status, clauses] : numbers) {
      const bool all = clauses.size() == applying;
      out_.push_back({Hand::agency,
                      "confirm against the current document the limits of " + specification.title +
                          " that stand here as " + std::string(explain::status_text(status)),
                      all ? "this is every limit that applies" : "", all ? std::vector<std::string>{} : clauses, ""});
    }
  }
};

}  // namespace

Report::Report(Found found, library::Origin made_from) : Found(std::move(found)), origin(std::move(made_from)) {
  actions = next_actions(*this, origin);
}

std::vector<Action> next_actions(const Found& found, const library::Origin& origin) {
  return Collector(found, origin).run();
}

bool nothing_decides(const SpecificationReport& report) {
  return std::none_of(report.findings.begin(), report.findings.end(), [](const Explanation& finding) {
    return finding.verdict != Verdict::does_not_apply && finding.severity != check::Severity::advise;
  });
}

assess::Upshot upshot(const Report& report) {
  assess::Upshots out;
  out.add_open(library::leaves_open(report.origin));
  for (const SpecificationReport& specification : report.specifications) {
    out.add(specification.outcome);
  }
  return out.upshot();
}

std::string_view hand_text(Hand hand) {
  constexpr std::array<std::string_view, 3> texts{"laboratory", "designer", "agency"};
  return texts.at(static_cast<std::size_t>(hand));
}

}  // namespace plumbrule::review
