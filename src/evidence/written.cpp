#include "evidence/written.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <chrono>

#include "diagnose/quote.hpp"

namespace plumbrule::evidence {
namespace {

using quantity::Bound;

struct BoundWords {
  std::string_view words;
  Bound bound;
};

// Longer ones first where one begins another.
constexpr std::array<BoundWords, 12> before{{
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
constexpr std::array<BoundWords, 3> behind{{
    {" or more", Bound::at_least},
    {" or less", Bound::at_most},
    {"+", Bound::at_least},
}};

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && std::isspace(static_cast<unsigned char>(text.front())) != 0) {
    text.remove_prefix(1);
  }
  while (!text.empty() && std::isspace(static_cast<unsigned char>(text.back())) != 0) {
    text.remove_suffix(1);
  }
  return text;
}

bool digit_at(std::string_view text, std::size_t at) {
  return at < text.size() && std::isdigit(static_cast<unsigned char>(text[at])) != 0;
}

bool contains(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

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

bool second_number(std::string_view rest) {
  for (std::size_t at = 1; at < rest.size(); ++at) {
    const bool begins = std::isspace(static_cast<unsigned char>(rest[at - 1])) != 0 || rest[at - 1] == '-';
    if (begins && digit_at(rest, at)) {
      return true;
    }
  }
  return false;
}

std::optional<Unreadable> fault_behind_number(std::string_view whole, std::string_view rest) {
  const std::string found = "found " + diagnose::quoted(whole);
  if (rest.starts_with(",") && digit_at(rest, 1)) {
    return Unreadable{found + ", a number with a comma",
                      "write a point as the decimal sign and no thousands separators"};
  }
  if ((rest.starts_with("e") || rest.starts_with("E")) &&
      (digit_at(rest, 1) ||
       ((rest.substr(1).starts_with("-") || rest.substr(1).starts_with("+")) && digit_at(rest, 2)))) {
    return Unreadable{found + ", a number with an exponent", "write the number out"};
  }
  if (contains(rest, "\xC2\xB1") || contains(rest, "+/-")) {
    return Unreadable{found + ", a value with a tolerance", "write the value that was read"};
  }
  if (second_number(rest)) {
    return Unreadable{found + ", more than one number", "write one value, or each specimen on its own"};
  }
  return std::nullopt;
}

Unreadable no_number(std::string_view whole) {
  if (whole.empty()) {
    return {"found no value", "fill it in, or leave the whole line out"};
  }
  const std::string found = "found " + diagnose::quoted(whole);
  if (whole.front() == '~') {
    return {found + ", an approximate value", "write the value that was read"};
  }
  if (whole.front() == '.' && digit_at(whole, 1)) {
    return {found + ", a number without its leading zero", "write `0` before the point"};
  }
  return {found + ", not a number", "write a number with its unit, such as `12.5 g`; leave out what was not measured"};
}

Bound take_before(std::string_view& text) {
  for (const BoundWords& one : before) {
    if (text.starts_with(one.words)) {
      text = trimmed(text.substr(one.words.size()));
      return one.bound;
    }
  }
  return Bound::exact;
}

Bound take_behind(std::string_view& rest) {
  for (const BoundWords& one : behind) {
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
  const bool negative = rest.starts_with("-") || rest.starts_with(minus);
  rest.remove_prefix(rest.starts_with(minus) ? minus.size() : negative ? 1 : 0);
  const std::size_t length = number_length(rest);
  if (length == 0) {
    return no_number(whole);
  }
  const auto number = quantity::Decimal::parse(rest.substr(0, length));
  rest = rest.substr(length);
  if (const auto fault = fault_behind_number(whole, rest)) {
    return *fault;
  }
  if (!number) {
    return Unreadable{"found " + diagnose::quoted(whole) + ", a number of more than " +
                          std::to_string(quantity::most_digits) + " digits",
                      "write the digits that were read"};
  }
  out.value = negative ? -*number : *number;
  const Bound after = take_behind(rest);
  if (after != Bound::exact && out.bound != Bound::exact) {
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
