#include "show/report/parts/table.hpp"

#include <catch2/catch.hpp>

namespace plumbrule::report {
namespace {

TEST_CASE("a folded line keeps every word, whatever a line begins with") {
  CHECK(folded_line("the margin of this clause -5 % and -- more", 2, 22) ==
        "  the margin of this\n  clause -5 % and --\n  more\n");
  CHECK(folded_line("twenty letters, then -5 %", 0, 21) == "twenty letters, then\n-5 %\n");
}

TEST_CASE("a folded line lets no control character through") {
  CHECK(folded_line("a\x1B[2Jb", 0, 40).find('\x1B') == std::string::npos);
}

}  // namespace
}  // namespace plumbrule::report
