#include "contrast/contrast.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <map>
#include <tuple>

#include "contrast/limits.hpp"
#include "explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

constexpr std::size_t unpaired = SIZE_MAX;

// The key by which two demands are the same in a round of pairing; empty: not in this round.
enum class Round : std::uint8_t { clause_subject_who, subject_who, clause_measure };

std::string key_of(const Demand& demand, Round round) {
  const std::string& number = demand.requirement->number;
  switch (round) {
    case Round::clause_subject_who:
      return number + "\n" + demand.subject + "\n" + demand.who;
    case Round::subject_who:
      return demand.subject.empty() ? "" : demand.subject + "\n" + demand.who;
    default:
      return demand.measure.empty() ? "" : number + "\n" + demand.measure;
  }
}

// How much two demands are for the same classes: 1 for the same, 0 if no mix can fall under both.
double overlap(const Demand& left, const Demand& right) {
  double out = 1;
  for (const auto& [category, words] : left.classes) {
    const auto other = right.classes.find(category);
    if (other == right.classes.end()) {
      out *= 0.5;  // one of them asks, the other is for all
      continue;
    }
    std::vector<std::string> both;
    std::set_intersection(words.begin(), words.end(), other->second.begin(), other->second.end(),
                          std::back_inserter(both));
    const std::size_t either = words.size() + other->second.size() - both.size();
    out *= static_cast<double>(both.size()) / static_cast<double>(either);
  }
  for (const auto& [category, words] : right.classes) {
    out *= left.classes.count(category) > 0 ? 1 : 0.5;
  }
  return out;
}

class Pairing {
 public:
  Pairing(const std::vector<Demand>& before, const std::vector<Demand>& after)
      : before_(before), after_(after), to_after_(before.size(), unpaired), to_before_(after.size(), unpaired) {}

  void run(Round round) {
    std::map<std::string, std::vector<std::size_t>> open;
    for (std::size_t at = after_.size(); at-- > 0;) {
      if (const std::string key = key_of(after_[at], round); to_before_[at] == unpaired && !key.empty()) {
        open[key].push_back(at);
      }
    }
    for (std::size_t at = 0; at < before_.size(); ++at) {
      const auto found = open.find(key_of(before_[at], round));
      if (to_after_[at] == unpaired && found != open.end() && !found->second.empty()) {
        to_after_[at] = found->second.back();
        to_before_[found->second.back()] = at;
        found->second.pop_back();
      }
    }
  }
  // What is about the same subject, for classes that overlap: those first that overlap most, then those of one limit.
  void run_by_overlap(const check::Rules& before, const check::Rules& after) {
    std::vector<std::tuple<double, bool, std::size_t, std::size_t>> candidates;
    for (std::size_t at = 0; at < before_.size(); ++at) {
      for (std::size_t to = 0; to < after_.size(); ++to) {
        const bool open = to_after_[at] == unpaired && to_before_[to] == unpaired && !before_[at].subject.empty();
        if (open && before_[at].subject == after_[to].subject && overlap(before_[at], after_[to]) > 0) {
          const bool differs =
              difference(before, *before_[at].assertion, after, *after_[to].assertion).kind != Kind::same;
          candidates.emplace_back(-overlap(before_[at], after_[to]), differs, at, to);
        }
      }
    }
    std::sort(candidates.begin(), candidates.end());
    for (const auto& [rank, differs, at, to] : candidates) {
      if (to_after_[at] == unpaired && to_before_[to] == unpaired) {
        to_after_[at] = to;
        to_before_[to] = at;
      }
    }
  }
  [[nodiscard]] std::size_t after(std::size_t before) const { return to_after_[before]; }
  [[nodiscard]] bool is_new(std::size_t after) const { return to_before_[after] == unpaired; }

 private:
  const std::vector<Demand>& before_;
  const std::vector<Demand>& after_;
  std::vector<std::size_t> to_after_, to_before_;
};

void note_if(bool differs, std::vector<std::string>& details, const std::string& text) {
  if (differs) {
    details.push_back(text);
  }
}

std::string stated(const std::string& text, const char* otherwise) { return text.empty() ? otherwise : text; }

std::string age(const check::Validity& validity) {
  return validity.count == 0 ? "any age" : std::to_string(validity.count) + (validity.days ? " days" : " months");
}

// What changed beside the limit itself.
std::vector<std::string> conditions_changed(const check::Rules& before, const Demand& left, const check::Rules& after,
                                            const Demand& right) {
  const std::string now = before.specification->name == after.specification->name ? ", now " : ", there ";
  std::vector<std::string> out;
  note_if(left.who != right.who, out, "for " + stated(left.who, "all") + now + "for " + stated(right.who, "all"));
  if (left.assertion != nullptr && right.assertion != nullptr) {
    note_if(left.subject != right.subject, out,
            "under " + stated(explain::conditions(before, *left.assertion), "no condition") + now + "under " +
                stated(explain::conditions(after, *right.assertion), "no condition"));
    note_if(statistic_of(left) != statistic_of(right), out, statistic_of(left) + now + statistic_of(right));
    note_if(rounding_of(left) != rounding_of(right), out, "compared " + rounding_of(left) + now + rounding_of(right));
    note_if(beside_of(left) != beside_of(right), out, beside_of(left) + now + beside_of(right));
  }
  note_if(weight_of(left) != weight_of(right), out, weight_of(left) + now + weight_of(right));
  const auto ways = [](const Demand& demand) { return demand.one->alternatives.size(); };
  note_if(ways(left) != ways(right) && ways(left) > 0 && ways(right) > 0, out,
          std::to_string(ways(left)) + (ways(left) == 1 ? " way" : " ways") + " to comply" + now +
              std::to_string(ways(right)));
  const check::Validity& then = left.requirement->validity;
  const check::Validity& other = right.requirement->validity;
  note_if(age(then) != age(other), out, "tests of " + age(then) + " counted" + now + "of " + age(other));
  return out;
}

