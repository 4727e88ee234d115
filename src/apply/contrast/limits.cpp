#include "apply/contrast/limits.hpp"

#include <algorithm>
#include <set>

#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

using quantity::Decimal;

Decimal magnitude(const Decimal& value) { return value < Decimal{0} ? -value : value; }

std::string rounded(const Decimal& value, std::string_view place) {
  return quantity::round_to(value, Decimal::of(place), quantity::Ties::to_even).stripped().text();
}

// A difference of two temperatures is no temperature.
std::string amount_text(const check::Rules& rules, const Decimal& amount, quantity::UnitId unit) {
  return explain::apart(amount.stripped(), rules.units.at(rules.units.difference(unit)).text);
}

struct Side {
  const char* name;
  bool upper;     // a smaller one is tighter
  bool interval;  // the amount is a difference (a tolerance)
};

// Which ways the ends of a limit went.
struct Ways {
  bool tighter = false, looser = false;
  void add(bool is_tighter) { (is_tighter ? tighter : looser) = true; }
  [[nodiscard]] bool both() const { return tighter && looser; }
  [[nodiscard]] bool any() const { return tighter || looser; }
  [[nodiscard]] ChangeKind kind() const {
    return both()    ? ChangeKind::moved
           : tighter ? ChangeKind::tightened
           : looser  ? ChangeKind::relaxed
                     : ChangeKind::same;
  }
};

class Ends {
 public:
  Ends(const check::Rules& before, const check::Limit& left, const check::Rules& after, const check::Limit& right)
      : before_(before), left_(left), after_(after), right_(right) {}

  Difference run() {
    end({"upper limit", true, false}, left_.high, right_.high);
    end({"lower limit", false, false}, left_.low, right_.low);
    end({"tolerance", true, true}, left_.tolerance, right_.tolerance);
    if (!numbers_.any()) {
      out_.passes = passes_.kind();
    } else if (taken_back_ && !numbers_.both() && !passes_.both()) {
      out_.kind = ChangeKind::conditions;
    } else {
      out_.kind = passes_.both() ? ChangeKind::moved : numbers_.kind();
    }
    return std::move(out_);
  }

 private:
  const check::Rules& before_;
  const check::Limit& left_;
  const check::Rules& after_;
  const check::Limit& right_;
  Difference out_;
  Ways numbers_, passes_;    // as printed, and with rounding
  bool taken_back_ = false;  // a number moved, and by rounding what passes did not follow

  [[nodiscard]] Decimal in_left_unit(bool interval, const Decimal& value) const {
    const auto of = [&](const check::Rules& rules, quantity::UnitId id) {
      return rules.units.at(interval ? rules.units.difference(id) : id);
    };
    return quantity::convert(value, of(after_, right_.unit), of(before_, left_.unit));
  }

  void end(const Side& side, const std::optional<check::End>& left, const std::optional<check::End>& right) {
    if (left && right) {
      compare(side, *left, *right);
    } else if (left || right) {
      numbers_.add(right.has_value());
      passes_.add(right.has_value());
      const std::string name = side.name;
      out_.details.push_back(right ? (side.upper && !side.interval ? "an " : "a ") + name + " was added"
                                   : "the " + name + " was dropped");
    }
  }

  void compare(const Side& side, const check::End& left, const check::End& right) {
    const Decimal change = in_left_unit(side.interval, right.value) - left.value;
    const bool other_rounding = !same_rounding(left.rounding, right.rounding);
    out_.rounding = out_.rounding || other_rounding;
    if (change.zero() && !other_rounding) {
      return;
    }
    const quantity::Threshold then = threshold_of(left, side.upper);
    quantity::Threshold now = threshold_of(right, side.upper);
    now.value = in_left_unit(side.interval, now.value);
    const bool stricter_now = stricter(now, then, side.upper);
    const bool stricter_then = stricter(then, now, side.upper);
    if (stricter_now || stricter_then) {
      passes_.add(stricter_now);
    }
    if (!change.zero()) {
      const bool tighter = (change < Decimal{0}) == side.upper;
      numbers_.add(tighter);
      const bool follows = tighter ? stricter_now : stricter_then;
      taken_back_ = taken_back_ || !follows;
      out_.details.push_back(moved_text(side, left, change) + (follows ? "" : ", which rounding takes back"));
    }
  }

  // Of a percentage, and of a point on a scale whose zero is arbitrary, a part of the limit would be misread.
  [[nodiscard]] std::string moved_text(const Side& side, const check::End& left, const Decimal& change) const {
    const quantity::Unit& unit = before_.units.at(left_.unit);
    std::string out = "the " + std::string(side.name) + " is " + amount_text(before_, magnitude(change), left_.unit) +
                      (change < Decimal{0} ? " lower" : " higher");
    if (!left.value.zero() && unit.text != "%" && (side.interval || !unit.point)) {
      out += " (" + rounded(magnitude(change / left.value) * Decimal{100}, "0.01") + " %)";
    }
    return out;
  }

  [[nodiscard]] bool same_rounding(const check::Rounding& left, const check::Rounding& right) const {
    if (!left.place || !right.place) {
      return !left.place && !right.place;
    }
    return left.ties == right.ties && (in_left_unit(true, *right.place) - *left.place).zero();
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
  out.kind = !gone.empty() && !come.empty() ? ChangeKind::moved
             : !gone.empty()                ? ChangeKind::tightened
             : !come.empty()                ? ChangeKind::relaxed
                                            : ChangeKind::same;
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
    return {ChangeKind::moved, {"one is a quantity and the other a word: they cannot be compared"}};
  }
  if (left_words) {
    return of_words(allowed_words(before, left), allowed_words(after, right));
  }
  if (!quantity::convertible(before.units.at(left.limit.unit), after.units.at(right.limit.unit))) {
    return {ChangeKind::moved, {"the units are of another kind: the amounts cannot be compared"}};
  }
  return Ends(before, left.limit, after, right.limit).run();
}

}  // namespace plumbrule::contrast
