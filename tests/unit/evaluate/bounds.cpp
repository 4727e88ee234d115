// Arithmetic of bounds against brute force: an amount of which only a bound is known stands for many true values; what
// is claimed of a result must hold for all of them, and what holds for all of them should be claimed.
#include "judge/evaluate/bounds.hpp"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <vector>

#include "true_values.hpp"

using namespace plumbrule;
using namespace plumbrule::evaluate;
using plan::OpCode;
using quantity::Decimal;
using syntax::Comparison;
using syntax::StatisticKind;

namespace {

Decimal computed(OpCode code, const Decimal& left, const Decimal& right) {
  switch (code) {
    case OpCode::add:
      return left + right;
    case OpCode::subtract:
      return left - right;
    case OpCode::multiply:
      return left * right;
    case OpCode::divide:
      return left / right;
    case OpCode::larger:
      return left < right ? right : left;
    default:
      return left < right ? left : right;
  }
}

std::vector<Decimal> results(OpCode code, const Amount& left, const Amount& right) {
  std::vector<Decimal> out;
  for (const Decimal& a : truths(left)) {
    for (const Decimal& b : truths(right)) {
      if (const Decimal value = computed(code, a, b); value.finite()) {
        out.push_back(value);
      }
    }
  }
  return out;
}

bool holds(Bound bound, const Decimal& limit, const std::vector<Decimal>& all) {
  return std::all_of(all.begin(), all.end(), [&](const Decimal& value) { return allows(bound, limit, value); });
}

// The strongest of the claims that hold, about this value.
Bound strongest(const Decimal& limit, const std::vector<Decimal>& all) {
  for (const Bound bound : {Bound::exact, Bound::above, Bound::below, Bound::at_least, Bound::at_most}) {
    if (holds(bound, limit, all)) {
      return bound;
    }
  }
  return Bound::undetermined;
}

void check_sound(OpCode code, const Amount& left, const Amount& right) {
  const Amount claimed = apply(code, left, right);
  if (claimed.value.finite() && !holds(claimed.bound, claimed.value, results(code, left, right))) {
    FAIL_CHECK(static_cast<int>(code) << ": " << text(left) << " with " << text(right) << " gives " << text(claimed));
  }
}

void check_tight(OpCode code, const Amount& left, const Amount& right) {
  const Amount claimed = apply(code, left, right);
  const Bound best = strongest(claimed.value, results(code, left, right));
  if (claimed.bound != best) {
    FAIL_CHECK(static_cast<int>(code) << ": " << text(left) << " with " << text(right) << " gives " << text(claimed)
                                      << ", which could be said to be " << text({claimed.value, 0, best}));
  }
}

// Three-valued: holds for all true values, for none, or for some.
template <typename Holds>
Verdict brute(const Amount& value, const Holds& meets) {
  const auto all = truths(value);
  const auto good = std::count_if(all.begin(), all.end(), meets);
  return good == static_cast<std::ptrdiff_t>(all.size()) ? Verdict::complies
         : good == 0                                     ? Verdict::fails
                                                         : Verdict::not_shown;
}

bool compared(const Decimal& left, Comparison comparison, const Decimal& right) {
  switch (comparison) {
    case Comparison::less:
      return left < right;
    case Comparison::less_or_equal:
      return left <= right;
    case Comparison::greater:
      return left > right;
    case Comparison::greater_or_equal:
      return left >= right;
    case Comparison::equal:
      break;
  }
  return left == right;
}

bool always(const Amount& left, Comparison comparison, const Amount& right) {
  for (const Decimal& a : truths(left)) {
    for (const Decimal& b : truths(right)) {
      if (!compared(a, comparison, b)) {
        return false;
      }
    }
  }
  return true;
}

constexpr std::array<Comparison, 5> comparisons{Comparison::less, Comparison::less_or_equal, Comparison::greater,
                                                Comparison::greater_or_equal, Comparison::equal};

}  // namespace

TEST_CASE("a mirrored bound is the bound of the value with the other sign") {
  for (const Amount& one : amounts()) {
    for (const Decimal& value : truths(one)) {
      CHECK(allows(mirrored(one.bound), -one.value, -value));
    }
    CHECK(mirrored(mirrored(one.bound)) == one.bound);
  }
}

TEST_CASE("what is claimed of a result holds for every true value") {
  for (const OpCode code :
       {OpCode::add, OpCode::subtract, OpCode::multiply, OpCode::divide, OpCode::larger, OpCode::smaller}) {
    for (const Amount& left : amounts()) {
      for (const Amount& right : amounts()) {
        check_sound(code, left, right);
      }
    }
  }
}

TEST_CASE("the values themselves are computed as numbers") {
  for (const OpCode code : {OpCode::add, OpCode::subtract, OpCode::multiply, OpCode::larger, OpCode::smaller}) {
    for (int left = -2; left <= 2; ++left) {
      for (int right = -2; right <= 2; ++right) {
        const Amount found = apply(code, {left, 0, Bound::exact}, {right, 0, Bound::exact});
        CHECK(found.value == computed(code, left, right));
        CHECK(found.bound == Bound::exact);
      }
    }
  }
}

// One amount holds one bound: a larger or smaller known from both ends, as "above 0, at most 2", is said to be unknown,
// since a refusal that looks at the other end would be missed. At a tie less is claimed than could be.
TEST_CASE("sums, differences, larger and smaller claim all that one bound can claim") {
  int from_both_ends = 0;
  for (const OpCode code : {OpCode::add, OpCode::subtract, OpCode::larger, OpCode::smaller}) {
    const bool chosen = code == OpCode::larger || code == OpCode::smaller;
    for (const Amount& left : amounts()) {
      for (const Amount& right : amounts()) {
        if (left.bound == Bound::undetermined || right.bound == Bound::undetermined ||
            (chosen && left.value == right.value)) {
          continue;
        }
        const std::array<Amount, 2> two{left, right};
        const Ends ends = combine(code == OpCode::larger ? StatisticKind::greatest : StatisticKind::least, two);
        if (chosen && (ends.low.value != ends.high.value || ends.low.bound != ends.high.bound)) {
          CHECK(apply(code, left, right).bound == Bound::undetermined);
          ++from_both_ends;
        } else {
          check_tight(code, left, right);
        }
      }
    }
  }
  CHECK(from_both_ends > 0);
}

