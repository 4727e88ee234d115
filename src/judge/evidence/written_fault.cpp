#include "judge/evidence/written_fault.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>

#include "base/diagnose/quote.hpp"

namespace plumbrule::evidence {
namespace {

constexpr std::string_view minus = "\xE2\x88\x92";
constexpr std::string_view times_sign = "\xC3\x97";
constexpr std::string_view fraction_slash = "\xE2\x81\x84";
constexpr std::array<std::string_view, 3> wide_blanks{"\xC2\xA0", "\xE2\x80\x89", "\xE2\x80\xAF"};
constexpr std::size_t longest_example = 20;  // a mended number in a help is no longer than this

bool is_any_blank(char byte) { return std::isspace(static_cast<unsigned char>(byte)) != 0; }
bool is_any_letter(char byte) { return std::isalpha(static_cast<unsigned char>(byte)) != 0; }

// The length of the blank at one end of the text, or 0.
std::size_t blank_at_start(std::string_view text) {
  for (const std::string_view blank : wide_blanks) {
    if (text.starts_with(blank)) {
      return blank.size();
    }
  }
  return !text.empty() && is_any_blank(text.front()) ? 1 : 0;
}

std::size_t blank_at_end(std::string_view text) {
  for (const std::string_view blank : wide_blanks) {
    if (text.ends_with(blank)) {
      return blank.size();
    }
  }
  return !text.empty() && is_any_blank(text.back()) ? 1 : 0;
}

std::size_t digits(std::string_view text) {
  return static_cast<std::size_t>(
      std::find_if(text.begin(), text.end(), [](char byte) { return byte < '0' || byte > '9'; }) - text.begin());
}

bool begins_with_any(std::string_view text, std::initializer_list<std::string_view> beginnings) {
  return std::any_of(beginnings.begin(), beginnings.end(), [&](std::string_view one) { return text.starts_with(one); });
}

bool contains_any(std::string_view text, std::initializer_list<std::string_view> parts) {
  return std::any_of(parts.begin(), parts.end(),
                     [&](std::string_view one) { return text.find(one) != std::string_view::npos; });
}

// Marks that people leave where there is no value.
bool marks_nothing(std::string_view text) {
  constexpr std::array<std::string_view, 21> marks{"-",
                                                   "--",
                                                   "---",
                                                   "\xE2\x80\x93",
                                                   "\xE2\x80\x94",
                                                   "?",
                                                   "??",
                                                   "...",
                                                   "n/a",
                                                   "na",
                                                   "n.a.",
                                                   "n/d",
                                                   "nd",
                                                   "n.d.",
                                                   "tbd",
                                                   "tba",
                                                   "pending",
                                                   "not tested",
                                                   "not determined",
                                                   "unknown",
                                                   "none"};
  std::string lower(text.substr(0, longest_example));
  std::transform(lower.begin(), lower.end(), lower.begin(),
                 [](unsigned char byte) { return static_cast<char>(std::tolower(byte)); });
  return text.size() <= longest_example && std::find(marks.begin(), marks.end(), lower) != marks.end();
}

// Digits of a unit follow a letter ("m2", "m-2", "m^2"), or are the 1 of "1/m2"; all others are a second number.
bool second_number(std::string_view unit) {
  for (std::size_t at = 0; at < unit.size(); at += std::max<std::size_t>(digits(unit.substr(at)), 1)) {
    if (!digit_at(unit, at)) {
      continue;
    }
    const bool sign = at >= 2 && unit[at - 1] == '-';
    const char before = at == 0 ? ' ' : unit[sign ? at - 2 : at - 1];
    const bool power = is_any_letter(before) || before == '^';
    const bool reciprocal = trimmed(unit.substr(0, at)).empty() && unit.substr(at).starts_with("1/") &&
                            at + 2 < unit.size() && is_any_letter(unit[at + 2]);
    if (!power && !reciprocal) {
      return true;
    }
  }
  return false;
}

Unreadable comma(const std::string& found, std::string_view number, std::string_view rest) {
  const std::size_t behind = digits(rest.substr(1));
  const std::string_view after = rest.substr(1 + behind);
  const bool groups =
      behind == 3 && number.size() <= 3 && number.front() != '0' && number.find('.') == std::string_view::npos;
  if (number.size() + behind > longest_example || number.find('.') != std::string_view::npos) {
    return {found + ", a number with a comma", "write a point as the decimal sign and no thousands separators"};
  }
  const std::string decimal = std::string(number) + "." + std::string(rest.substr(1, behind));
  const std::string whole = std::string(number) + std::string(rest.substr(1, behind));
  if (groups && (after.starts_with(".") || (after.starts_with(",") && digits(after.substr(1)) > 0))) {
    return {found + ", a number with thousands separators", "leave the commas out"};
  }
  if (groups) {
    return {found + ", a number with a comma",
            "write a point as the decimal sign: `" + decimal + "`, and no thousands separators: `" + whole + "`"};
  }
  return {found + ", a number with a comma as decimal sign", "write a point as the decimal sign: `" + decimal + "`"};
}

bool exponent(std::string_view rest) {
  const std::string_view times = trimmed(rest);
  for (const std::string_view sign : {std::string_view("x"), std::string_view("*"), times_sign}) {
    if (times.starts_with(sign) && trimmed(times.substr(sign.size())).starts_with("10")) {
      return true;
    }
  }
  const bool sign = rest.size() > 1 && (rest[1] == '-' || rest[1] == '+');
  return begins_with_any(rest, {"e", "E"}) && digit_at(rest, sign ? 2 : 1);
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  for (std::size_t blank = blank_at_start(text); blank > 0; blank = blank_at_start(text)) {
    text.remove_prefix(blank);
  }
  for (std::size_t blank = blank_at_end(text); blank > 0; blank = blank_at_end(text)) {
    text.remove_suffix(blank);
  }
  return text;
}

bool digit_at(std::string_view text, std::size_t at) { return at < text.size() && text[at] >= '0' && text[at] <= '9'; }

Unreadable no_number(std::string_view whole, std::string_view rest) {
  if (whole.empty()) {
    return {"found no value", "fill it in, or leave the whole line out"};
  }
  const std::string found = "found " + diagnose::quoted(whole);
  if (marks_nothing(rest)) {
    return {found + ", a mark for no value",
            "leave the whole line out if nothing was measured; write `0` with its unit if zero was measured"};
  }
  if (begins_with_any(rest,
                      {"~", "\xE2\x89\x88", "\xE2\x88\xBC", "about ", "approx", "around ", "ca. ", "ca ", "circa "})) {
    return {found + ", an approximate value", "write the value that was read"};
  }
  if (begins_with_any(rest, {"\xC2\xB1", "+/-", "+-"})) {
    return {found + ", a tolerance without a value", "write the value that was read"};
  }
  if (rest.starts_with("+") && digit_at(rest, 1)) {
    return {found + ", a number with a plus sign", "leave the sign out"};
  }
  const std::string_view digits_from = begins_with_any(rest, {"-"}) ? rest.substr(1)
                                       : rest.starts_with(minus)    ? rest.substr(minus.size())
                                                                    : rest;
  if (begins_with_any(digits_from, {".", ","}) && digit_at(digits_from, 1)) {
    return {found + ", a number without its leading zero", "write `0.` before the digits"};
  }
  return {found + ", not a number", "write a number with its unit, such as `12.5 g`; leave out what was not measured"};
}

std::optional<Unreadable> fault_behind_number(std::string_view whole, std::string_view number, std::string_view rest) {
  const std::string found = "found " + diagnose::quoted(whole);
  if (rest.starts_with(",") && digit_at(rest, 1)) {
    return comma(found, number, rest);
  }
  if (exponent(rest)) {
    return Unreadable{found + ", a number with an exponent", "write the number out"};
  }
  if (rest.starts_with(".")) {
    return digit_at(rest, 1) ? Unreadable{found + ", a number with two points", "write one point, the decimal sign"}
                             : Unreadable{found + ", a number that ends in its point",
                                          "leave the point out, or write the digits behind it"};
  }
  if (contains_any(rest, {"\xC2\xB1", "+/-", "+-"})) {
    return Unreadable{found + ", a value with a tolerance", "write the value that was read"};
  }
  if ((rest.starts_with("/") && digit_at(rest, 1)) || rest.starts_with(fraction_slash)) {
    return Unreadable{found + ", a fraction", "write it as a decimal number"};
  }
  const std::size_t of = rest.find(" of ");
  const std::string_view basis = of == std::string_view::npos ? std::string_view() : trimmed(rest.substr(of + 4));
  if (second_number(rest.substr(0, of)) || digit_at(basis, 0)) {
    return Unreadable{found + ", more than one number", "write one value, or each specimen on its own"};
  }
  if (rest.ends_with(" of")) {
    return Unreadable{found + ", nothing behind `of`", "write of what it is a part, such as `% of dry aggregate`"};
  }
  return std::nullopt;
}

}  // namespace plumbrule::evidence
