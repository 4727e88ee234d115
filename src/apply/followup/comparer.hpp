#pragma once
// The state of one comparison. Internal to this folder; its parts stand in clauses.cpp (what became of the findings),
// values.cpp (which values differ), noted.cpp (what is noted beside them), looks.cpp (what is worth a look of one test)
// and whole.cpp (of the submittals).

#include <map>
#include <set>

#include "apply/followup/match.hpp"

namespace plumbrule::followup {

using explain::Context;

inline constexpr const char* not_stated = "not stated";

/// File and place.
using Position = std::pair<std::uint32_t, std::size_t>;

class Comparer {
 public:
  Comparer(const Side& before, const Side& after)
      : before_(before.context),
        after_(after.context),
        earlier_audit_(before.inspection),
        later_audit_(after.inspection),
        matching_(match(before_, after_)),
        failed_(failing(before_)),
        fails_(failing(after_)) {}
  FollowUp run();

 private:
  const Context& before_;
  const Context& after_;
  const audit::Inspection& earlier_audit_;
  const audit::Inspection& later_audit_;
  Matching matching_;
  std::set<std::uint32_t> failed_, fails_;  // results that a failing clause counts, before and now
  struct Rows {
    std::size_t count = 0, same = 0;
    Pair first;
  };
  std::map<std::uint32_t, Rows> series_;  // under another date, by the number of the later series
  struct Test {
    bool kept = true;
    check::MeasureId measure = check::none;
  };
  std::map<std::pair<bool, std::uint32_t>, Test> tests_;  // at the job mix; by being a series, and its number
  std::vector<std::pair<check::MeasureId, ValueChange>> redeclared_;
  std::set<std::pair<Position, Position>> told_;  // values of which a look was drawn: one that is shared is met often
  std::vector<ValueChange> materials_;            // that say of a material what is not what was said before
  struct Used {
    ValueChange change;
    Pair pair;
  };
  std::vector<Used> used_;  // tests that were not repeated, of another material than before
  FollowUp out_;

  /// What differs between two results that are the same test.
  struct Differences {
    std::vector<std::size_t> altered;    // changes of values that could be read before, in out_.values
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

  [[nodiscard]] const Result& earlier(const Pair& pair) const { return before_.evidence.results[pair.before]; }
  [[nodiscard]] const Result& later(const Pair& pair) const { return after_.evidence.results[pair.after]; }
  [[nodiscard]] const check::Measure& measure(const Result& result) const {
    return after_.rules.measures[result.measure];
  }

  // clauses.cpp
  void clauses();
  void progress(std::uint32_t requirement);
  void audits();
  [[nodiscard]] bool supplied(std::uint32_t requirement) const;
  [[nodiscard]] std::string withdrawn_note(std::uint32_t requirement) const;

  // values.cpp
  void classes();
  void identity();
  Differences differences(const Pair& pair);
  [[nodiscard]] std::string unplaced(const Result& result, const Result& other) const;
  bool restyled(const Pair& pair, Differences& out);
  void specimens(const Pair& pair, Differences& out);
  void readings(const Pair& pair, const SpecimenPair& specimen, Differences& out);
  void worked_out(const Pair& pair, const SpecimenPair& specimen, const std::string& name);
  enum class Change : std::uint8_t { none, converted, other };
  Change value(const std::string& of, const std::string& what, const Value& from, const Value& to,
               const check::Type& type);
  void reported(const Pair& pair, Differences& out);
  void day(const Pair& pair, const std::string& what, const evidence::Day& from, const evidence::Day& to);
  void results();
  [[nodiscard]] std::string difference(const Value& from, const Value& to, const check::Type& type) const;

  // noted.cpp
  void beside(const Pair& pair, Differences& out);
  void text(const Pair& pair, const std::string& what, const evidence::Note& from, const evidence::Note& to);
  void replicates(const Pair& pair, Differences& out);
  void circumstances(const Pair& pair, const std::string& of, const std::string& whose,
                     const evidence::Circumstances& from, const evidence::Circumstances& to, Differences& out);
  void clocks(const Pair& pair, const std::string& of, const std::string& whose, const evidence::Circumstances& from,
              const evidence::Circumstances& to, Differences& out);
  void materials_used(const Pair& pair);
  void materials();
  void material(const evidence::Material& from, const evidence::Material& to);

  // looks.cpp
  void looks(const Pair& pair, const Differences& found);
  [[nodiscard]] static std::set<std::uint32_t> failing(const Context& context);
  [[nodiscard]] bool failed(const Pair& pair) const { return failed_.count(pair.before) > 0; }
  [[nodiscard]] bool cured(const Pair& pair) const { return failed(pair) && fails_.count(pair.after) == 0; }
  [[nodiscard]] bool retested(const Pair& pair) const;
  [[nodiscard]] std::string dates(const Pair& pair) const;
  void look(LookKind kind, const std::string& found, const std::string& hint, const Span& before, const Span& after) {
    out_.looks.push_back({kind, found, hint, before, after});
  }
  void altered(const Pair& pair, const Differences& found);
  [[nodiscard]] std::vector<std::size_t> untold(const Differences& found);
  void too_coarse(const Pair& pair, const Differences& found);
  void readings_gone(const Pair& pair, const Differences& found);
  void reported_alone(const Pair& pair, const Differences& found);
  void specimen_gone(const Pair& pair, const Differences& found);
  void specimen_added(const Pair& pair, const Differences& found);
  void repeated(const Pair& pair, const Differences& found);
  void input_repeated(const Pair& pair, const Differences& found);
  [[nodiscard]] bool same_input(const Pair& pair, std::size_t reading) const;
  void repeated_series();  // rows have few numbers each: a series is judged as a whole
  void moved(const Pair& pair);
  void gone();

  // whole.cpp
  void whose();  // project, mix and dates of the submittals
  void count_kept(const Pair& pair, const Differences& found);
  [[nodiscard]] bool left_behind(const Result& result) const;
  [[nodiscard]] std::size_t kept() const;
  [[nodiscard]] std::string kept_text() const;
  void job_mix_changed();
  void materials_changed();
  void class_changed(const ClauseProgress& clause);
  [[nodiscard]] std::string by_class(const ClauseProgress& clause) const;
  [[nodiscard]] std::set<check::CategoryId> tested_classes(std::uint32_t requirement) const;
};

}  // namespace plumbrule::followup
