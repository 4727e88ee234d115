#pragma once
// A window in words: the one model that text and JSON are rendered from. Numbers stand as people read them, beside the
// exact text where a program needs it.

#include <optional>
#include <string>
#include <vector>

#include "apply/window/find.hpp"
#include "judge/explain/explanation.hpp"

namespace plumbrule::window {

using explain::Line;

/// A number as printed ("7.378947..."), with all its digits, and with unit and basis.
struct Number {
  std::string shown, exact, full;
};

struct EndReport {
  Number at;
  bool inside = true;
  EndKind kind{};
  std::vector<std::string> clauses;  // their numbers
  std::string said;                  // one sentence
  std::vector<Line> steps;           // where it comes from
};

struct PieceReport {
  EndReport low, high;
  Number middle, width;
  bool holds_choice = false;
};

/// One tested value of one series.
struct ReadingReport {
  std::string at, value, place, why;  // why: of one that is not shown, or to which no line is drawn
  std::string position;               // `at` with all digits, without a unit
  std::string least, greatest;        // compared, with all digits; empty without an exact value
  Verdict verdict{};
};

/// An end of a limit as stated: its number with all digits, and the end in words ("at most 538 g/m2"). `threshold` and
/// `unrounded` ("at most 538.5 g/m2"): the same for values before they are rounded; empty if that says no more.
struct LimitEnd {
  std::string exact, said, threshold, unrounded;
};

struct SeriesReport {
  std::string label, limit, threshold;
  std::string unit;  // of the values
  std::optional<LimitEnd> low, high;
  bool folded = false;  // the threshold says more than the limit: a rounding, or a tolerance from the job mix
  std::vector<ReadingReport> readings;
  std::vector<std::string> warnings;
};

struct ClauseReport {
  std::string number, title;
  Role role{};
  bool counts = true, optional = false;
  Verdict verdict{};                   // at the job mix
  std::string why;                     // of that verdict
  std::vector<std::string> complying;  // "from 7.378947... to 9"
  std::vector<Stretch> stretches;      // the same, with all digits
  std::vector<SeriesReport> series;
};

/// What moving the variable to where one clause meets its limit would do.
struct ChangeReport {
  std::string clause, title;
  std::string now;   // value and verdict at the choice
  std::string move;  // "raise residual binder by 0.38 to 7.378947..."; or why there is none
  std::vector<std::string> others;
  bool possible = false;
};

/// What a strength build is drawn from: numbers with all digits, without units.
struct BuildReport {
  std::string measure, unit;      // what is measured, such as a cohesion
  std::string time, time_unit;    // along what
  std::string asked, asked_text;  // the time for which it is asked
  LimitEnd level;
};

/// When strength that a clause asks for under a time is reached.
struct StrengthReport {
  std::string clause, title, limit, asked;  // asked: "cure 60 min"
  std::vector<ReadingReport> readings;
  std::string reached;               // one sentence
  std::optional<std::string> exact;  // the time with all its digits, if it was reached between tested times
  BuildReport build;
  Verdict verdict{};
  std::string level;    // whether the mix is of this level of set or traffic, by the verdict of the clause
  std::string source;   // where the level comes from: the citation, and the source of the limit
  std::string meaning;  // because of the clause
  std::string mend;     // if it is not reached in time
  std::vector<std::string> cautions;
  std::vector<Line> steps;
};

struct CurveReport {
  std::string clause, label, formula, within;
  std::vector<ReadingReport> points;  // value: of the curve; why: what is left over
};

struct VariableWindow {
  std::string variable, title, unit;  // unit with basis
  std::vector<std::string> tested;
  std::optional<Number> choice;
  std::vector<PieceReport> pieces;
  std::string conflict;                                 // why there is none
  std::string standing;                                 // one sentence about the choice
  std::string tolerance;                                // one sentence; empty if no tolerance is known
  std::optional<std::pair<Number, Number>> production;  // how far it may stray from the job mix: from, to
  std::vector<std::string> cautions;                    // what keeps the window from being the whole answer
  std::vector<ClauseReport> clauses;
  std::vector<ChangeReport> changes;
  std::vector<CurveReport> curves;
  Standing outcome{};
};

struct SpecificationWindows : explain::SpecificationHead {
  std::vector<VariableWindow> windows;  // one for each variable
  std::vector<StrengthReport> strengths;
};

/// What the user asks for.
struct Wish {
  std::optional<Decimal> tolerance;  // in the variable's unit
  bool curve = false;
};

[[nodiscard]] VariableWindow describe(const explain::Context& context, const Window& window, const Wish& wish);
[[nodiscard]] std::vector<StrengthReport> strengths(const explain::Context& context);

}  // namespace plumbrule::window
