// "Did you mean". Distances: computed here.
#include "base/diagnose/suggest.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <string>
#include <vector>

using plumbrule::diagnose::nearest;
using plumbrule::diagnose::suggestion;

namespace {
using Words = std::vector<std::string_view>;
}

TEST_CASE("one edit of each kind is near") {
  const Words known{"cohesion"};
  for (const std::string_view word : {"cohesion", "choesion", "cohesio", "cohesionn", "cohezion", "ohesion"}) {
    INFO(word);
    CHECK(nearest(word, known) == "cohesion");
  }
}

TEST_CASE("a swap of neighbours is one edit") {
  CHECK(nearest("ab", Words{"ba"}) == "ba");
  CHECK_FALSE(nearest("abc", Words{"cab"}).has_value());  // two edits, one is allowed
}

TEST_CASE("at most a third of the longer word, and at least one edit") {
  CHECK(nearest("g", Words{"kg"}) == "kg");
  CHECK(nearest("soak", Words{"sock"}) == "sock");
  CHECK_FALSE(nearest("soak", Words{"sort"}).has_value());  // 2 of 4
  CHECK(nearest("curing", Words{"during"}) == "during");
  CHECK(nearest("abcdef", Words{"abcdxy"}) == "abcdxy");        // 2 of 6
  CHECK_FALSE(nearest("abcdef", Words{"abcxyz"}).has_value());  // 3 of 6
  CHECK_FALSE(nearest("soak", Words{"temperature"}).has_value());
}

TEST_CASE("a word of which nothing is left is not near") {
  CHECK_FALSE(nearest("s", Words{"g"}).has_value());
  CHECK_FALSE(nearest("F", Words{"%"}).has_value());
  CHECK(nearest("G", Words{"g"}) == "g");
  CHECK(nearest("g", Words{"g"}) == "g");
}

TEST_CASE("the nearest wins; of equally near ones the one that begins alike, then the first") {
  CHECK(nearest("losses", Words{"bosses", "losse", "loss"}) == "losse");
  CHECK(nearest("cat", Words{"bat", "car"}) == "car");
  CHECK(nearest("cat", Words{"car", "cab"}) == "car");
  CHECK(nearest("cat", Words{"car", "cat"}) == "cat");
}

TEST_CASE("no word, no candidate, or words of hostile length") {
  CHECK_FALSE(nearest("", Words{"a"}).has_value());
  CHECK_FALSE(nearest("a", Words{}).has_value());
  CHECK(nearest(std::string(64, 'x'), Words{std::string_view("y"), std::string_view()}) == std::nullopt);
  const std::string longest(64, 'x');
  const std::string longer(65, 'x');
  const std::string huge(1'000'000, 'x');
  CHECK(nearest(longest, Words{longest}).has_value());
  CHECK_FALSE(nearest(longer, Words{longest}).has_value());
  CHECK_FALSE(nearest(huge, Words{huge}).has_value());
  CHECK_FALSE(nearest(longest, Words{huge}).has_value());
}

TEST_CASE("a suggestion, or the list of known words") {
  CHECK(suggestion("soke", Words{"cure", "soak"}) == "known: `cure`, `soak`");
  CHECK(suggestion("soka", Words{"cure", "soak"}) == "did you mean `soak`?");
  CHECK(suggestion("x", Words{}) == "nothing of that kind is declared here; declare it, or correct the name");
  const std::array<std::string_view, 9> nine{"aaaa", "bbbb", "cccc", "dddd", "eeee", "ffff", "gggg", "hhhh", "iiii"};
  CHECK(suggestion("zzzz", std::span(nine).first(8)).ends_with("`gggg`, `hhhh`"));
  CHECK(suggestion("zzzz", nine).ends_with("`gggg`, `hhhh`, ..."));
  const std::string huge(1'000'000, 'x');
  CHECK(suggestion("a", Words{huge, huge}).size() < 200);
}
