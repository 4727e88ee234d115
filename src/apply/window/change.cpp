// What a change of the variable would do: where a clause that fails, or is near its limit, meets it, and what the
// other clauses do there. Estimates along the straight lines of the series.

#include <algorithm>

#include "apply/window/words.hpp"

namespace plumbrule::window {
namespace {

Decimal size_of(const Decimal& value) { return value < Decimal{0} ? -value : value; }

// Within a tenth of the limit, on either side.
bool near(const Decimal& value, const evaluate::Thresholds& limits) {
  const auto close = [&](const std::optional<quantity::Threshold>& one) {
    return one && size_of(value - one->value) * Decimal{10} <= size_of(one->value);
  };
  return close(limits.low) || close(limits.high);
}

std::optional<Crossing> nearest(const Series& series, const Decimal& choice) {
  std::optional<Crossing> out;
  for (const Crossing& one : crossings(series)) {
    const bool nearer = !out || size_of(one.at - choice) < size_of(out->at - choice);
    out = nearer ? std::optional(one) : out;
  }
  return out;
}

// The verdict of the demand that the series is of, and that of the clause if alternatives make it another one.
std::string state(const Words& words, const Clause& clause, const Series& series, const Decimal& at) {
  const auto value = value_at(series, at);
  const Verdict alone = profile(series).at(at);
  const Verdict whole = clause.profile.at(at);
  return (value ? words.value(series.check, *value) : std::string("no value")) + " against " +
         explain::limit_text(words.assertion(clause, series.check).limit) + ", " +
         std::string(explain::verdict_text(alone)) +
         (alone == whole ? "" : "; with its other demands the clause: " + std::string(explain::verdict_text(whole)));
}

std::vector<std::string> others(const Words& words, const Clause& moved, const Decimal& at) {
  std::vector<std::string> out;
  for (const Clause& clause : words.window().clauses) {
    if (&clause == &moved || (clause.role != Role::varies && clause.role != Role::own_limit)) {
      continue;
    }
    for (const Series& series : clause.series) {
      out.push_back(words.name(clause) + ": " + state(words, clause, series, at));
    }
  }
  return out;
}

ChangeReport change(const Words& words, const Clause& clause, const Series& series, const Decimal& choice) {
  ChangeReport out;
  out.clause = words.requirement(clause).number;
  out.title = words.requirement(clause).title;
  out.now = "at " + words.number(choice).full + ": " + state(words, clause, series, choice);
  const auto meets = nearest(series, choice);
  if (!meets) {
    out.move = "in the tested range it never meets its limit";
    return out;
  }
  out.possible = true;
  const check::Measure& variable = words.context().rules.measures[words.window().variable];
  if (meets->at == choice) {
    out.move = "it is exactly at its limit now";
    return out;
  }
  const bool up = choice < meets->at;
  out.move = (up ? "raising " : "lowering ") + variable.title + " by " +
             words.difference(size_of(meets->at - choice)).full + " to " + words.number(meets->at).full +
             " brings it exactly to its limit";
  out.move += meets->threshold.inclusive ? "" : ", which does not pass itself: a little farther is needed";
  out.others = others(words, clause, meets->at);
  return out;
}

}  // namespace

std::vector<ChangeReport> changes(const Words& words) {
  std::vector<ChangeReport> out;
  const auto& choice = words.window().choice;
  for (const Clause& clause : words.window().clauses) {
    if (!choice || clause.role != Role::varies) {
      continue;
    }
    for (const Series& series : clause.series) {
      const auto value = value_at(series, *choice);
      const bool fails = clause.profile.at(*choice) == Verdict::fails;
      if (value && series.readings.size() > 1 && (fails || near(*value, series.limits))) {
        out.push_back(change(words, clause, series, *choice));
      }
    }
  }
  return out;
}

}  // namespace plumbrule::window
