#pragma once
// The report of a review: one model for all forms. It is whole from the start: what must be done next is worked out
// when it is made, and it cannot be made without saying what it was made from.

#include <string>
#include <string_view>
#include <vector>

#include "base/diagnose/problem.hpp"
#include "judge/assess/assessment.hpp"
#include "judge/audit/report.hpp"
#include "language/library/origin.hpp"

namespace plumbrule::review {

/// The review against one specification.
struct SpecificationReport : explain::SpecificationHead {
  evaluate::Outcome outcome{};
  std::vector<explain::Explanation> findings;
};

/// Who can do what must be done next: who tests and keeps the record, who chooses the mix, who decides for the owner.
enum class Hand : std::uint8_t { laboratory, designer, agency };

/// Something that must be done next.
struct Action {
  Hand hand{};
  std::string what;                  // "submit a result: sand equivalent, at least 2 specimens"
  std::string why;                   // empty where `what` says it
  std::vector<std::string> clauses;  // that ask for it; with the specification's name where there are several
  std::string place;                 // of the value in the submittal, if it is about a single one
};

/// What a review found, without what follows from it.
struct Found {
  std::string submittal;  // its file
  std::string on;         // the day of the review, if one was given
  evidence::Identity identity;
  std::vector<diagnose::Problem> problems;
  std::vector<diagnose::Problem> warnings;  // change no outcome
  std::vector<SpecificationReport> specifications;
  audit::AuditReport audit;
  source::SourceMap sources;  // of the rules and the submittal
};

struct Report : Found {
  std::vector<Action> actions;  // grouped by hand, in the order of doing within each
  library::Origin origin;

  Report(Found found, library::Origin made_from);
};

/// What must be done next, from all that the report says otherwise: errors mended, failing clauses met or decided,
/// evidence submitted, odd readings looked at, limits confirmed. The same thing asked for by several clauses is one
/// action.
[[nodiscard]] std::vector<Action> next_actions(const Found& found, const library::Origin& origin);
/// "laboratory", "designer", "agency".
[[nodiscard]] std::string_view hand_text(Hand hand);
/// No clause that applies counts for the outcome.
[[nodiscard]] bool nothing_decides(const SpecificationReport& report);
/// What the whole comes to. A review that left something out that was asked for never complies.
[[nodiscard]] assess::Upshot upshot(const Report& report);

}  // namespace plumbrule::review
