#include "apply/contrast/contrast.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include "apply/contrast/conditions.hpp"
#include "apply/contrast/general.hpp"
#include "apply/contrast/limits.hpp"
#include "apply/contrast/pairing.hpp"
#include "apply/contrast/questions.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

void detail_if(bool differs, std::vector<std::string>& details, const std::string& text) {
  if (differs) {
    details.push_back(text);
  }
}

std::string age_counted(const check::Validity& validity) {
  return validity.count == 0 ? "any age" : explain::age_text(validity);
}

// What changed beside the limit itself and its rounding.
std::vector<std::string> conditions_changed(const check::Rules& before, const Demand& left, const check::Rules& after,
                                            const Demand& right, const std::string& now) {
  std::vector<std::string> out;
  detail_if(!same_conditions(before, *left.assertion, after, *right.assertion), out,
            under(before, *left.assertion) + now + under(after, *right.assertion));
  detail_if(statistic_of(left) != statistic_of(right), out, statistic_of(left) + now + statistic_of(right));
  detail_if(beside_of(before, left) != beside_of(after, right), out,
            beside_of(before, left) + now + beside_of(after, right));
  detail_if(left.requirement->severity != right.requirement->severity, out,
            severity_of(left) + now + severity_of(right));
  detail_if(left.requirement->optional != right.requirement->optional, out, asked_of(left) + now + asked_of(right));
  const auto ways = [](const Demand& demand) { return demand.one->alternatives.size(); };
  detail_if(ways(left) != ways(right), out,
            std::to_string(ways(left)) + (ways(left) == 1 ? " way" : " ways") + " to comply" + now +
                std::to_string(ways(right)));
  const check::Validity& then = left.requirement->validity;
  const check::Validity& other = right.requirement->validity;
  detail_if(!check::same_age(then, other), out,
            "tests of " + age_counted(then) + " counted" + now + "of " + age_counted(other));
  return out;
}

// Texts of the clause, which all of its demands share.
std::vector<std::string> clause_reworded(const check::Requirement& then, const check::Requirement& now) {
  std::vector<std::string> out;
  detail_if(then.number != now.number, out, "clause " + then.number + " is clause " + now.number);
  detail_if(then.title != now.title, out, "title \"" + then.title + "\" is \"" + now.title + "\"");
  detail_if(then.because != now.because, out, "the reason is worded anew");
  detail_if(then.mend != now.mend, out, "what to mend is worded anew");
  detail_if(then.provenance.source != now.provenance.source, out, "the source is worded anew");
  detail_if(then.provenance.note != now.provenance.note, out, "the note is worded anew");
  return out;
}

// That of a clause without one is that of its specification, where it is told.
void status_reworded(const check::Rules& before, const check::Requirement& then, const check::Rules& after,
                     const check::Requirement& now, std::vector<std::string>& out) {
  const std::string left = explain::standing_text(then.provenance);
  const std::string right = explain::standing_text(now.provenance);
  const bool follows = then.provenance.status == before.specification->provenance.status &&
                       now.provenance.status == after.specification->provenance.status &&
                       then.provenance.status_note == now.provenance.status_note;
  detail_if(left != right && !follows, out, "limits " + left + ", now " + right);
}

void add_details(Change& change, std::vector<std::string> details, ChangeKind kind) {
  change.kind = change.kind == ChangeKind::same && !details.empty() ? kind : change.kind;
  change.details.insert(change.details.end(), details.begin(), details.end());
}

std::string passes_text(ChangeKind passes, bool one_family) {
  const std::string where = one_family ? " now" : " there";
  return passes == ChangeKind::tightened ? ": less passes" + where
         : passes == ChangeKind::relaxed ? ": more passes" + where
         : passes == ChangeKind::moved   ? ": other values pass" + where
                                         : "";
}

