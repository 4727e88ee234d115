#include <catch2/catch.hpp>
#include <cstring>
#include <string>

#include "plumbrule/plumbrule.h"

namespace {

TEST_CASE("C: what is misspelt is refused, and nothing is released twice") {
  plumbrule_session* session = plumbrule_session_in_memory(nullptr);
  REQUIRE(session != nullptr);
  CHECK(plumbrule_session_in_memory("{}") == nullptr);
  const std::string rules = "plumbrule 1\n";
  CHECK(plumbrule_session_put(session, "a.plumb", rules.data(), rules.size()) == 1);
  CHECK(plumbrule_session_put(session, nullptr, rules.data(), rules.size()) == 0);
  CHECK(plumbrule_rules_load(session, R"({"against": ["a.plumb"], "when": "2026-01-01"})") == nullptr);
  CHECK(plumbrule_rules_load(session, R"({"agianst": ["a.plumb"]})") == nullptr);
  CHECK(plumbrule_rules_load(session, "not JSON") == nullptr);
  plumbrule_rules* broken = plumbrule_rules_load(session, R"({"against": ["a.plumb"]})");
  REQUIRE(broken != nullptr);
  CHECK(plumbrule_rules_usable(broken) == 0);
  char* why = plumbrule_rules_diagnostics(broken);
  REQUIRE(why != nullptr);
  CHECK(std::strstr(why, "\"severity\": \"error\"") != nullptr);
  plumbrule_text_release(why);
  plumbrule_session_close(session);
  plumbrule_submittal* submittal = plumbrule_submittal_of("a.yaml", "submittal: 1\n", 13, nullptr);
  plumbrule_report* report = plumbrule_review(broken, submittal);
  CHECK(plumbrule_report_status(report) == PLUMBRULE_RULES_BROKEN);
  CHECK(plumbrule_report_render(report, "json") == nullptr);
  CHECK(plumbrule_report_render(report, "picture") == nullptr);
  plumbrule_report_release(report);
  plumbrule_submittal_release(submittal);
  plumbrule_rules_release(broken);
}

TEST_CASE("C: nothing instead of a thing is nothing") {
  CHECK(std::strcmp(plumbrule_version(), "0.1.0") == 0);
  CHECK(plumbrule_report_status(nullptr) == PLUMBRULE_UNUSABLE);
  CHECK(plumbrule_review(nullptr, nullptr) == nullptr);
  CHECK(plumbrule_report_render(nullptr, "json") == nullptr);
  CHECK(plumbrule_rules_usable(nullptr) == 0);
  plumbrule_report_release(nullptr);
  plumbrule_session_close(nullptr);
  plumbrule_session* disk = plumbrule_session_on_disk("[\"specs\"]");
  CHECK(plumbrule_session_put(disk, "a.plumb", "x", 1) == 0);
  plumbrule_session_close(disk);
}

}  // namespace
