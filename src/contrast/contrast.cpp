#include "contrast/contrast.hpp"

#include <algorithm>
#include <array>

#include "contrast/limits.hpp"
#include "contrast/pairing.hpp"
#include "explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

void note_if(bool differs, std::vector<std::string>& details, const std::string& text) {
  if (differs) {
    details.push_back(text);
  }
}

std::string stated(const std::string& text, const char* otherwise) { return text.empty() ? otherwise : text; }

std::string age(const check::Validity& validity) {
  return validity.count == 0 ? "any age" : std::to_string(validity.count) + (validity.days ? " days" : " months");
}

// What changed beside the limit itself and its rounding.
std::vector<std::string> conditions_changed(const check::Rules& before, const Demand& left, const check::Rules& after,
                                            const Demand& right, const std::string& now) {
  std::vector<std::string> out;
  note_if(left.subject != right.subject, out,
          "under " + stated(explain::conditions(before, *left.assertion), "no condition") + now + "under " +
              stated(explain::conditions(after, *right.assertion), "no condition"));
  note_if(statistic_of(left) != statistic_of(right), out, statistic_of(left) + now + statistic_of(right));
  note_if(beside_of(left) != beside_of(right), out, beside_of(left) + now + beside_of(right));
  note_if(left.requirement->severity != right.requirement->severity, out, severity_of(left) + now + severity_of(right));
  note_if(left.requirement->optional != right.requirement->optional, out, asked_of(left) + now + asked_of(right));
  const auto ways = [](const Demand& demand) { return demand.one->alternatives.size(); };
  note_if(ways(left) != ways(right), out,
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

void append(Change& change, std::vector<std::string> details, Kind kind) {
  change.kind = change.kind == Kind::same && !details.empty() ? kind : change.kind;
  change.details.insert(change.details.end(), details.begin(), details.end());
}

Change changed(const check::Rules& before, const Demand& left, const check::Rules& after, const Demand& right,
               bool one_family) {
  Difference limit = difference(before, *left.assertion, after, *right.assertion);
  Change out{limit.kind, &left, &right, std::move(limit.details), {}, false};
  const std::string now = one_family ? ", now " : ", there ";
  const auto conditions = conditions_changed(before, left, after, right, now);
  // A tighter number says nothing if less hangs on it, or if rounding takes it back.
  const bool directed = out.kind == Kind::tightened || out.kind == Kind::relaxed;
  if (directed && (!conditions.empty() || limit.undone_by_rounding)) {
    out.kind = Kind::conditions;
  }
  append(out, conditions, Kind::conditions);
  if (rounding_of(left) != rounding_of(right)) {
    append(out, {"compared " + rounding_of(left) + now + rounding_of(right)}, Kind::conditions);
  }
  if (one_family) {  // two agencies always word differently
    append(out, reworded(left, right), Kind::reworded);
  }
  return out;
}

// A demand for mixes of which its clause requires nothing on the other side.
Change waived(const Demand& left, const Demand& right, bool one_family) {
  const bool now = right.assertion == nullptr;
  const Kind kind = now ? (one_family ? Kind::relaxed : Kind::withdrawn) : one_family ? Kind::tightened : Kind::added;
  Change out{kind, &left, &right, {}, {}, false};
  if (one_family) {
    out.details.emplace_back(now ? "nothing is required here now" : "something is required here now");
  }
  return out;
}

// A demand for mixes of which the other side has nothing like it. `way`: its clause stands there too, without this way.
Change lone(const Demand& demand, bool is_new, bool way) {
  const Kind kind = way ? (is_new ? Kind::relaxed : Kind::tightened) : is_new ? Kind::added : Kind::withdrawn;
  Change out{kind, is_new ? nullptr : &demand, is_new ? &demand : nullptr, {}, {}, false};
  const std::size_t ways = demand.one->alternatives.size();
  if (way) {
    out.details.emplace_back(is_new ? "another way to comply" : "one way to comply is gone");
  } else if (ways > 1) {
    out.details.push_back("one of " + std::to_string(ways) + " ways to comply");
  }
  return out;
}

// Lists the pairs in the order of the specification before, and what stands on one side only at its place.
class Lister {
 public:
  Lister(const check::Rules& before, const check::Rules& after, Contrast& out)
      : before_(before),
        after_(after),
        out_(out),
        words_(words_of({&before, &after})),
        pairs_(pairs(before, out.before, after, out.after, words_)) {}

  void run() {
    for (std::size_t at = 0; at < out_.before.size(); ++at) {
      for (const Pair& pair : pairs_.of[at]) {
        if (out_.one_family) {
          added_until(pair.after);
        }
        add(at, pair);
      }
      add_alone(out_.before[at], pairs_.before_alone[at], out_.after, false);
    }
    added_until(out_.after.size());
  }

 private:
  const check::Rules& before_;
  const check::Rules& after_;
  Contrast& out_;
  Words words_;
  Pairs pairs_;
  std::size_t next_ = 0;  // of those after, the first that was not passed yet

  void added_until(std::size_t until) {
    for (; next_ < until; ++next_) {
      add_alone(out_.after[next_], pairs_.after_alone[next_], out_.before, true);
    }
  }

  // Where the clause itself stands on both sides, only a way to comply came or went.
  void add_alone(const Demand& demand, const Mixes& mixes, const std::vector<Demand>& others, bool is_new) {
    Mixes rest = mixes;
    if (out_.one_family && demand.one->alternatives.size() > 1) {
      for (const Demand& other : others) {
        if (other.requirement->number == demand.requirement->number && other.assertion != nullptr) {
          rest = without(rest, mixes_of(other.classes, other.exceptions, words_), words_);
        }
      }
    }
    if (const Mixes both = without(mixes, rest, words_); !both.empty()) {
      add(lone(demand, is_new, true), both);
    }
    if (!rest.empty()) {
      add(lone(demand, is_new, false), rest);
    }
  }
  void add(std::size_t at, const Pair& pair) {
    const Demand& left = out_.before[at];
    const Demand& right = out_.after[pair.after];
    const bool both = left.assertion != nullptr && right.assertion != nullptr;
    add(both ? changed(before_, left, after_, right, out_.one_family) : waived(left, right, out_.one_family),
        pair.mixes);
  }
  void add(Change change, const Mixes& mixes) {
    const auto as_printed = [&](const Demand* demand) {
      return demand == nullptr || mixes == mixes_of(demand->classes, {}, words_);
    };
    change.who = in_words(mixes, words_);
    change.narrowed = !as_printed(change.before) || !as_printed(change.after);
    out_.changes.push_back(std::move(change));
  }
};

}  // namespace

Contrast contrast(const check::Rules& before, const check::Rules& after) {
  Contrast out;
  out.before = demands(before);
  out.after = demands(after);
  out.one_family = before.specification->name == after.specification->name;
  Lister(before, after, out).run();
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
