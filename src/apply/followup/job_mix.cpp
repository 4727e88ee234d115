#include "apply/followup/job_mix.hpp"

#include <algorithm>

#include "base/diagnose/quote.hpp"

namespace plumbrule::followup {
namespace {

using diagnose::quoted;

bool as_before(const Result& from, const Result& to, bool restyled, std::size_t changes) {
  return changes == 0 && from.tested == to.tested && (restyled || from.specimens.size() == to.specimens.size());
}

}  // namespace

// It stood at the job mix, which went elsewhere, and nothing of its kind was tested there.
bool JobMixFollower::left_behind(const Result& result) const {
  const std::vector<Result>& all = both_.after.evidence.results;
  return result.design != evidence::Design::job_mix && std::none_of(all.begin(), all.end(), [&](const Result& one) {
           return !one.declared && one.measure == result.measure && one.design == evidence::Design::job_mix &&
                  same_conditions(both_.after, one, result);
         });
}

// Values that the job mix declares anew, and the tests at the job mix, a series as one.
void JobMixFollower::count(const Pair& pair, const Differences& found) {
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
  if (from.declared) {
    if (!found.altered.empty() && to.reported.usable()) {
      redeclared_.emplace_back(to.measure, both_.out.values[found.altered.front()]);
    }
    return;
  }
  const bool at_job_mix = to.design == evidence::Design::job_mix;
  if (pair.moved || from.design != evidence::Design::job_mix || (!at_job_mix && !left_behind(to))) {
    return;
  }
  const bool series = to.series != check::none;
  Test& test = tests_.try_emplace({series, series ? to.series : pair.after}).first->second;
  test.measure = to.measure;
  test.kept =
      test.kept && as_before(from, to, found.restyled, found.altered.size() + found.bare + (found.reported ? 1U : 0U));
}

std::size_t JobMixFollower::kept() const {
  return static_cast<std::size_t>(
      std::count_if(tests_.begin(), tests_.end(), [](const auto& entry) { return entry.second.kept; }));
}

bool JobMixFollower::mostly_kept() const { return 2 * kept() > tests_.size(); }

std::string JobMixFollower::kept_text() const {
  return "; tests at the job mix that are those of before, with their dates: " + std::to_string(kept()) + " of " +
         std::to_string(tests_.size());
}

// Tests of the aggregate alone do not depend on the job mix; most tests do, and so does one that measures what it
// declares.
void JobMixFollower::look() const {
  const bool measures_it = std::any_of(tests_.begin(), tests_.end(), [&](const auto& entry) {
    return entry.second.kept && std::any_of(redeclared_.begin(), redeclared_.end(),
                                            [&](const auto& one) { return one.first == entry.second.measure; });
  });
  if (redeclared_.empty() || (!measures_it && !mostly_kept())) {
    return;
  }
  const ValueChange& change = redeclared_.front().second;
  const std::size_t others = redeclared_.size() - 1;
  both_.look(LookKind::job_mix_changed,
             change.subject + " was " + quoted(change.before) + " and is " + quoted(change.after) +
                 (others > 0 ? " (and " + std::to_string(others) + " more)" : "") + kept_text(),
             "ask which mix the tests are of", change.before_place, change.after_place);
}

}  // namespace plumbrule::followup
