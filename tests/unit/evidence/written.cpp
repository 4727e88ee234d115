// read_written and read_date. Readings and their meaning: common practice, no source; the calendar: Gregorian rule.
#include "judge/evidence/written.hpp"

#include <catch2/catch.hpp>
#include <set>
#include <string>

using namespace plumbrule;
using evidence::read_date;
using evidence::read_written;
using evidence::Unreadable;
using evidence::Written;
using quantity::Bound;

namespace {

void reads(std::string_view text, Bound bound, std::string_view value, std::string_view unit,
           std::string_view basis = {}) {
  INFO(text);
  const auto read = read_written(text);
  if (const auto* bad = std::get_if<Unreadable>(&read)) {
    FAIL_CHECK(bad->message);
    return;
  }
  const auto& written = std::get<Written>(read);
  CHECK(written.bound == bound);
  CHECK(written.value.text() == value);
  CHECK(written.unit == unit);
  CHECK(written.basis == basis);
}

// The message behind "found `...`", and its help.
Unreadable refused(std::string_view text) {
  INFO(text);
  const auto read = read_written(text);
  const auto* bad = std::get_if<Unreadable>(&read);
  REQUIRE(bad != nullptr);
  CHECK(bad->message.starts_with("found "));
  CHECK_FALSE(bad->message.ends_with("."));
  CHECK_FALSE(bad->help.empty());
  CHECK_FALSE(bad->help.ends_with("."));
  CHECK(bad->message.size() < 160);
  CHECK(bad->help.size() < 160);
  return *bad;
}

bool says(std::string_view text, std::string_view part) {
  const Unreadable bad = refused(text);
  INFO(bad.message << " | " << bad.help);
  const bool found = (bad.message + " | " + bad.help).find(part) != std::string::npos;
  CHECK(found);
  return found;
}

}  // namespace

TEST_CASE("numbers with and without units") {
  reads("798.6 g", Bound::exact, "798.6", "g");
  reads("798.6g", Bound::exact, "798.6", "g");
  reads("  798.60   g ", Bound::exact, "798.60", "g");
  reads("2.05", Bound::exact, "2.05", "");
  reads("0", Bound::exact, "0", "");
  reads("8%", Bound::exact, "8", "%");
  reads(
      "25 \xC2\xB0"
      "C",
      Bound::exact, "25",
      "\xC2\xB0"
      "C");
  reads("-3 g", Bound::exact, "-3", "g");
  reads(
      "\xE2\x88\x92"
      "3.5 g",
      Bound::exact, "-3.5", "g");
  reads("12.5\xC2\xA0g", Bound::exact, "12.5", "g");
  reads("12.5\xE2\x80\xAFg\xC2\xA0", Bound::exact, "12.5", "g");
  reads("12345678901234567 g", Bound::exact, "12345678901234567", "g");
}

TEST_CASE("digits that belong to a unit are no second number") {
  for (const std::string_view unit : {"g/m2", "g/ft2", "1/m2", "kg.m-2", "g/m2.h", "m\xC2\xB2", "kg-cm", "lb/yd2"}) {
    reads("12 " + std::string(unit), Bound::exact, "12", unit);
  }
  reads("5/ft2", Bound::exact, "5", "/ft2");
}

TEST_CASE("percentages and their basis") {
  reads("7.8 % of dry aggregate", Bound::exact, "7.8", "%", "dry aggregate");
  reads("7.8% of dry aggregate", Bound::exact, "7.8", "%", "dry aggregate");
  reads("at least 7.8 % of dry aggregate", Bound::at_least, "7.8", "%", "dry aggregate");
  reads("7.8 % of dry aggregate or less", Bound::at_most, "7.8", "%", "dry aggregate");
  reads("3 % of material passing No. 200", Bound::exact, "3", "%", "material passing No. 200");
}

TEST_CASE("bounds, upwards and downwards") {
  for (const std::string_view text :
       {"180 s or more", "at least 180 s", ">= 180 s", ">=180 s", "180+ s", "180 s+", "\xE2\x89\xA5 180 s",
        "\xE2\x89\xA5"
        "180s"}) {
    reads(text, Bound::at_least, "180", "s");
  }
  for (const std::string_view text : {"more than 180 s", "> 180 s", ">180 s", "above 180 s"}) {
    reads(text, Bound::above, "180", "s");
  }
  for (const std::string_view text : {"180 s or less", "at most 180 s", "<= 180 s", "\xE2\x89\xA4 180 s"}) {
    reads(text, Bound::at_most, "180", "s");
  }
  for (const std::string_view text : {"less than 180 s", "< 180 s", "below 180 s"}) {
    reads(text, Bound::below, "180", "s");
  }
  reads("180+", Bound::at_least, "180", "");
  reads("180 or more", Bound::at_least, "180", "");
  reads("> -3 degC", Bound::above, "-3", "degC");
}

