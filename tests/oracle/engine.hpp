#pragma once
// The engine under test, stage by stage, beside the independent judge: one set of rules, one submittal, two answers.

#include <array>
#include <memory>

#include "judge.hpp"
#include "judge/evaluate/evaluate.hpp"
#include "language/check/check.hpp"
#include "language/plan/plan.hpp"

namespace plumbrule::oracle {

/// A set of rules made ready for both: checked and compiled for the engine, found by name for the judge.
struct RuleSet {
  std::string path;
  std::vector<syntax::RuleFile> written;  // amended by the judge, whose book points into it
  check::Rules rules;
  plan::Plan plan;
  std::unique_ptr<Rulebook> book;
  Units units;
};

/// Nothing if the rules have errors, which are then in `diagnostics`, or hold no specification. `on`: as for amend().
[[nodiscard]] std::unique_ptr<RuleSet> prepare(const source::SourceMap& sources, check::Loaded loaded,
                                               const std::string& on, diagnose::Diagnostics& diagnostics);

/// What the engine says.
struct Answers {
  bool readable = false;
  bool has_errors = false;  // of the submittal
  evaluate::Review review;
  evaluate::Outcome outcome{};
};
[[nodiscard]] Answers ask_engine(const RuleSet& rules, const evidence::Node& document,
                                 const evidence::KnownNames& others, std::optional<std::int32_t> on);

struct Difference {
  std::string clause, engine, judge;
};

struct Comparison {
  std::size_t clauses = 0;
  std::vector<Difference> differences;
  /// Clauses not shown though intervals might say more, by what the table of bounds gives up.
  std::array<std::size_t, losses> left_open{};
  std::array<std::size_t, 4> verdicts{};  // of the judge
};

/// Verdicts of all clauses, reasons where they follow from one thing, and the outcome.
[[nodiscard]] Comparison compare(const check::Rules& rules, const Answers& engine, const Review& judge);
[[nodiscard]] Comparison compare(RuleSet& rules, const evidence::Node& document, const evidence::KnownNames& others,
                                 std::optional<std::int32_t> on);

}  // namespace plumbrule::oracle