Change changed(const check::Rules& before, const Demand& left, const check::Rules& after, const Demand& right,
               bool one_family) {
  Difference limit = difference(before, *left.assertion, after, *right.assertion);
  Change out{limit.kind, &left, &right, std::move(limit.details), {}, false};
  const std::string now = one_family ? ", now " : ", there ";
  const auto conditions = conditions_changed(before, left, after, right, now);
  // A tighter number says nothing if less hangs on it.
  if (!conditions.empty() && (out.kind == ChangeKind::tightened || out.kind == ChangeKind::relaxed)) {
    out.kind = ChangeKind::conditions;
  }
  add_details(out, conditions, ChangeKind::conditions);
  if (limit.rounding) {
    const std::string passes = passes_text(limit.passes, one_family);
    add_details(out, {"compared " + rounding_of(before, left) + now + rounding_of(after, right) + passes},
                ChangeKind::conditions);
  }
  return out;
}

// A demand for mixes of which its clause requires nothing on the other side.
Change waived(const Demand& left, const Demand& right, bool one_family) {
  const bool now = right.assertion == nullptr;
  const ChangeKind kind = now          ? (one_family ? ChangeKind::relaxed : ChangeKind::withdrawn)
                          : one_family ? ChangeKind::tightened
                                       : ChangeKind::added;
  Change out{kind, &left, &right, {}, {}, false};
  if (one_family) {
    out.details.emplace_back(now ? "nothing is required here now" : "something is required here now");
  }
  return out;
}

// What left_there on the other side of the clause of a demand that has no counterpart there: nothing of it; another of
// its ways to comply; or the demand's own way, without this demand.
enum class LeftOnOtherSide : std::uint8_t { nothing, another_way, own_way };

// A demand for mixes of which the other side has nothing like it.
Change without_counterpart(const Demand& demand, bool is_new, LeftOnOtherSide left_there) {
  const bool way = left_there == LeftOnOtherSide::another_way;
  const ChangeKind kind = way      ? (is_new ? ChangeKind::relaxed : ChangeKind::tightened)
                          : is_new ? ChangeKind::added
                                   : ChangeKind::withdrawn;
  Change out{kind, is_new ? nullptr : &demand, is_new ? &demand : nullptr, {}, {}, false};
  const std::size_t ways = demand.one->alternatives.size();
  if (way) {
    out.details.emplace_back(is_new ? "another way to comply" : "one way to comply is gone");
  } else if (ways > 1) {
    out.details.push_back((left_there == LeftOnOtherSide::own_way ? "in one of " : "one of ") + std::to_string(ways) +
                          " ways to comply");
  }
  return out;
}

