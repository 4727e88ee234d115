// Checked rules as flat code and thresholds.
#include <catch2/catch.hpp>

#include "language/check/check.hpp"
#include "language/plan/plan.hpp"

using namespace plumbrule;
using namespace plumbrule::plan;

namespace {

struct Compiled {
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  check::Rules rules;
  Plan plan;

  explicit Compiled(const std::string& text, const std::string& head = "") {
    std::vector<syntax::RuleFile> files;
    files.push_back(syntax::parse(sources, sources.add("rules.plumb", "plumbrule 1 " + head + text), diagnostics));
    auto checked = check::check(sources, files, diagnostics);
    for (const diagnose::Diagnostic& one : diagnostics.all()) {
      UNSCOPED_INFO(one.message);
    }
    REQUIRE(checked.has_value());
    rules = std::move(*checked);
    plan = compile(rules);
  }
  [[nodiscard]] std::string code(const Program& program) const {
    constexpr std::array<std::string_view, 14> words{"number",     "reading", "result",  "lookup", "grade",
                                                     "cumulative", "total",   "convert", "add",    "subtract",
                                                     "multiply",   "divide",  "larger",  "smaller"};
    std::string out;
    for (const Op& op : part(plan.ops, program.ops)) {
      out += (out.empty() ? "" : " ") + std::string(words.at(static_cast<std::size_t>(op.code)));
    }
    return out;
  }
};

Compiled specified(const std::string& compare, const std::string& demand) {
  return Compiled("measure m \"M\" in g reported to 0.5 g requirement 1 \"R\" m " + demand,
                  "specification s \"S\" edition 2026 compare by the " + compare + " ");
}

}  // namespace

TEST_CASE("a formula is postfix code") {
  const Compiled one("measure m \"M\" in g from a in g, b in g computed as (a - b) * 2 / 4");
  CHECK(one.code(one.plan.measures.at(0).formula) == "reading reading subtract number multiply number divide");
  CHECK(one.plan.deepest_stack == 2);
  const Compiled deep("measure m \"M\" in g from a in g computed as a - (a - (a - (a - a)))");
  CHECK(deep.plan.deepest_stack == 5);
}

TEST_CASE("a value is graded in the unit of the edges") {
  const Compiled one(
      "table t by value in g in number below 0.7 g: 4 at most 0.7 g: 3 otherwise: 1 "
      "measure m \"M\" in number from a in kg, b in g computed as t(a) + t(b - a)");
  CHECK(one.code(one.plan.measures.at(0).formula) ==
        "reading convert grade reading reading convert subtract grade add");
  const Table& table = one.plan.tables.at(0);
  CHECK(table.rising);
  CHECK(table.total());
  REQUIRE(table.edges.size() == 2);
  CHECK_FALSE(table.edges.at(0).inclusive);
  CHECK(table.edges.at(1).inclusive);
}

TEST_CASE("only what is in another unit is converted, to the unit of the left side") {
  const Compiled one("measure m \"M\" in g from a in g, b in kg, c in g computed as a + b + c");
  CHECK(one.code(one.plan.measures.at(0).formula) == "reading reading convert add reading add");
  const Op& convert = one.plan.ops.at(2);
  CHECK(one.rules.units.at(convert.from).text == "kg");
  CHECK(one.rules.units.at(convert.to).text == "g");
  const Compiled product("measure m \"M\" in g.m from a in g, b in mm computed as a * b");
  CHECK(product.code(product.plan.measures.at(0).formula) == "reading reading multiply");
}

TEST_CASE("a difference added to a temperature is converted as a difference") {
  const Compiled one("measure m \"M\" in degC from a in degC, b in Fdeg computed as a + b");
  CHECK(one.code(one.plan.measures.at(0).formula) == "reading reading convert add");
  const Op& convert = one.plan.ops.at(2);
  CHECK_FALSE(one.rules.units.at(convert.from).point);
  CHECK_FALSE(one.plan.units.at(convert.to).point);
}

TEST_CASE("a refusal compares in the unit of its left side") {
  const Compiled one("measure m \"M\" in g from a in g, b in kg computed as a refused when a > b because \"x\"");
  REQUIRE(one.plan.refusals.size() == 1);
  CHECK(one.code(one.plan.refusals[0].left) == "reading");
  CHECK(one.code(one.plan.refusals[0].right) == "reading convert");
  CHECK(one.plan.refusals[0].needs_readings);
  const Compiled result("measure m \"M\" in g refused when m < 0 g because \"x\"");
  CHECK_FALSE(result.plan.refusals.at(0).needs_readings);
}

TEST_CASE("limit and rounding are one threshold") {
  // ASTM E29, rounding method: 5.5 rounds to 6 and 4.5 to 4 (ties to even). Computed here.
  const auto even = specified("rounding method, ties to even", "shall be at most 4 g").plan.checks.at(0);
  CHECK(even.has_high);
  CHECK_FALSE(even.has_low);
  CHECK(even.high.value == Decimal::of("4.5"));
  CHECK(even.high.inclusive);
  const auto odd = specified("rounding method, ties to even", "shall be at most 5 g").plan.checks.at(0);
  CHECK(odd.high.value == Decimal::of("5.5"));
  CHECK_FALSE(odd.high.inclusive);
  const auto place =
      specified("rounding method to reporting place, ties up", "shall be at least 4 g").plan.checks.at(0);
  CHECK(place.low.value == Decimal::of("3.75"));
  CHECK(place.low.inclusive);
  const auto absolute = specified("absolute method", "shall be between 4 g and 5 g").plan.checks.at(0);
  CHECK(absolute.low.value == Decimal{4});
  CHECK(absolute.high.value == Decimal{5});
  CHECK(absolute.high.inclusive);
}

TEST_CASE("statistics, alternatives and words") {
  const Compiled one(
      "category c \"C\": a, b measure m \"M\" in g measure w \"W\" among c\n"
      "requirement 1 \"R\" where c is b optional either m, least of at least 3 specimens, shall be at most 4 g\n"
      "  or w shall be one of b",
      "specification s \"S\" edition 2026 compare by the absolute method ");
  REQUIRE(one.plan.requirements.size() == 1);
  CHECK(one.plan.requirements[0].optional);
  CHECK(one.plan.cases.at(one.plan.requirements[0].cases.begin).groups.size() == 2);
  CHECK(one.plan.tests.at(0).words == 2U);
  CHECK(one.plan.checks.at(0).statistic == syntax::StatisticKind::least);
  CHECK(one.plan.checks.at(0).specimens == 3);
  CHECK(one.plan.checks.at(1).words == 2U);
}
