// UTF-8 (RFC 3629): its table 3-7 in the Unicode Standard names the valid sequences.
#include "base/diagnose/encoding.hpp"

#include <catch2/catch.hpp>
#include <string>

using namespace plumbrule;
using diagnose::first_bad_byte;
using namespace std::string_literals;

namespace {

// A character by its number, written as RFC 3629, section 3 says; also for numbers that are no character.
std::string encoded(std::uint32_t number) {
  const auto byte = [](std::uint32_t value) { return static_cast<char>(value); };
  if (number < 0x80U) {
    return {byte(number)};
  }
  if (number < 0x800U) {
    return {byte(0xC0U | number >> 6U), byte(0x80U | (number & 63U))};
  }
  if (number < 0x10000U) {
    return {byte(0xE0U | number >> 12U), byte(0x80U | (number >> 6U & 63U)), byte(0x80U | (number & 63U))};
  }
  return {byte(0xF0U | number >> 18U), byte(0x80U | (number >> 12U & 63U)), byte(0x80U | (number >> 6U & 63U)),
          byte(0x80U | (number & 63U))};
}

}  // namespace

TEST_CASE("every character but NUL is text; surrogates and numbers beyond the last character are not") {
  for (std::uint32_t number = 1; number < 0x120000U; ++number) {
    const bool surrogate = number >= 0xD800U && number <= 0xDFFFU;
    const bool good = !surrogate && number <= 0x10FFFFU;
    if (first_bad_byte(encoded(number)).has_value() == good) {
      FAIL_CHECK("number " << number);
    }
  }
  CHECK(first_bad_byte("\0"s) == 0U);
}

TEST_CASE("sequences that are too long, cut off or begin in the middle") {
  for (const std::string& bad : {"\xC0\xAF"s, "\xC1\xBF"s, "\xE0\x9F\xBF"s, "\xF0\x8F\xBF\xBF"s, "\xC3"s, "\xE2\x82"s,
                                 "\xF0\x9F\x98"s, "\x80"s, "\xBF"s, "\xF5\x80\x80\x80"s, "\xFE"s, "\xFF"s, "\xC3("s}) {
    INFO(bad.size());
    CHECK(first_bad_byte("ab" + bad + "c") == 2U);
    CHECK(first_bad_byte(bad) == 0U);
  }
  CHECK_FALSE(first_bad_byte("").has_value());
  CHECK_FALSE(first_bad_byte(std::string(1'000'000, 'x')).has_value());
}

TEST_CASE("a file that is no text is reported at its first bad byte") {
  source::SourceMap sources;
  const auto file = sources.add("mix.plumb", "plumbrule 1\nCaf\xE9 \xFF");
  diagnose::Diagnostics diagnostics;
  CHECK_FALSE(diagnose::check_encoding(sources, file, diagnostics));
  REQUIRE(diagnostics.all().size() == 1);
  CHECK(sources.place_text(diagnostics.all()[0].primary.span) == "mix.plumb:2:4");
  CHECK(diagnostics.all()[0].code == diagnose::Code::file_encoding);
  CHECK(diagnose::check_encoding(sources, sources.add("good", "Caf\xC3\xA9"), diagnostics));
  CHECK(diagnostics.all().size() == 1);
}
