#include "plumbrule/session.hpp"

#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

namespace plumbrule {
namespace {

std::string text_of(const std::string& path) {
  std::stringstream out;
  out << std::ifstream(path, std::ios::binary).rdbuf();
  return out.str();
}

const std::string harrow = "examples/harrow/harrow_512.plumb";
const std::string vocabulary = "specs/vocabulary/cold_mix.plumb";

SubmittalText submittal(const std::string& name) {
  const std::string path = "examples/submittals/" + name + ".yaml";
  return {path, text_of(path)};
}

std::shared_ptr<MemoryFiles> shipped() {
  auto out = std::make_shared<MemoryFiles>();
  out->put(harrow, text_of(harrow));
  out->put(vocabulary, text_of(vocabulary));
  return out;
}

TEST_CASE("submittals reviewed in memory come to what the examples are called") {
  Session session(shipped(), {"specs"});
  const Rules rules = session.rules({{harrow}});
  REQUIRE(rules.usable());
  CHECK(rules.review(submittal("complies")).status() == Status::complies);
  CHECK(rules.review(submittal("fails")).status() == Status::fails);
  CHECK(rules.review(submittal("incomplete")).status() == Status::incomplete);
  const Report report = rules.review(submittal("complies"));
  for (const Form form : {Form::text, Form::brief, Form::markdown, Form::html, Form::json, Form::sarif, Form::junit,
                          Form::matrix_text, Form::matrix_markdown, Form::matrix_html, Form::matrix_json}) {
    CHECK(report.render(form).value_or("").size() > 100);
  }
  CHECK_FALSE(report.render(Form::rules));
  REQUIRE(report.specifications().size() == 1);
  CHECK(report.specifications().front().name == "harrow_512");
  CHECK_FALSE(report.specifications().front().clauses.empty());
}

TEST_CASE("one clause, or nothing where there is no such clause") {
  Session session(shipped(), {"specs"});
  const Report report = session.rules({{harrow}}).review(submittal("fails"));
  CHECK(report.render(Form::text, {false, 100, "512.3.2"}).value_or("").find("512.3.2") != std::string::npos);
  CHECK_FALSE(report.render(Form::text, {false, 100, "9.9"}));
  CHECK_FALSE(report.render(Form::html, {false, 100, "512.3.2"}));
}

TEST_CASE("rules that cannot be used answer nothing, and say why") {
  SECTION("a vocabulary that is not there") {
    auto files = shipped();
    files->remove(vocabulary);
    Session session(files, {"specs"});
    const Rules rules = session.rules({{harrow}});
    CHECK_FALSE(rules.usable());
    CHECK(has_errors(rules.diagnostics()));
  }
  SECTION("no rules, a day that is none, a file that is not there") {
    Session session(shipped(), {"specs"});
    CHECK_FALSE(session.rules({{}}).usable());
    CHECK_FALSE(session.rules({{harrow}, {}, "2026-13-40"}).usable());
    CHECK_FALSE(session.rules({{harrow, "absent.plumb"}}).usable());
  }
  Session session(shipped(), {"specs"});
  const Rules broken = session.rules({{"absent.plumb"}});
  for (const Report& report :
       {broken.review(submittal("complies")), broken.window(submittal("trials")), broken.envelope(),
        broken.follow_up(submittal("fails"), submittal("complies")), broken.contrast(broken)}) {
    CHECK(report.status() == Status::rules_broken);
    CHECK(has_errors(report.diagnostics()));
    CHECK_FALSE(report.render(Form::json));
  }
}

TEST_CASE("a submittal that cannot be read, or has an error, never complies") {
  Session session(shipped(), {"specs"});
  const Rules rules = session.rules({{harrow}});
  for (const char* text : {"", "[", "- a list", "submittal: 1\nsubmittal: 1\n", "\xFF"}) {
    const Report report = rules.review({"trial.yaml", text});
    INFO(text);
    CHECK(report.status() == Status::unusable);
    CHECK(has_errors(report.diagnostics()));
    CHECK_FALSE(report.render(Form::json));
  }
  const SubmittalText good = submittal("complies");
  const Report faulty = rules.review({good.name, good.text + "\nsurprise: 1\n"});
  CHECK(has_errors(faulty.diagnostics()));
  CHECK(faulty.status() != Status::complies);
}

TEST_CASE("places are said for people, in bytes, and as editors count") {
  auto files = shipped();
  // Two characters beyond the first 65,536, of four bytes and two units each, stand in front of the fault.
  files->put("odd.plumb", "plumbrule 1\nspecification odd \"\U0001D7D9\U0001D7DA\" wrong\n");
  Session session(files, {"specs"});
  const Rules rules = session.rules({{"odd.plumb"}});
  REQUIRE_FALSE(rules.diagnostics().empty());
  const auto& found = rules.diagnostics().front();
  REQUIRE(found.where);
  INFO(found.message);
  CHECK(found.where->file == "odd.plumb");
  CHECK(found.where->begin.line == 2);
  CHECK(found.where->begin.column == 24);
  CHECK(found.where->begin.byte == 12 + 23 + 6);
  CHECK(found.where->begin.utf16_line == 1);
  CHECK(found.where->begin.utf16_unit == 23 + 2);
  CHECK(json_of(rules.diagnostics()).find("\"utf16_unit\": 25") != std::string::npos);
}

TEST_CASE("a file that was changed is read again, and rules that were made stay") {
  auto files = shipped();
  Session session(files, {"specs"});
  const Rules before = session.rules({{harrow}});
  files->put(harrow, "plumbrule 1\n");
  CHECK(session.rules({{harrow}}).usable());
  session.changed(harrow);
  CHECK_FALSE(session.rules({{harrow}}).usable());
  CHECK(before.review(submittal("complies")).status() == Status::complies);
}

TEST_CASE("the other questions, each in a form of its own") {
  auto files = shipped();
  const std::string other = "specs/ohio_421_2010.plumb";
  files->put(other, text_of(other));
  Session session(files, {"specs"});
  const Rules rules = session.rules({{harrow}});
  const Rules ohio = session.rules({{other}});
  REQUIRE(ohio.usable());
  CHECK(rules.window(submittal("trials")).render(Form::html).value_or("").size() > 1000);
  CHECK(rules.window(submittal("trials"), {"nothing"}).status() == Status::unusable);
  CHECK(rules.follow_up(submittal("fails"), submittal("resubmitted")).render(Form::markdown));
  CHECK(rules.contrast(ohio).status() == Status::fails);
  CHECK(rules.contrast(rules).status() == Status::complies);
  CHECK(ohio.contrast(rules).render(Form::json));
  CHECK(rules.envelope().render(Form::rules).value_or("").find("plumbrule 1") != std::string::npos);
  CHECK(rules.envelope({"no=class"}).status() == Status::unusable);
  CHECK(session.proof({harrow}).status() == Status::complies);
  CHECK(session.proof({"absent"}).status() != Status::complies);
  CHECK(session.proof({}).status() == Status::unusable);
  Session stranger(shipped(), {"specs"});
  CHECK(rules.contrast(stranger.rules({{harrow}})).status() == Status::unusable);
}

}  // namespace
}  // namespace plumbrule