// Lists the pairs in the order of the specification before, and what stands on one side only at its place.
class ChangeLister {
 public:
  ChangeLister(const check::Rules& before, const check::Rules& after, Contrast& out)
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
      add_alone(out_.before[at], pairs_.before_alone[at], false);
    }
    added_until(out_.after.size());
    out_.general = general(before_, after_, out_);
    for (General& one : asked_.told()) {
      out_.general.push_back(std::move(one));
    }
  }

 private:
  const check::Rules& before_;
  const check::Rules& after_;
  Contrast& out_;
  Words words_;
  Pairs pairs_;
  std::set<std::pair<const check::Requirement*, const check::Requirement*>> worded_clauses_;
  std::set<std::pair<const check::Case*, const check::Case*>> worded_cases_;
  AskedOtherwise asked_;
  std::size_t next_ = 0;  // of those after, the first that was not passed yet

  void added_until(std::size_t until) {
    for (; next_ < until; ++next_) {
      add_alone(out_.after[next_], pairs_.after_alone[next_], true);
    }
  }

  // For which mixes the own way of a demand left_there on the other side, or other ways of its clause.
  struct Ways {
    Mixes own, others;
  };
  [[nodiscard]] Ways ways_left_there(const Demand& demand, bool is_new) const {
    Ways out;
    for (std::size_t at = 0; at < out_.before.size(); ++at) {
      for (const Pair& pair : pairs_.of[at]) {
        const Demand& left = out_.before[at];
        const Demand& right = out_.after[pair.after];
        const Demand& beside = is_new ? right : left;
        if (beside.requirement == demand.requirement && left.assertion != nullptr && right.assertion != nullptr) {
          const bool own = beside.one == demand.one && beside.alternative == demand.alternative;
          Mixes& of = own ? out.own : out.others;
          of.insert(of.end(), pair.mixes.begin(), pair.mixes.end());
        }
      }
    }
    return out;
  }

  // Ways that all came or went are another clause; only where one left_there did another come or go.
  void add_alone(const Demand& demand, Mixes mixes, bool is_new) {
    if (out_.one_family && demand.one->alternatives.size() > 1) {
      const Ways ways = ways_left_there(demand, is_new);
      mixes = add_part(demand, mixes, ways.own, is_new, LeftOnOtherSide::own_way);
      mixes = add_part(demand, mixes, ways.others, is_new, LeftOnOtherSide::another_way);
    }
    if (!mixes.empty()) {
      add(without_counterpart(demand, is_new, LeftOnOtherSide::nothing), mixes);
    }
  }

  // Gives those that are left.
  Mixes add_part(const Demand& demand, const Mixes& mixes, const Mixes& part, bool is_new, LeftOnOtherSide left_there) {
    if (const Mixes both = common(mixes, part, words_); !both.empty()) {
      add(without_counterpart(demand, is_new, left_there), both);
    }
    return without(mixes, part, words_);
  }

  // Texts that many demands share are told with the first of them.
  void add_texts(Change& change) {
    const Demand& left = *change.before;
    const Demand& right = *change.after;
    std::vector<std::string> texts;
    if (worded_clauses_.emplace(left.requirement, right.requirement).second) {
      texts = clause_reworded(*left.requirement, *right.requirement);
      status_reworded(before_, *left.requirement, after_, *right.requirement, texts);
    }
    if (worded_cases_.emplace(left.one, right.one).second) {
      detail_if(left.one->cite != right.one->cite, texts,
                "cited \"" + left.one->cite + "\", now \"" + right.one->cite + "\"");
    }
    add_details(change, texts, ChangeKind::reworded);
  }

  Change both(const Demand& left, const Demand& right, const Mixes& mixes) {
    Change out = changed(before_, left, after_, right, out_.one_family);
    const Questions then = must_state(before_, left, mixes, words_);
    const Questions now = must_state(after_, right, mixes, words_);
    if (!out_.one_family) {
      asked_.add(then, left, now, right);
    } else if (then != now) {
      add_details(out, {to_state(then) + ", now " + to_state(now)}, ChangeKind::conditions);
    }
    if (out_.one_family) {  // two agencies always word differently
      add_texts(out);
    }
    return out;
  }

  void add(std::size_t at, const Pair& pair) {
    const Demand& left = out_.before[at];
    const Demand& right = out_.after[pair.after];
    const bool demanded = left.assertion != nullptr && right.assertion != nullptr;
    add(demanded ? both(left, right, pair.mixes) : waived(left, right, out_.one_family), pair.mixes);
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
  ChangeLister(before, after, out).run();
  return out;
}

bool differs(const Contrast& contrast) {
  const auto more_than_texts = [](const auto& one) {
    return one.kind != ChangeKind::same && one.kind != ChangeKind::reworded;
  };
  return std::any_of(contrast.changes.begin(), contrast.changes.end(), more_than_texts) ||
         std::any_of(contrast.general.begin(), contrast.general.end(), more_than_texts);
}

std::string_view kind_text(ChangeKind kind, bool one_family) {
  constexpr std::array<std::string_view, 8> editions{
      "tightened", "relaxed", "moved", "added", "withdrawn", "conditions changed", "reworded only", "the same"};
  constexpr std::array<std::string_view, 8> agencies{
      "tighter",          "looser",           "moved",   "only in the second", "only in the first",
      "other conditions", "worded otherwise", "the same"};
  return (one_family ? editions : agencies).at(static_cast<std::size_t>(kind));
}

}  // namespace plumbrule::contrast
