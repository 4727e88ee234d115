// read_yaml on texts made to hurt it. All expectations: computed here.
#include <algorithm>
#include <catch2/catch.hpp>
#include <chrono>
#include <string>

#include "read_text.hpp"

using namespace plumbrule;
using namespace plumbrule::evidence;

TEST_CASE("nesting is bounded") {
  const std::size_t depth = evidence::deepest_nesting;
  CHECK(Read(repeated("[", depth) + "1" + repeated("]", depth)).tree.has_value());
  check_refused(Read(repeated("[", depth + 1) + "1" + repeated("]", depth + 1)), diagnose::Code::submittal_depth);
  check_refused(Read(repeated("[", 100'000) + repeated("]", 100'000)), diagnose::Code::submittal_depth);
  check_refused(Read(repeated("- ", 100'000)), diagnose::Code::submittal_depth);
  check_refused(Read(repeated("[", 100'000)), diagnose::Code::submittal_shape);
  check_refused(Read(repeated("{a: ", 100'000)), diagnose::Code::submittal_shape);
  check_refused(Read(repeated("{", 100'000)), diagnose::Code::submittal_shape);
}

TEST_CASE("hostile sizes are refused or read, and soon") {
  const std::size_t most = evidence::largest_submittal;
  std::string names;
  for (int at = 0; at < 20'000; ++at) {
    names += "n" + std::to_string(at) + ": 1\n";
  }
  const auto start = std::chrono::steady_clock::now();
  CHECK(Read("a: " + std::string(most - 3, 'x')).tree.has_value());
  check_refused(Read("a: " + std::string(10'000'000, 'x')), diagnose::Code::submittal_shape);
  check_refused(Read(std::string(most - 3, 'x') + ": 1"), diagnose::Code::submittal_yaml);
  check_refused(Read(repeated("\"", most - 1)), diagnose::Code::submittal_yaml);
  check_refused(Read("a: [" + repeated("1,", most / 2 - 4) + "]"), diagnose::Code::submittal_shape);
  CHECK(Read(names).tree.has_value());
  const Read duplicates(names + repeated("n19999: 1\n", 20'000));
  check_refused(duplicates, diagnose::Code::submittal_duplicate_key);
  CHECK(duplicates.diagnostics.all().size() == 20);
  CHECK(Read("a:" + repeated("\n  x", most / 4 - 1)).tree.has_value());
  // Seven files of the largest size: a second each, ten times what it takes, leaves room for the sanitizers.
  CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(10));
}

TEST_CASE("no damage to a good file crashes the reader or misplaces a message") {
  const std::string good = "a: &x [1, 'b', \"c\\n\"]\nd:\n- e: {f: *x}\n- |\n  g\n? h\n: !t i # j\n\xC3\xA9: ~\n";
  for (std::size_t at = 0; at <= good.size(); ++at) {
    for (const std::string_view put :
         {"", "\"", "'", "[", "]", "{", "}", ":", ": ", "- ", "\n", "\t", "#", "\xFF", "? "}) {
      const Read read(good.substr(0, at) + std::string(put) + good.substr(std::min(at + 1, good.size())));
      CHECK(read.tree.has_value() == read.diagnostics.empty());
      for (const auto& one : read.diagnostics.all()) {
        CHECK(one.primary.span.begin <= one.primary.span.end);
        CHECK(one.primary.span.end <= read.sources.text(0).size());
      }
    }
  }
}
