#include <catch2/catch.hpp>

#include "apply/review/report.hpp"

namespace plumbrule::review {
namespace {

using explain::Explanation;
using explain::Reason;
using explain::Verdict;

Explanation finding(const std::string& number, Verdict verdict) {
  Explanation out;
  out.number = number;
  out.title = "Title " + number;
  out.sentence = "a demand";
  out.verdict = verdict;
  out.severity = check::Severity::reject;
  out.status = check::Status::verified;
  return out;
}

Found of(std::vector<Explanation> findings) {
  Found out;
  SpecificationReport& one = out.specifications.emplace_back();
  one.name = "roads";
  one.title = "Roads (invented)";
  one.findings = std::move(findings);
  return out;
}

std::vector<Action> actions_of(Found found) { return Report(std::move(found), {}).actions; }

TEST_CASE("a clause that fails is for the designer, and the changed mix for the laboratory") {
  Explanation failing = finding("1", Verdict::fails);
  failing.mend = "use less binder";
  const auto actions = actions_of(of({failing, finding("2", Verdict::fails)}));
  REQUIRE(actions.size() == 3);
  CHECK(actions[0].hand == Hand::laboratory);
  CHECK(actions[0].clauses == std::vector<std::string>{"1", "2"});
  CHECK(actions[1].hand == Hand::designer);
  CHECK(actions[1].what == "use less binder");
  CHECK(actions[2].what == "change the mix or its materials so that it is met: a demand");
}

TEST_CASE("what the specification leaves to the engineer is for the agency") {
  Explanation failing = finding("1", Verdict::fails);
  failing.severity = check::Severity::refer;
  const auto actions = actions_of(of({failing}));
  REQUIRE(actions.size() == 1);
  CHECK(actions[0].hand == Hand::agency);
}

TEST_CASE("evidence is for the laboratory, a class or the job mix for the designer; asked for twice it is one action") {
  Explanation test = finding("1", Verdict::not_shown);
  test.reason = Reason::no_result;
  test.submit = "submit a result: loss";
  Explanation again = test;
  again.number = "2";
  Explanation stated = finding("3", Verdict::not_shown);
  stated.reason = Reason::class_not_stated;
  stated.submit = "state `traffic` under `classes`";
  const auto actions = actions_of(of({test, again, stated}));
  REQUIRE(actions.size() == 2);
  CHECK(actions[0].hand == Hand::laboratory);
  CHECK(actions[0].clauses == std::vector<std::string>{"1", "2"});
  CHECK(actions[1].hand == Hand::designer);
}

TEST_CASE("optional tests that are not shown ask for nothing; advice that fails is only to be considered") {
  Explanation optional = finding("1", Verdict::not_shown);
  optional.optional = true;
  Explanation advice = finding("2", Verdict::fails);
  advice.severity = check::Severity::advise;
  const auto actions = actions_of(of({optional, advice}));
  REQUIRE(actions.size() == 1);
  CHECK(actions[0].what == "consider, as advice only: a demand");
}

TEST_CASE("limits that nobody confirmed are for the agency, those of clauses that do not apply are not") {
  Explanation open = finding("1", Verdict::complies);
  open.status = check::Status::unverified;
  Explanation aside = open;
  aside.number = "2";
  aside.verdict = Verdict::does_not_apply;
  const auto actions = actions_of(of({open, aside, finding("3", Verdict::complies)}));
  REQUIRE(actions.size() == 1);
  CHECK(actions[0].hand == Hand::agency);
  CHECK(actions[0].clauses == std::vector<std::string>{"1"});
}

TEST_CASE("an action has the place of the value that its clauses turn on, and none where they are several") {
  const auto refused = [](const std::string& number, const std::vector<std::string>& places) {
    Explanation out = finding(number, Verdict::not_shown);
    out.reason = Reason::refused;
    out.submit = "check the readings";
    for (const std::string& place : places) {
      explain::Comparison& one = out.comparisons.emplace_back();
      one.verdict = Verdict::not_shown;
      one.place = place;
    }
    return out;
  };
  const auto place = [](std::vector<Explanation> findings) {
    const auto actions = actions_of(of(std::move(findings)));
    REQUIRE(actions.size() == 1);
    return actions[0].place;
  };
  CHECK(place({refused("1", {"trial.yaml:3:5"}), refused("2", {"", "trial.yaml:3:5"})}) == "trial.yaml:3:5");
  CHECK(place({refused("1", {"trial.yaml:3:5"}), refused("2", {"trial.yaml:4:5"})}).empty());
  CHECK(place({refused("1", {"trial.yaml:3:5", "trial.yaml:4:5"})}).empty());
}

TEST_CASE("errors come first, and carry their place") {
  Found report = of({finding("1", Verdict::complies)});
  diagnose::Problem& problem = report.problems.emplace_back();
  problem.place = "trial.yaml:3:5";
  problem.message = "found `x`, not a number";
  problem.help = "write a number";
  const auto actions = actions_of(report);
  REQUIRE(actions.size() == 1);
  CHECK(actions[0].place == "trial.yaml:3:5");
  CHECK(actions[0].what == "correct the submittal: found `x`, not a number; write a number");
  CHECK(actions_of(of({finding("1", Verdict::complies)})).empty());
}

}  // namespace
}  // namespace plumbrule::review