TEST_CASE("an exact factor or divisor keeps a bound, a negative one mirrors it") {
  for (const Amount& left : amounts()) {
    for (const int factor : {-2, -1, 1, 2}) {
      const Amount exact{factor, 0, Bound::exact};
      check_tight(OpCode::multiply, left, exact);
      check_tight(OpCode::multiply, exact, left);
      check_tight(OpCode::divide, left, exact);
    }
  }
}

TEST_CASE("statistics of bounds hold for every true value") {
  for (const StatisticKind kind : {StatisticKind::result, StatisticKind::mean, StatisticKind::least,
                                   StatisticKind::greatest, StatisticKind::range, StatisticKind::standard_deviation}) {
    for (const Amount& left : amounts(-1, 1)) {
      for (const Amount& right : amounts(-1, 1)) {
        const std::array<Amount, 2> specimens{left, right};
        const Ends claimed = combine(kind, specimens);
        for (const Decimal& a : truths(left)) {
          for (const Decimal& b : truths(right)) {
            const std::array<Amount, 2> known{Amount{a, 0, Bound::exact}, Amount{b, 0, Bound::exact}};
            const Decimal truth = combine(kind, known).low.value;
            if (!allows(claimed.low.bound, claimed.low.value, truth) ||
                !allows(claimed.high.bound, claimed.high.value, truth)) {
              FAIL_CHECK(static_cast<int>(kind)
                         << ": " << text(left) << ", " << text(right) << " give " << text(claimed.low) << " and "
                         << text(claimed.high) << " but " << a.text() << ", " << b.text());
            }
          }
        }
      }
    }
  }
}

TEST_CASE("statistics of numbers") {
  const auto of = [](const char* value) { return Amount{Decimal::of(value), 0, Bound::exact}; };
  const std::array<Amount, 3> three{of("2"), of("4"), of("9")};
  CHECK(combine(StatisticKind::mean, three).low.value == Decimal{5});
  CHECK(combine(StatisticKind::least, three).low.value == Decimal{2});
  CHECK(combine(StatisticKind::greatest, three).low.value == Decimal{9});
  CHECK(combine(StatisticKind::range, three).low.value == Decimal{7});
  // Computed here: (9 + 1 + 16) / 2 = 13, the square of the deviation of a sample.
  const Decimal deviation = combine(StatisticKind::standard_deviation, three).low.value;
  CHECK(quantity::round_to(deviation * deviation, Decimal::of("0.000001"), quantity::Ties::to_even) == Decimal{13});
  const std::array<Amount, 1> one{of("2")};
  CHECK(combine(StatisticKind::mean, one).low.value == Decimal{2});
  CHECK_FALSE(combine(StatisticKind::standard_deviation, one).low.value.finite());
}

TEST_CASE("the greatest and the least do not depend on the order of the specimens") {
  for (const StatisticKind kind : {StatisticKind::greatest, StatisticKind::least}) {
    for (const Amount& left : amounts(-1, 1)) {
      for (const Amount& right : amounts(-1, 1)) {
        const Ends one = combine(kind, std::array<Amount, 2>{left, right});
        const Ends other = combine(kind, std::array<Amount, 2>{right, left});
        INFO(text(left) << ", " << text(right));
        const bool same = one.low.bound == other.low.bound && one.high.bound == other.high.bound;
        CHECK(same);
        CHECK((one.low.bound == Bound::undetermined || one.low.value == other.low.value));
        CHECK((one.high.bound == Bound::undetermined || one.high.value == other.high.value));
      }
    }
  }
}

TEST_CASE("a comparison with a limit decides exactly when every true value decides alike") {
  for (const Amount& value : amounts()) {
    for (int limit = -3; limit <= 3; ++limit) {
      for (const bool inclusive : {true, false}) {
        INFO(text(value) << " against " << limit << (inclusive ? ", inclusive" : ", exclusive"));
        const Decimal end{limit};
        CHECK(compare_high(value, {end, inclusive}) ==
              brute(value, [&](const Decimal& x) { return x < end || (inclusive && x == end); }));
        CHECK(compare_low(value, {end, inclusive}) ==
              brute(value, [&](const Decimal& x) { return x > end || (inclusive && x == end); }));
      }
    }
  }
}

TEST_CASE("a refusal is certain only if every true value is refused") {
  for (const Amount& left : amounts()) {
    for (const Amount& right : amounts()) {
      for (const Comparison comparison : comparisons) {
        INFO(text(left) << " / " << text(right) << ", comparison " << static_cast<int>(comparison));
        if (certainly(left, comparison, right)) {
          CHECK(always(left, comparison, right));
        }
      }
    }
  }
}

TEST_CASE("a refusal is certain whenever every true value is refused") {
  std::string missed;
  for (const Amount& left : amounts()) {
    for (const Amount& right : amounts()) {
      for (const Comparison comparison : comparisons) {
        if (missed.empty() && always(left, comparison, right) && !certainly(left, comparison, right)) {
          missed = text(left) + " / " + text(right) + ", comparison " + std::to_string(static_cast<int>(comparison));
        }
      }
    }
  }
  INFO(missed);
  CHECK(missed.empty());
}
