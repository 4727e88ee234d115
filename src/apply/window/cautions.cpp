// What keeps a window from being the whole answer.

#include <algorithm>

#include "apply/window/words.hpp"

namespace plumbrule::window {
namespace {

void add_caution(std::vector<std::string>& out, std::string text) {
  if (!text.empty()) {
    out.push_back(std::move(text));
  }
}

// Clauses that are shown at the choice by a line alone.
std::string only_by_a_line(const Words& words) {
  std::vector<std::size_t> all;
  const Window& window = words.window();
  for (std::size_t at = 0; at < window.clauses.size(); ++at) {
    const Clause& one = window.clauses[at];
    if (one.role == Role::varies && one.counts && one.finding.verdict == Verdict::not_shown) {
      all.push_back(at);
    }
  }
  return !window.chosen || all.empty()
             ? ""
             : "at the job mix itself " + words.names(all) + (all.size() > 1 ? " are" : " is") +
                   " not shown: a test there must confirm the line";
}

// Results that are older than the clause allows. Where they are at the job mix and nothing else is, its verdict says
// it.
std::string passed_over(const Words& words, const Clause& clause) {
  const auto& choice = words.window().choice;
  const bool by_verdict =
      clause.finding.verdict == Verdict::not_shown && clause.finding.reason == evaluate::Reason::too_old;
  std::string places;
  std::size_t count = 0;
  for (const TooOld& one : clause.too_old) {
    if (by_verdict && choice && one.at == *choice) {
      continue;
    }
    const source::Span& place = words.context().evidence.results[one.result].span;
    places += (count == 0 ? "" : ", ") + plain(one.at) + " [" + words.context().sources.place_text(place) + "]";
    ++count;
  }
  return count == 0 ? ""
                    : words.name(clause) + ": passed over as older than the clause allows: the " +
                          (count == 1 ? "result at " : "results at ") + places;
}

// Clauses that do not vary, but are not shown.
std::string left_open_beside(const Words& words) {
  const Window& window = words.window();
  const auto open = std::count_if(window.clauses.begin(), window.clauses.end(), [&](const Clause& one) {
    return one.counts && one.role == Role::constant && !words.requirement(one).optional &&
           one.finding.verdict == Verdict::not_shown;
  });
  return open == 0 ? ""
                   : (window.pieces.empty() ? "" : "this is the window of what was tested only: ") +
                         std::to_string(open) + (open == 1 ? " clause is" : " clauses are") + " not shown";
}

// Clauses that fail and do not vary: those that limit the variable itself and fail by its value, or all others.
std::vector<std::size_t> failing_beside(const Window& window, bool by_value) {
  std::vector<std::size_t> out;
  for (std::size_t at = 0; at < window.clauses.size(); ++at) {
    const Clause& one = window.clauses[at];
    const bool limited =
        one.role == Role::own_limit && window.choice && one.profile.at(*window.choice) == Verdict::fails;
    if (one.counts && one.role != Role::varies && one.finding.verdict == Verdict::fails && limited == by_value) {
      out.push_back(at);
    }
  }
  return out;
}

std::string mended_by_value(const Words& words) {
  const std::vector<std::size_t> all = failing_beside(words.window(), true);
  return all.empty() ? ""
                     : words.names(all) + (all.size() == 1 ? " fails" : " fail") +
                           " at the value of the job mix: only another value mends that";
}

std::string not_mended(const Words& words) {
  const std::vector<std::size_t> all = failing_beside(words.window(), false);
  return all.empty()
             ? ""
             : words.names(all) + (all.size() == 1 ? " fails" : " fail") + " at the job mix, and " +
                   (all.size() == 1 ? "was" : "were") + " not tested at other values: the window does not mend that";
}

std::string few_tested(const Window& window) {
  const std::size_t count = window.tested.size();
  return count == 0   ? "no result stands at a stated value of it"
         : count >= 3 ? ""
                      : "tested at " + std::to_string(count) +
                            (count == 1 ? " value only" : " values only; three or more show a trend");
}

}  // namespace

std::vector<std::string> cautions(const Words& words) {
  const Window& window = words.window();
  std::vector<std::string> out;
  add_caution(out, window.submittal_has_errors ? "the submittal has errors; what they touch is not shown" : "");
  add_caution(out, left_open_beside(words));
  add_caution(out, mended_by_value(words));
  add_caution(out, not_mended(words));
  add_caution(out, only_by_a_line(words));
  for (const Clause& one : window.clauses) {
    add_caution(out, passed_over(words, one));
  }
  add_caution(out, few_tested(window));
  return out;
}

}  // namespace plumbrule::window
