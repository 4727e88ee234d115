#include "apply/followup/followup.hpp"

#include <catch2/catch.hpp>

namespace plumbrule::followup {
namespace {

TEST_CASE("what two specifications see alike is kept once", "[followup]") {
  FollowUp all;
  FollowUp one;
  one.values.push_back({"loss", "after", "1 g", "2 g", "+1 g", {0, 1, 2}, {1, 1, 2}});
  one.looks.push_back({LookKind::reading_altered, "found", "look", {0, 1, 2}, {1, 1, 2}});
  one.results.push_back({true, "loss", "1 g", {1, 5, 6}});
  join(all, one);
  join(all, one);
  CHECK(all.values.size() == 1);
  CHECK(all.looks.size() == 1);
  CHECK(all.results.size() == 1);
  one.looks.front().kind = LookKind::moved;
  join(all, one);
  CHECK(all.looks.size() == 2);
}

TEST_CASE("words of progress and codes of looks are those of the language", "[followup]") {
  CHECK(progress_text(Progress::closed) == "closed");
  CHECK(progress_text(Progress::fresh) == "new");
  CHECK(progress_text(Progress::withdrawn) == "withdrawn");
  CHECK(look_code(LookKind::reading_altered) == "reading_altered");
  CHECK(look_code(LookKind::readings_repeated) == "readings_repeated");
}

}  // namespace
}  // namespace plumbrule::followup