TEST_CASE("a bound is said once") {
  for (const std::string_view text : {"at least 180 s or more", ">= 180+ s", "180+ s+", "180 s or more or more"}) {
    says(text, "a bound said twice");
  }
}

TEST_CASE("commas") {
  says("12,5 g", "write a point as the decimal sign: `12.5`");
  says("0,125 g", "`0.125`");
  says("1,350.0 g", "thousands separators");
  says("1,350,000 g", "thousands separators");
  says("1,350 g", "`1.350`");  // may be either, so both are shown
  says("1,350 g", "`1350`");
  says("1.350,0 g", "a number with a comma");
  says(",5 g", "leading zero");
}

TEST_CASE("other ways to write a number") {
  says("1e3 g", "an exponent");
  says("1.2E-3 g", "an exponent");
  says("1.2 x 10^3 g", "an exponent");
  says("1.2 \xC3\x97 10^3 g", "an exponent");
  says(".5 g", "leading zero");
  says("-.5 g", "leading zero");
  says("12. g", "ends in its point");
  says("1.2.3 g", "two points");
  says("1/2 in", "a fraction");
  says("+3 g", "a plus sign");
  says("123456789012345678 g", "more than 17 digits");
  says("0.123456789012345678 g", "more than 17 digits");
}

TEST_CASE("more than one number, tolerances, guesses") {
  for (const std::string_view text : {"12 or 13 s", "12 - 13 s", "12-13 s", "12 to 13 s",
                                      "12\xE2\x80\x93"
                                      "13 s",
                                      "1 350 g", "5 1/2 in", "12 s (3 specimens)", "2 of 3"}) {
    says(text, "more than one number");
  }
  for (const std::string_view text : {"12 \xC2\xB1 1 s", "12 +/- 1 s", "12 s +- 1 s"}) {
    says(text, "a value with a tolerance");
  }
  says("\xC2\xB1 1 s", "a tolerance without a value");
  for (const std::string_view text :
       {"~12 s", "\xE2\x89\x88 12 s", "about 12 s", "approx. 12 s", "ca. 12 s", "> ~12 s"}) {
    says(text, "an approximate value");
  }
}

TEST_CASE("no value at all") {
  says("", "found no value");
  says("  \t ", "found no value");
  for (const std::string_view text : {"n/a", "N/A", "-", "--", "\xE2\x80\x94", "tbd", "TBD", "?", "not tested"}) {
    says(text, "a mark for no value");
  }
  for (const std::string_view text : {"spin", "g", ">=", "at least", "inf", "nan", "\xC2\xBD in", "- 3 g"}) {
    says(text, "not a number");
  }
  says("7.8 % of", "nothing behind `of`");
}

TEST_CASE("each fault has its own message") {
  std::set<std::string> seen;
  const std::array<std::string_view, 11> faults{
      "12,5", "1e3", "n/a", "", "12 or 13", "~12", "12 \xC2\xB1 1", "spin", "123456789012345678", "+3", "1/2"};
  for (const std::string_view text : faults) {
    const std::string message = refused(text).message;
    CHECK(seen.insert(message.substr(message.find_last_of("`") + 1)).second);
  }
}

TEST_CASE("texts of any size and content are safe") {
  refused(std::string(1'000'000, '9'));
  refused(std::string(1'000'000, 'x'));
  refused("1," + std::string(1'000'000, '5'));
  refused("1 " + std::string(1'000'000, ' ') + "2");
  refused(std::string(1'000'000, '+'));
  CHECK(refused("\x1B[31m\xFF").message == "found `\\x1b[31m\\xff`, not a number");
  std::string bytes("0");
  for (int byte = 0; byte < 256; ++byte) {
    bytes.back() = static_cast<char>(byte);
    for (const std::string& text : {bytes, "1" + bytes, bytes + "1", "1" + bytes + "1", "1 g" + bytes + " of "}) {
      const auto read = read_written(text);
      CHECK(read.index() < 2);
    }
  }
}

TEST_CASE("days of the calendar") {
  for (const std::string_view day : {"2026-03-20", "2024-02-29", "2000-02-29", "2026-12-31", "2026-01-01"}) {
    INFO(day);
    CHECK(read_date(day).has_value());
  }
  for (const std::string_view other :
       {"", "2026", "2026-3-20", "2026-03-20 ", " 2026-03-20", "2026/03/20", "20-03-2026", "2026-00-10", "2026-13-01",
        "2026-04-31", "2026-02-29", "2100-02-29", "2026-03-00", "2026-03-32", "2026-03-2a", "-026-03-20",
        "2026-03-20T00", "2026_03_20", "0000-01-01"}) {
    INFO(other);
    CHECK_FALSE(read_date(other).has_value());
  }
}

TEST_CASE("dates are counted in days") {
  CHECK(read_date("1970-01-01") == 0);
  CHECK(read_date("1970-02-01") == 31);
  CHECK(read_date("2000-03-01") == *read_date("2000-02-29") + 1);
}
