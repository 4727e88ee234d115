#include "base/source/files.hpp"

#include <catch2/catch.hpp>

namespace plumbrule::source {
namespace {

TEST_CASE("files in memory: found by any spelling of their path, and folders where a file is below") {
  Memory files;
  files.put("rules/vocabulary/mix.plumb", "text");
  files.put("./rules/a.plumb", "a");
  files.put("rulesets.plumb", "b");
  CHECK(files.read("rules/x/../vocabulary/mix.plumb").text == "text");
  CHECK(files.find("rules/a.plumb") == Found::file);
  CHECK(files.find("rules") == Found::folder);
  CHECK(files.find("rules/") == Found::folder);
  CHECK(files.find("rule") == Found::nothing);
  CHECK(files.below("rules").paths == std::vector<std::string>{"rules/a.plumb", "rules/vocabulary/mix.plumb"});
  CHECK(files.below("rules").failure.empty());
  CHECK(files.below(".").paths.size() == 3);
}

TEST_CASE("files in memory: what is not there has a reason") {
  Memory files;
  files.put("rules/a.plumb", "a");
  CHECK(files.read("rules").reason == "it is a folder, not a file");
  CHECK(files.read("b.plumb").reason == "no such file");
  CHECK(files.remove("rules/a.plumb"));
  CHECK_FALSE(files.remove("rules/a.plumb"));
  CHECK(files.find("rules") == Found::nothing);
}

TEST_CASE("the disk: what a path leads to") {
  const Disk files;
  CHECK(files.find("specs") == Found::folder);
  CHECK(files.find("README.md") == Found::file);
  CHECK(files.find("no/such/file") == Found::nothing);
  CHECK(files.find("/dev/null") == Found::other);
}

}  // namespace
}  // namespace plumbrule::source
