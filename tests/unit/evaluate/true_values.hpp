#pragma once
// The true values for which an amount may stand when only a bound of it is known. Of the tests of this folder.

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity/amount.hpp"

namespace plumbrule::evaluate {

using quantity::Amount;
using quantity::Bound;
using quantity::Decimal;

inline constexpr std::array<Bound, 6> bounds{Bound::exact,   Bound::at_least, Bound::above,
                                             Bound::at_most, Bound::below,    Bound::undetermined};

inline bool allows(Bound bound, const Decimal& limit, const Decimal& value) {
  switch (bound) {
    case Bound::exact:
      return value == limit;
    case Bound::at_least:
      return value >= limit;
    case Bound::above:
      return value > limit;
    case Bound::at_most:
      return value <= limit;
    case Bound::below:
      return value < limit;
    case Bound::undetermined:
      break;
  }
  return true;
}

// Amounts have whole values; the samples lie on, right beside, between and far beyond them.
inline const std::vector<Decimal>& samples() {
  static const std::vector<Decimal> all = [] {
    std::vector<Decimal> out{Decimal::of("-1000000"), Decimal::of("1000000")};
    for (int whole = -4; whole <= 4; ++whole) {
      for (const char* part : {"-0.5", "-0.00001", "0", "0.00001", "0.5"}) {
        out.push_back(Decimal{whole} + Decimal::of(part));
      }
    }
    return out;
  }();
  return all;
}

inline std::vector<Decimal> truths(const Amount& amount) {
  std::vector<Decimal> out;
  for (const Decimal& value : samples()) {
    if (allows(amount.bound, amount.value, value)) {
      out.push_back(value);
    }
  }
  return out;
}

inline std::vector<Amount> amounts(int from = -2, int to = 2) {
  std::vector<Amount> out;
  for (int value = from; value <= to; ++value) {
    for (const Bound bound : bounds) {
      out.push_back({value, 0, bound});
    }
  }
  return out;
}

inline std::string text(const Amount& amount) {
  constexpr std::array<std::string_view, 6> words{"", "at least ", "above ", "at most ", "below ", "nothing known: "};
  return std::string(words.at(static_cast<std::size_t>(amount.bound))) + amount.value.text();
}

}  // namespace plumbrule::evaluate
