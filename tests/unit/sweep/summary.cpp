#include "apply/sweep/summary.hpp"

#include <catch2/catch.hpp>

// All expected values: computed here.
namespace plumbrule::sweep {
namespace {

// Ten records, one of which could not be read; `replaced` stands in place of a part of it.
std::string summary_text(const std::string& part = "", const std::string& replaced = "",
                         const std::string& archive = "a") {
  std::string out =
      R"({"report":"sweep 1","records":10,"unreadable":1,"with_errors":2,"blank_lines":0,"review_day":"",)"
      R"("specifications":[{"name":"s","title":"S","edition":"1","status":"","outcomes":{"No exception taken":6,)"
      R"("Refer to the engineer":1,"Revise and resubmit":1,"Incomplete":1},"clauses":[{"number":"1","title":"One",)"
      R"("complies":5,"fails":2,"not_shown":1,"does_not_apply":1,"margins":{"count":7,)"
      R"("counts_by_thousandths":[[-10,2],[25,5]]}}]}],"program":"plumbrule 9","files":[)"
      R"({"path":"s.plumb","kind":"specification","sha256":"11"},{"path":")" +
      archive + R"(","kind":"archive","sha256":")" + archive + R"("}]})";
  if (!part.empty()) {
    REQUIRE(out.find(part) != std::string::npos);
    out.replace(out.find(part), part.size(), replaced);
  }
  return out;
}

std::string reason_of(const std::string& text) {
  std::string reason;
  CHECK_FALSE(read_summary(text, reason));
  return reason;
}

TEST_CASE("a summary is read back, also as the last line of verdicts") {
  std::string reason;
  for (const std::string& text : {summary_text(), "{\"a\":1}\n{\"summary\":" + summary_text() + "}\n"}) {
    const auto read = read_summary(text, reason);
    REQUIRE(read);
    CHECK(read->tally.records == 10);
    CHECK(read->tally.specifications.front().clauses.front().verdicts.at(0) == 5);
    CHECK(read->tally.specifications.front().clauses.front().margins.at(25) == 5);
    CHECK(read->origin.version == "9");
  }
}

// Counts that do not agree with each other would read as records that comply.
TEST_CASE("a summary whose counts do not agree is damaged") {
  const auto damaged = [](const std::string& part, const std::string& replaced) {
    return reason_of(summary_text(part, replaced));
  };
  CHECK(damaged(R"("complies":5)", R"("complies":6)") ==
        "its summary is damaged: verdicts that are not one for each record");
  CHECK(damaged("taken\":6", "taken\":7") == "its summary is damaged: outcomes that are not one for each record");
  CHECK(damaged("[25,5]", "[25,6]") == "its summary is damaged: more margins than comparisons");
  CHECK(damaged("[25,5]", "[2500,5]") == "its summary is damaged: a margin of 2500");
  CHECK(damaged("errors\":2", "errors\":10") == "its summary is damaged: more records with errors than records");
  CHECK(damaged("errors\":2", "errors\":-2") == "its summary is damaged: a count of -2");
  CHECK(damaged(R"("kind":"specification")", R"("kind":"archive")") ==
        "its summary is damaged: no digest of a rule file");
  CHECK(damaged("sweep 1", "sweep 2") == "its summary is damaged: another layout than `sweep 1`");
  CHECK(damaged(R"("records":10,)", R"("records":10,"records":10,)") == "its summary is damaged: a key stands twice");
  CHECK(damaged(R"("records":10,)", "") == "it holds no whole summary of a sweep");
  CHECK(damaged("}]}", "") ==
        "it is no summary as JSON, and its last line, where verdicts have their summary, is none either");
}

TEST_CASE("parts add up once, and only if they were held against the same") {
  std::string reason;
  auto whole = read_summary(summary_text(), reason);
  const auto part = [&](const std::string& from, const std::string& to) {
    return *read_summary(summary_text(from, to, "b"), reason);
  };
  REQUIRE(whole);
  CHECK_FALSE(add_part(*whole, *read_summary(summary_text(), reason), reason));
  CHECK(reason == "it counts `a`, which another part counts too, as its SHA-256 says");
  CHECK_FALSE(add_part(*whole, part("edition\":\"1", "edition\":\"2"), reason));
  CHECK(reason == "it was held against other specifications");
  CHECK_FALSE(add_part(*whole, part("sha256\":\"11", "sha256\":\"12"), reason));
  CHECK(reason == "it was made with other rule files, or another version of the program");
  CHECK_FALSE(add_part(*whole, part("day\":\"\"", "day\":\"2026-01-01\""), reason));
  CHECK(reason == "it was held against what was in force on another day");
  CHECK(whole->tally.records == 10);
  CHECK(add_part(*whole, part("", ""), reason));
  CHECK(whole->tally.records == 20);
  CHECK(whole->origin.files.size() == 3);
}

}  // namespace
}  // namespace plumbrule::sweep
