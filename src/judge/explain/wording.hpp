#pragma once
// Numbers, conditions and demands in words. Used by explain and by report.

#include "judge/explain/explanation.hpp"
#include "judge/explain/headroom.hpp"

namespace plumbrule::explain {

/// A number for people: as it is up to eight decimals, else rounded to six with "..." behind. Never used in arithmetic.
[[nodiscard]] std::string show(const quantity::Decimal& value);
/// "538.2 g/m2", "at least 180 s".
[[nodiscard]] std::string show(const quantity::Amount& amount, const quantity::UnitTable& units);
/// How far two values lie apart: "0.5 kg-cm", of percentages "0.5 percentage points".
[[nodiscard]] std::string apart(const quantity::Decimal& value, const std::string& unit);
/// "unverified: seen in a copy only".
[[nodiscard]] std::string standing_text(const check::Provenance& limits);
/// "12 months", "30 days"; of any age nothing.
[[nodiscard]] std::string age_text(const check::Validity& validity);
/// As `show`, with the basis of the measure: "7.8 % of dry aggregate".
[[nodiscard]] std::string show(const Context& context, const quantity::Amount& amount, check::BasisId basis);
/// A word or an amount of the type.
[[nodiscard]] std::string show(const Context& context, const check::Type& type, const quantity::Amount& amount,
                               std::uint32_t word);
/// "soak 1 h, temperature 25 degC", empty without conditions.
[[nodiscard]] std::string conditions(const check::Rules& rules, const check::Assertion& assertion);
/// "wet-track abrasion loss, soak 1 h".
[[nodiscard]] std::string label(const check::Rules& rules, const check::Assertion& assertion);
/// What is demanded of what, to match demands of several specifications: the measure, its conditions in the unit of the
/// condition ("1 h" is "60 min"), and whether it is about the distance from the job mix.
[[nodiscard]] std::string subject_key(const check::Rules& rules, const check::Assertion& assertion);
/// "mean of at least 2 specimens", empty for the plain result.
[[nodiscard]] std::string statistic(const syntax::Statistic& statistic);
[[nodiscard]] std::string_view statistic_name(syntax::StatisticKind kind);
/// The whole demand: "where traffic is medium or heavy: wet cohesion, cure 60 min, shall be at least 20 kg-cm; or ...".
[[nodiscard]] std::string sentence(const check::Rules& rules, const check::Requirement& requirement);
/// A demand's limit for people: "one of spin, solid spin", "at most 10.5 % of dry aggregate".
[[nodiscard]] std::string limit_text(const check::Limit& limit);
/// Underscores as blanks.
[[nodiscard]] std::string spaced(std::string text);
/// Blanks and line ends made single.
[[nodiscard]] std::string one_line(std::string_view text);
/// "traffic medium, heavy; course surface", empty for all.
[[nodiscard]] std::string classes(const check::Rules& rules, const std::vector<check::Test>& tests);
/// The words of a mask: "medium, heavy".
[[nodiscard]] std::string words(const check::Category& category, std::uint64_t mask);

/// The assertion that a check of the plan was compiled from.
[[nodiscard]] const check::Assertion& assertion_of(const Context& context, const evaluate::Finding& finding,
                                                   std::uint32_t check);
/// The test of a where or except clause that a step is about.
[[nodiscard]] const check::Test& test_of(const Context& context, const evaluate::Finding& finding, std::uint32_t index);
/// How many alternatives the case has that was judged.
[[nodiscard]] std::uint32_t alternatives_of(const Context& context, const evaluate::Finding& finding);
/// The compared value as it stands against the limit: rounded by the rule of the nearer end. `target`: the value of
/// the job mix, for a limit that is a tolerance from it.
struct Standing {
  std::string value;                          // rounded value with unit
  std::string margin;                         // empty for bounds
  quantity::Decimal distance;                 // inside the limit if positive, in its unit
  std::optional<quantity::Decimal> headroom;  // in percent of the limit, as of a Room
  std::string rule;                           // "rounded to the nearest 1 g/m2, ties to even", or "absolute method"
};
[[nodiscard]] Standing standing(const Context& context, const check::Assertion& assertion,
                                const quantity::Amount& amount,
                                const std::optional<quantity::Decimal>& target = std::nullopt);
/// The reason in words, for a check, and what to submit.
[[nodiscard]] std::string reason_text(Reason reason);
[[nodiscard]] std::string submit_text(const Context& context, const check::Assertion& assertion, Reason reason);

}  // namespace plumbrule::explain
