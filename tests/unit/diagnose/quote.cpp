// The user's text inside a message. Expectations: computed here.
#include "base/diagnose/quote.hpp"

#include <catch2/catch.hpp>
#include <string>

#include "base/diagnose/encoding.hpp"

using namespace plumbrule::diagnose;

TEST_CASE("a short text is quoted as it is") {
  CHECK(quoted("").size() == 2);
  CHECK(quoted("12,5 g") == "`12,5 g`");
  CHECK(quoted("\xC2\xB5m") == "`\xC2\xB5m`");
}

TEST_CASE("a long text is shortened between characters") {
  CHECK(quoted(std::string(40, 'x')) == "`" + std::string(40, 'x') + "`");
  CHECK(quoted(std::string(41, 'x')) == "`" + std::string(40, 'x') + "...`");
  CHECK(quoted("ab\xC2\xB5", 3) == "`ab...`");
  CHECK(quoted(std::string(1'000'000, 'x')).size() < 50);
}

TEST_CASE("control characters and bytes that are no text are shown by number") {
  using namespace std::string_literals;
  CHECK(quoted("a\tb\n\0\x1B\x7F"s) == "`a\\x09b\\x0a\\x00\\x1b\\x7f`");
  CHECK(quoted("\xFF\x80") == "`\\xff\\x80`");
}

TEST_CASE("what is quoted is always text") {
  std::string bytes(4, ' ');
  for (unsigned at = 0; at < 60'000; ++at) {
    bytes[at % 4] = static_cast<char>((at * 2'654'435'761U) >> 24U);
    CHECK_FALSE(first_bad_byte(quoted(bytes)).has_value());
    CHECK_FALSE(first_bad_byte(quoted(bytes, 2)).has_value());
  }
}

TEST_CASE("a text for the terminal holds no control character") {
  CHECK(printable("Airport road, 3 \xC2\xB5m") == "Airport road, 3 \xC2\xB5m");
  CHECK(printable("\x1B[31mred\x7F") == "\xEF\xBF\xBD[31mred\xEF\xBF\xBD");
  CHECK(printable("a\xC2\x9B"
                  "31mb") ==
        "a\xEF\xBF\xBD"
        "31mb");
  CHECK(printable("a\r\n\tb").find_first_of("\r\n\t") == std::string::npos);
  CHECK(printable("").empty());
}

TEST_CASE("what is quoted holds no control character of the upper range either") {
  CHECK(quoted("\xC2\x9B").find("\xC2\x9B") == std::string::npos);
  CHECK(quoted("\xC2\x80"
               "a\xC2\x9F")
            .find("\xC2") == std::string::npos);
  CHECK(quoted("\xC2\xA0\xC2\xB5") == "`\xC2\xA0\xC2\xB5`");  // no-break blank and micro sign are text
}
