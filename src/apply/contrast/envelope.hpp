#pragma once
// What a mix must meet to satisfy several specifications at once: for each measure under the same conditions the
// tightest limits, who sets them, and the limits that no value can meet together.

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "apply/contrast/demand.hpp"

namespace plumbrule::contrast {

/// The classes that the mix is designed for: category and word. A demand for other classes is left out; of an exception
/// and its general case the one that holds is taken. What is not chosen stays in the classes of a row.
using Classes = std::map<std::string, std::string>;

/// An end of a row: the number as printed, or the threshold on unrounded values where rounding lets less pass, and the
/// demand that sets it.
struct Bound {
  quantity::Threshold in_row;  // in the row's unit
  quantity::Threshold own;     // in the unit of the demand, with the digits printed there
  bool by_rounding = false;
  std::size_t specification = 0;  // its place in the list
  const Demand* demand = nullptr;
};

/// The common limit of one subject, for some classes, judged in one way over tests of one age.
struct Row {
  std::string subject, who, statistic;
  Asked classes;                  // that the demands ask for, beside the chosen ones
  std::vector<Asked> exceptions;  // of them, in order: those mixes have rows of their own, or none
  check::Severity severity{};
  bool optional = true;            // in all of them
  check::Validity validity;        // which tests count: a limit on others is another row
  std::size_t specification = 0;   // that of the first demand, whose unit and words the row is told in
  const Demand* demand = nullptr;  // the first
  std::optional<Bound> low, high, tolerance;
  std::vector<std::pair<std::size_t, const Demand*>> rounded;  // whose rounding may let less pass than the tolerance
  std::optional<std::set<std::string>> words;                  // those that all allow
  std::vector<std::pair<std::size_t, const Demand*>> all;
  std::vector<std::string> beside;  // "with the row for traffic light": it holds too for some of these mixes
};

/// `either ... or ...`: kept as it stands, since the tightest of several ways to comply is not defined. What several
/// specifications say alike is one.
struct Kept {
  std::size_t specification = 0;
  const check::Requirement* requirement = nullptr;
  const check::Case* one = nullptr;
  std::string demand;                 // all ways in words
  std::vector<std::string> subjects;  // of all ways
  Asked classes;
  std::vector<Asked> exceptions;
  std::string who;
  std::vector<std::pair<std::size_t, const Demand*>> all;
};

/// Two demands that no value meets together; or demands that cannot be held against each other at all.
struct Exclusion {
  std::size_t left_specification = 0, right_specification = 0;
  const Demand* left = nullptr;
  const Demand* right = nullptr;
  std::string why;
};

/// Mixes of which a specification asks nothing that counts: its own review leaves them open.
struct Uncovered {
  std::size_t specification = 0;
  Asked classes;
  std::string who;  // in words, empty for all
};

/// The rows point into `demands`: moved, not copied.
struct Envelope {
  Envelope() = default;
  Envelope(const Envelope&) = delete;
  Envelope& operator=(const Envelope&) = delete;
  Envelope(Envelope&&) = default;
  Envelope& operator=(Envelope&&) = default;
  ~Envelope() = default;
  std::vector<std::vector<Demand>> demands;  // of each specification
  std::vector<Row> rows;
  std::vector<Kept> kept;
  std::vector<Exclusion> exclusions;
  std::vector<Exclusion> incomparable;
  std::vector<std::string> left_out;  // what a specification asks and the envelope does not hold
  std::vector<Uncovered> uncovered;
};

/// Limits are compared as printed, each converted into the unit of the row, or as the threshold that rounding makes of
/// them where that lets less pass: so the tightest, compared with every digit, is never looser than any of them. Only a
/// tolerance from the job mix may be, since the threshold depends on the job mix; `Row::rounded` says of whom.
[[nodiscard]] Envelope envelope(const std::vector<const check::Rules*>& specifications, const Classes& classes);

/// Whether a demand rests on a measure or condition that its specification declares itself.
[[nodiscard]] bool declares_itself(const check::Rules& rules, const check::Assertion& assertion);

/// The envelope as a rule file that can be reviewed against. `vocabularies`: names for its `uses`.
[[nodiscard]] std::string rule_file(const Envelope& envelope, const std::vector<const check::Rules*>& specifications,
                                    const std::vector<std::string>& vocabularies, const Classes& classes);

/// "at most 430 g/m2", "between 6.5 % and 8.5 % of dry_aggregate": as a rule file says it, each end in the unit of the
/// specification that sets it; several if the ends are in different units, or there is a tolerance beside them. A rule
/// file has no "below 20.25 kg-cm"; `for_people` says so where the end itself does not pass.
[[nodiscard]] std::vector<std::string> row_limits(const Row& row,
                                                  const std::vector<const check::Rules*>& specifications,
                                                  bool for_people);

}  // namespace plumbrule::contrast
