#include "judge/evidence/written.hpp"

#include <array>
#include <chrono>

#include "base/diagnose/quote.hpp"
#include "judge/evidence/written_fault.hpp"

namespace plumbrule::evidence {
namespace {

using quantity::Bound;

struct BoundWords {
  std::string_view words;
  Bound bound;
};

// Longer ones first where one begins another.
constexpr std::array<BoundWords, 12> words_before{{
    {">=", Bound::at_least},
    {"<=", Bound::at_most},
    {"\xE2\x89\xA5", Bound::at_least},
    {"\xE2\x89\xA4", Bound::at_most},
    {">", Bound::above},
    {"<", Bound::below},
    {"at least ", Bound::at_least},
    {"at most ", Bound::at_most},
    {"more than ", Bound::above},
    {"less than ", Bound::below},
    {"above ", Bound::above},
    {"below ", Bound::below},
}};
constexpr std::array<BoundWords, 3> words_behind{{
    {" or more", Bound::at_least},
    {" or less", Bound::at_most},
    {"+", Bound::at_least},
}};

std::size_t number_length(std::string_view text) {
  std::size_t at = 0;
  while (digit_at(text, at)) {
    ++at;
  }
  if (at > 0 && at < text.size() && text[at] == '.' && digit_at(text, at + 1)) {
    ++at;
    while (digit_at(text, at)) {
      ++at;
    }
  }
  return at;
}

Bound take_before(std::string_view& text) {
  for (const BoundWords& one : words_before) {
    if (text.starts_with(one.words)) {
      text = trimmed(text.substr(one.words.size()));
      return one.bound;
    }
  }
  return Bound::exact;
}

Bound take_behind(std::string_view& rest) {
  for (const BoundWords& one : words_behind) {
    if (rest.ends_with(one.words)) {
      rest = trimmed(rest.substr(0, rest.size() - one.words.size()));
      return one.bound;
    }
  }
  if (rest.starts_with("+")) {
    rest = trimmed(rest.substr(1));
    return Bound::at_least;
  }
  return Bound::exact;
}

}  // namespace

std::variant<Written, Unreadable> read_written(std::string_view text) {
  constexpr std::string_view minus = "\xE2\x88\x92";
  const std::string_view whole = trimmed(text);
  std::string_view rest = whole;
  Written out;
  out.bound = take_before(rest);
  const std::string_view unbound = rest;
  const bool negative = rest.starts_with("-") || rest.starts_with(minus);
  rest.remove_prefix(rest.starts_with(minus) ? minus.size() : negative ? 1 : 0);
  const std::size_t length = number_length(rest);
  if (length == 0) {
    return no_number(whole, unbound);
  }
  const std::string_view digits = rest.substr(0, length);
  rest = rest.substr(length);
  if (const auto fault = fault_behind_number(whole, digits, rest)) {
    return *fault;
  }
  const auto number = quantity::Decimal::parse(digits);
  if (!number) {
    return Unreadable{"found " + diagnose::quoted(whole) + ", a number of more than " +
                          std::to_string(quantity::most_digits) + " digits",
                      "write the digits that were read"};
  }
  out.value = negative ? -*number : *number;
  const Bound after = take_behind(rest);
  if (after != Bound::exact && (out.bound != Bound::exact || take_behind(rest) != Bound::exact)) {
    return Unreadable{"found " + diagnose::quoted(whole) + ", a bound said twice", "say it once"};
  }
  out.bound = after != Bound::exact ? after : out.bound;
  const std::size_t of = rest.find(" of ");
  out.unit = trimmed(rest.substr(0, of));
  out.basis = of == std::string_view::npos ? std::string_view() : trimmed(rest.substr(of + 4));
  return out;
}

std::optional<std::int32_t> read_date(std::string_view text) {
  const auto number = [&](std::size_t from, std::size_t length) {
    int value = 0;
    for (std::size_t at = from; at < from + length; ++at) {
      if (!digit_at(text, at)) {
        return 0;
      }
      value = value * 10 + (text[at] - '0');
    }
    return value;
  };
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
    return std::nullopt;
  }
  const std::chrono::year_month_day day{std::chrono::year(number(0, 4)),
                                        std::chrono::month(static_cast<unsigned>(number(5, 2))),
                                        std::chrono::day(static_cast<unsigned>(number(8, 2)))};
  if (!day.ok() || day.year() < std::chrono::year(1900)) {
    return std::nullopt;
  }
  return static_cast<std::int32_t>(std::chrono::sys_days(day).time_since_epoch().count());
}

}  // namespace plumbrule::evidence