std::vector<std::string> reworded(const Demand& left, const Demand& right) {
  std::vector<std::string> out;
  const check::Requirement& then = *left.requirement;
  const check::Requirement& now = *right.requirement;
  note_if(then.number != now.number, out, "clause " + then.number + " is clause " + now.number);
  note_if(then.title != now.title, out, "title \"" + then.title + "\" is \"" + now.title + "\"");
  note_if(left.one->cite != right.one->cite, out, "cited \"" + left.one->cite + "\", now \"" + right.one->cite + "\"");
  note_if(then.because != now.because, out, "the reason is worded anew");
  note_if(then.mend != now.mend, out, "what to mend is worded anew");
  return out;
}

Change pair(const check::Rules& before, const Demand& left, const check::Rules& after, const Demand& right,
            bool one_family) {
  Change out{Kind::same, &left, &right, {}};
  if (left.assertion != nullptr && right.assertion != nullptr) {
    Difference limit = difference(before, *left.assertion, after, *right.assertion);
    out.kind = limit.kind;
    out.details = std::move(limit.details);
  }
  const auto add = [&](std::vector<std::string> details, Kind kind) {
    out.kind = out.kind == Kind::same && !details.empty() ? kind : out.kind;
    out.details.insert(out.details.end(), details.begin(), details.end());
  };
  add(conditions_changed(before, left, after, right), Kind::conditions);
  if (one_family) {  // two agencies always word differently
    add(reworded(left, right), Kind::reworded);
  }
  return out;
}

// A way to comply that came or went changes a clause that stands on both sides.
Kind lone_kind(const Demand& demand, const std::vector<Demand>& others, bool is_new) {
  if (demand.assertion == nullptr) {
    return is_new ? Kind::relaxed : Kind::tightened;
  }
  const bool alternative =
      demand.one->alternatives.size() > 1 && std::any_of(others.begin(), others.end(), [&](const Demand& other) {
        return other.requirement->number == demand.requirement->number;
      });
  if (alternative) {
    return is_new ? Kind::relaxed : Kind::tightened;
  }
  return is_new ? Kind::added : Kind::withdrawn;
}

Change lone(const Demand& demand, const std::vector<Demand>& others, bool is_new, bool one_family) {
  const Kind kind = one_family ? lone_kind(demand, others, is_new) : is_new ? Kind::added : Kind::withdrawn;
  Change out{kind, is_new ? nullptr : &demand, is_new ? &demand : nullptr, {}};
  if (demand.assertion == nullptr) {
    out.details.emplace_back(is_new ? "nothing is required here now" : "something is required here now");
  } else if (kind == Kind::relaxed || kind == Kind::tightened) {
    out.details.emplace_back(is_new ? "another way to comply" : "one way to comply is gone");
  }
  return out;
}

}  // namespace

Contrast contrast(const check::Rules& before, const check::Rules& after) {
  Contrast out;
  out.before = demands(before);
  out.after = demands(after);
  out.one_family = before.specification->name == after.specification->name;
  const bool one_family = out.one_family;
  Pairing pairs(out.before, out.after);
  if (one_family) {
    pairs.run(Round::clause_subject_who);
  }
  pairs.run(Round::subject_who);
  if (one_family) {
    pairs.run(Round::clause_measure);
  }
  pairs.run_by_overlap(before, after);
  std::size_t next = 0;  // of those after, the first that was not passed yet
  const auto add_new = [&](std::size_t until) {
    for (; next < until; ++next) {
      if (pairs.is_new(next)) {
        out.changes.push_back(lone(out.after[next], out.before, true, one_family));
      }
    }
  };
  for (std::size_t at = 0; at < out.before.size(); ++at) {
    const std::size_t other = pairs.after(at);
    if (other == unpaired) {
      out.changes.push_back(lone(out.before[at], out.after, false, one_family));
      continue;
    }
    if (one_family) {
      add_new(std::max(next, other));
    }
    out.changes.push_back(pair(before, out.before[at], after, out.after[other], one_family));
  }
  add_new(out.after.size());
  return out;
}

std::string_view kind_text(Kind kind, bool one_family) {
  constexpr std::array<std::string_view, 8> editions{
      "tightened", "relaxed", "moved", "added", "withdrawn", "conditions changed", "reworded only", "the same"};
  constexpr std::array<std::string_view, 8> agencies{
      "tighter",          "looser",           "moved",   "only in the second", "only in the first",
      "other conditions", "worded otherwise", "the same"};
  return (one_family ? editions : agencies).at(static_cast<std::size_t>(kind));
}

}  // namespace plumbrule::contrast
