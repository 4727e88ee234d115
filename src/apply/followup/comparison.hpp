#pragma once
// Two submittals that are compared, and what is found. Internal to this folder: whoever compares a part of them works
// on one of these. `look` only records; what is worth one stands in test_looks, repeated, job_mix, materials, heads and
// class_looks.

#include <set>

#include "apply/followup/match.hpp"

namespace plumbrule::followup {

using explain::Context;

inline constexpr const char* not_stated = "not stated";

struct Comparison {
  Comparison(const Context& earlier, const Context& later);

  const Context& before;
  const Context& after;
  Matching matching;
  std::set<std::uint32_t> failed_before, fails_now;  // results that a failing clause counts
  FollowUp out;

  [[nodiscard]] const Result& earlier(const Pair& pair) const { return before.evidence.results[pair.before]; }
  [[nodiscard]] const Result& later(const Pair& pair) const { return after.evidence.results[pair.after]; }
  [[nodiscard]] const check::Measure& measure(const Result& result) const {
    return after.rules.measures[result.measure];
  }

  [[nodiscard]] bool failed(const Pair& pair) const { return failed_before.count(pair.before) > 0; }
  [[nodiscard]] bool cured(const Pair& pair) const { return failed(pair) && fails_now.count(pair.after) == 0; }
  /// A later date than before, and than the earlier submittal, which would have held a test of its own days.
  [[nodiscard]] bool retested(const Pair& pair) const;
  /// Why the test is not taken for a repeated one.
  [[nodiscard]] std::string dates(const Pair& pair) const;
  /// "2026-03-05 before, 2026-03-20 now".
  [[nodiscard]] std::string both_dates(const Result& from, const Result& to) const;
  /// What is said of a result that states neither condition nor design value nor lot.
  [[nodiscard]] std::string unplaced(const Result& result, const Result& other) const;

  void look(LookKind kind, const std::string& found, const std::string& hint, const Span& earlier_place,
            const Span& later_place) {
    out.looks.push_back({kind, found, hint, earlier_place, later_place});
  }
};

/// What differs between two results that are the same test.
struct Differences {
  std::vector<std::size_t> altered;    // changes of values that could be read before, in Comparison::out.values
  std::vector<std::size_t> converted;  // the same value in another unit, as far as its digits go
  std::vector<std::size_t> noted;      // changes of what was noted beside the readings and is something else
  bool reported = false;               // the reported value is another one
  bool restyled = false;               // the only value is reported in one, and that of a specimen in the other
  std::vector<std::uint32_t> removed;  // specimens of the earlier result
  std::vector<std::uint32_t> added;    // of the later one
  std::size_t bare = 0;                // specimens with readings before, and a value alone now
  std::size_t compared = 0;            // specimens that stand in both
  std::size_t unchanged = 0;           // of these with values of their own, all the same
  std::size_t numbers = 0;             // their numbers, together
  std::size_t most = 0;                // the most numbers of one of them
};

/// As written, or that it is not stated.
[[nodiscard]] std::string worded(const Context& context, const Value& value);
[[nodiscard]] std::string worded(const evidence::Note& note);

}  // namespace plumbrule::followup
