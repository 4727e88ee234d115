#include "contrast/limits.hpp"

#include <algorithm>
#include <set>

#include "explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

using quantity::Decimal;

Decimal magnitude(const Decimal& value) { return value < Decimal{0} ? -value : value; }

std::string rounded(const Decimal& value, std::string_view place) {
  return quantity::round_to(value, Decimal::of(place), quantity::Ties::to_even).stripped().text();
}

// A difference of two temperatures is no temperature.
std::string amount_text(const check::Rules& rules, const Decimal& amount, quantity::UnitId unit) {
  const std::string& text = rules.units.at(rules.units.difference(unit)).text;
  const std::string named = text == "%" ? "percentage points" : text;
  return explain::show(amount.stripped()) + (named.empty() ? "" : " " + named);
}

struct Side {
  const char* name;
  bool upper;     // a smaller one is tighter
  bool interval;  // the amount is a difference (a tolerance)
};

class Ends {
 public:
  Ends(const check::Rules& before, const check::Limit& left, const check::Rules& after, const check::Limit& right)
      : before_(before), left_(left), after_(after), right_(right) {}

  Difference run() {
    end({"upper limit", true, false}, left_.high, right_.high);
    end({"lower limit", false, false}, left_.low, right_.low);
    end({"tolerance", true, true}, left_.tolerance, right_.tolerance);
    out_.kind = tighter_ && looser_ ? Kind::moved : tighter_ ? Kind::tightened : looser_ ? Kind::relaxed : Kind::same;
    return std::move(out_);
  }

 private:
  const check::Rules& before_;
  const check::Limit& left_;
  const check::Rules& after_;
  const check::Limit& right_;
  Difference out_;
  bool tighter_ = false, looser_ = false;

  void note(bool tighter, const std::string& text) {
    (tighter ? tighter_ : looser_) = true;
    out_.details.push_back(text);
  }

  [[nodiscard]] Decimal in_left_unit(const Side& side, const Decimal& value) const {
    const auto of = [&](const check::Rules& rules, quantity::UnitId id) {
      return rules.units.at(side.interval ? rules.units.difference(id) : id);
    };
    return quantity::convert(value, of(after_, right_.unit), of(before_, left_.unit));
  }

  void end(const Side& side, const std::optional<check::End>& left, const std::optional<check::End>& right) {
    const std::string name = side.name;
    if (!left || !right) {
      if (left || right) {
        note(right.has_value(), right ? (side.interval ? "a "
                                         : side.upper  ? "an "
                                                       : "a ") +
                                            name + " was added"
                                      : "the " + name + " was dropped");
      }
      return;
    }
    const Decimal now = in_left_unit(side, right->value);
    const Decimal change = now - left->value;
    if (change.zero()) {
      return;
    }
    std::string text = "the " + name + " is " + amount_text(before_, magnitude(change), left_.unit) +
                       (change < Decimal{0} ? " lower" : " higher");
    if (!left->value.zero() && before_.units.at(left_.unit).text != "%") {
      text += " (" + rounded(magnitude(change / left->value) * Decimal{100}, "0.01") + " %)";
    }
    note((change < Decimal{0}) == side.upper, text);
    out_.undone_by_rounding = out_.undone_by_rounding || !follows(side, *left, *right, change < Decimal{0});
  }

  // Whether rounding moves the bound on unrounded values the way in which the number moved.
  [[nodiscard]] bool follows(const Side& side, const check::End& left, const check::End& right, bool lower) const {
    const Decimal then = threshold_of(left, side.upper).value;
    const Decimal now = in_left_unit(side, threshold_of(right, side.upper).value);
    return lower ? now < then : now > then;
  }
};

std::string only_in(const std::set<std::string>& one, const std::set<std::string>& other) {
  std::string out;
  for (const std::string& word : one) {
    out += other.count(word) > 0 ? "" : (out.empty() ? "" : ", ") + explain::spaced(word);
  }
  return out;
}

Difference of_words(const std::set<std::string>& left, const std::set<std::string>& right) {
  Difference out;
  const std::string gone = only_in(left, right);
  const std::string come = only_in(right, left);
  if (!gone.empty()) {
    out.details.push_back("no longer allowed: " + gone);
  }
  if (!come.empty()) {
    out.details.push_back("now allowed: " + come);
  }
  out.kind = !gone.empty() && !come.empty() ? Kind::moved
             : !gone.empty()                ? Kind::tightened
             : !come.empty()                ? Kind::relaxed
                                            : Kind::same;
  return out;
}

}  // namespace

quantity::Threshold threshold_of(const check::End& end, bool upper) {
  if (!end.rounding.place) {
    return {end.value, true};
  }
  return (upper ? quantity::fold_at_most : quantity::fold_at_least)(end.value, *end.rounding.place, end.rounding.ties);
}

bool stricter(const quantity::Threshold& left, const quantity::Threshold& right, bool upper) {
  if (left.value == right.value) {
    return !left.inclusive && right.inclusive;
  }
  return upper ? left.value < right.value : left.value > right.value;
}

Difference difference(const check::Rules& before, const check::Assertion& left, const check::Rules& after,
                      const check::Assertion& right) {
  const bool left_words = before.measures[left.measure].type.is_word();
  const bool right_words = after.measures[right.measure].type.is_word();
  if (left_words != right_words) {
    return {Kind::moved, {"one is a quantity and the other a word: they cannot be compared"}};
  }
  if (left_words) {
    return of_words(allowed_words(before, left), allowed_words(after, right));
  }
  if (!quantity::convertible(before.units.at(left.limit.unit), after.units.at(right.limit.unit))) {
    return {Kind::moved, {"the units are of another kind: the amounts cannot be compared"}};
  }
  return Ends(before, left.limit, after, right.limit).run();
}

}  // namespace plumbrule::contrast
