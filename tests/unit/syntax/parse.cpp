// From text to syntax tree: what is read, where it stands, and how reading goes on after an error.
#include <catch2/catch.hpp>
#include <random>

#include "language/syntax/tree.hpp"

using namespace plumbrule;
using namespace plumbrule::syntax;

namespace {

struct Read {
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  RuleFile file;

  explicit Read(std::string text) { file = parse(sources, sources.add("mix.plumb", std::move(text)), diagnostics); }

  template <typename Item>
  [[nodiscard]] const Item& item(std::size_t at) const {
    REQUIRE(file.items.size() > at);
    REQUIRE(std::holds_alternative<Item>(file.items[at]));
    return std::get<Item>(file.items[at]);
  }
  [[nodiscard]] std::string_view at(const Span& span) const { return sources.text(span); }
  [[nodiscard]] std::string codes() const {
    std::string out;
    for (const diagnose::Diagnostic& one : diagnostics.all()) {
      out += std::string(diagnose::text(one.code)) + " `" + std::string(at(one.primary.span)) + "`; ";
    }
    return out;
  }
};

Read rules(const std::string& text) { return Read("plumbrule 1\n" + text); }

}  // namespace

TEST_CASE("a measure with every clause") {
  const Read read = rules(
      "measure loss \"abrasion\" \"loss\" in g/m2 reported to 0.1 g/m2 under soak and sieve method \"TB 100\"\n"
      "  from before in g, mixer, mode among rupture\n"
      "  computed as before * factor(mixer)\n"
      "  refused when loss < 0 g/m2 because \"no\"\n"
      "  source \"S\" status unverified \"why\" note \"N\"");
  INFO(read.codes());
  CHECK(read.diagnostics.empty());
  const auto& measure = read.item<Measure>(0);
  CHECK(measure.name.value == "loss");
  CHECK(read.at(measure.name.span) == "loss");
  CHECK(measure.title.value == "abrasion loss");
  CHECK(measure.unit->text == "g/m2");
  CHECK(read.at(measure.unit->span) == "g/m2");
  CHECK(measure.reported->number == quantity::Decimal::of("0.1"));
  CHECK(read.at(measure.reported->span) == "0.1 g/m2");
  REQUIRE(measure.conditions.size() == 2);
  CHECK(measure.conditions[1].value == "sieve");
  REQUIRE(measure.readings.size() == 3);
  CHECK(measure.readings[0].unit->text == "g");
  CHECK_FALSE(measure.readings[1].unit.has_value());
  CHECK(measure.readings[2].category.value == "rupture");
  CHECK(read.at(read.file.exprs.at(*measure.computed).span) == "before * factor(mixer)");
  REQUIRE(measure.refusals.size() == 1);
  CHECK(measure.refusals[0].comparison == Comparison::less);
  CHECK(measure.provenance.status_note.value == "why");
  CHECK_FALSE(measure.broken);
}

TEST_CASE("a requirement, and the places of its parts") {
  const Read read = rules(
      "requirement 512.3.1-a \"Loss\" where traffic is not one of light, medium and mixer is N-50\n"
      "  either loss under soak 1 h and sieve No. 4, mean of at least 2 specimens, shall be at most 538 g/m2\n"
      "  or mode shall be one of spin, solid_spin\n"
      "  optional severity advise cite \"T\" because \"B\" mend \"M\"");
  INFO(read.codes());
  CHECK(read.diagnostics.empty());
  const auto& requirement = read.item<Requirement>(0);
  CHECK(requirement.number.value == "512.3.1-a");
  REQUIRE(requirement.where.size() == 2);
  CHECK(requirement.where[0].negated);
  CHECK(requirement.where[0].words.size() == 2);
  CHECK(requirement.where[1].words.at(0).value == "N-50");
  CHECK(requirement.optional);
  REQUIRE(requirement.alternatives.size() == 2);
  const Assertion& first = requirement.alternatives[0];
  CHECK(read.at(first.measure.span) == "loss");
  REQUIRE(first.conditions.size() == 2);
  CHECK(read.at(first.conditions[0].span) == "soak 1 h");
  CHECK(read.at(first.conditions[1].span) == "sieve No. 4");
  CHECK(std::get<Quantity>(first.conditions[1].value).sieve == "No. 4");
  CHECK(first.statistic.kind == StatisticKind::mean);
  CHECK(first.statistic.at_least == 2);
  CHECK(read.at(first.statistic.span) == "mean of at least 2 specimens");
  CHECK(first.limit.kind == LimitKind::at_most);
  CHECK(read.at(first.limit.span) == "at most 538 g/m2");
  CHECK(read.at(requirement.alternatives[1].limit.span) == "one of spin, solid_spin");
}

TEST_CASE("formulas read from the left, products before sums, brackets first") {
  const Read read = rules("measure m \"m\" in g from a in g, b in g, c in g computed as a - b + (a + b) * 2 / c");
  INFO(read.codes());
  const auto& exprs = read.file.exprs;
  const auto& sum = std::get<BinaryExpr>(exprs.at(*read.item<Measure>(0).computed).node);
  CHECK(sum.op == Operator::add);
  CHECK(read.at(exprs.at(sum.left).span) == "a - b");
  CHECK(read.at(exprs.at(sum.right).span) == "(a + b) * 2 / c");
  const auto& quotient = std::get<BinaryExpr>(exprs.at(sum.right).node);
  CHECK(quotient.op == Operator::divide);
  CHECK(read.at(exprs.at(quotient.left).span) == "(a + b) * 2");
}

TEST_CASE("hyphens inside a name, blanks around a minus") {
  const Read read = rules("measure m \"m\" in g from a-b in g computed as a-b - a-b");
  INFO(read.codes());
  CHECK(read.diagnostics.empty());
  CHECK(read.item<Measure>(0).readings.at(0).name.value == "a-b");
}

TEST_CASE("a reserved word only as a whole word") {
  const Read read = rules("measure meaning \"m\" in in\nmeasure in_situ \"m\" in g\nmeasure at-rest \"m\" in g");
  INFO(read.codes());
  CHECK(read.diagnostics.empty());
  CHECK(read.item<Measure>(0).unit->text == "in");
  CHECK(read.item<Measure>(2).name.value == "at-rest");
}

TEST_CASE("comments and line ends are gaps, but not inside a text") {
  const Read read = rules("measure # one\r\nm \"a # b\" # \"open\r\n in g");
  INFO(read.codes());
  CHECK(read.diagnostics.empty());
  CHECK(read.item<Measure>(0).title.value == "a # b");
}

TEST_CASE("reading goes on at the next clause of the item and at the next item") {
  const Read read = rules(
      "measure a \"a\" in g reported to 1,5 g method \"TB 100\"\n"
      "measure b \"b\" in g methd \"x\" note \"kept\"\n"
      "hello\n"
      "measure c \"c\" in g");
  CHECK(read.codes() == "syntax.unexpected `,`; syntax.unexpected `methd`; syntax.unexpected `hello`; ");
  const auto& first = read.item<Measure>(0);
  CHECK(first.broken);
  CHECK(first.method.value == "TB 100");
  CHECK(read.item<Measure>(1).broken);
  CHECK(read.item<Measure>(1).provenance.note.value == "kept");
  CHECK_FALSE(read.item<Measure>(2).broken);
}

TEST_CASE("an opener inside a text or comment opens nothing after an error") {
  const Read read = rules(
      "measure a \"a\" in g ! \"measure x\" # measure y\n"
      "  note \"kept\"\n"
      "measure b \"b\" in g");
  CHECK(read.file.items.size() == 2);
  CHECK(read.item<Measure>(0).provenance.note.value == "kept");
  CHECK(read.diagnostics.all().size() == 1);
}

TEST_CASE("an item whose head cannot be read is left out, the next one is read") {
  const Read read = rules("category t : a, b\ncondition s \"s\" in min\nbasis \"b\"\nmeasure m \"m\" in g");
  CHECK(read.codes() == "syntax.unexpected `:`; syntax.unexpected `\"b\"`; ");
  CHECK(read.file.items.size() == 2);
}

TEST_CASE("the first line") {
  CHECK(Read("plumbrule 1").diagnostics.empty());
  CHECK(Read("# comment\n\n plumbrule 1 basis b \"b\"").file.items.size() == 1);
  CHECK(Read("").codes() == "syntax.unexpected ``; ");
  CHECK(Read("plumbrule").codes() == "syntax.unexpected ``; ");
  CHECK(Read("plumbrule 2 basis b").codes() == "syntax.version `2`; ");
  const Read missing("basis b \"b\"");
  CHECK(missing.file.items.size() == 1);
  CHECK(missing.codes() == "syntax.unexpected `basis`; ");
}

TEST_CASE("64 brackets are read, 65 are refused, and brackets in texts and comments do not count") {
  const auto nested = [](std::size_t depth) {
    return "measure m \"" + std::string(100, '(') + "\" in g # " + std::string(100, '(') +
           "\n from a in g computed as " + std::string(depth, '(') + "a" + std::string(depth, ')');
  };
  CHECK(rules(nested(64)).diagnostics.empty());
  CHECK(rules(nested(65)).codes() == "syntax.depth `(`; ");
  CHECK(rules(nested(100'000)).codes() == "syntax.depth `(`; ");
}

TEST_CASE("what is no number") {
  for (const char* bad : {"1,5", "1e3", "1E-3", "1.", ".5", "+1", "--1", "1.2.3", "NaN", "0x10"}) {
    INFO(bad);
    CHECK_FALSE(rules("measure m \"m\" in g reported to " + std::string(bad) + " g").diagnostics.empty());
  }
}

TEST_CASE("no damage to a good file crashes the reader or misplaces a message") {
  const std::string good =
      "plumbrule 1\nspecification s \"S\" edition 2026-03-01 uses a, b compare by the rounding method to 0.1 g, ties "
      "up\n"
      "section 1 \"One\"\ngrading g \"G\" sieve No. 4 70 to 90 % sieve 3/8 in no limit cite \"c\"\n"
      "requirement 1.1 \"R\" where t is not heavy m under soak 1 h, each of 2 specimens, shall be between 1 g and 2 g\n"
      "example \"E\" for 1.1 given m from a 1 g, b x under soak 1 h given m at least 3 g and 4 g expect not shown\n"
      "table t \"T\" by c in 1/m2 x: 1 y: -2.5\n"
      "table u by value in % of d in points at least 90 % of d: 4 above 75 % of d: 3 otherwise: 0\nmeasure m \"M\" in "
      "% of d computed as larger(a, (b - 1) * 2) / "
      "total(c)\n";
  REQUIRE(Read(good).diagnostics.empty());
  std::mt19937 random(20261125);
  const std::string letters = "()\"#:,.-% 0aZ\n\t\xC3\xFF";
  for (int round = 0; round < 4000; ++round) {
    std::string text = good;
    for (std::size_t change = 0; change <= random() % 4; ++change) {
      const std::size_t at = random() % text.size();
      if (random() % 2 == 0) {
        text.erase(at, 1 + random() % 12);
      } else {
        text.insert(at, random() % 3 == 0 ? text.substr(random() % text.size(), 20)
                                          : std::string(1, letters[random() % letters.size()]));
      }
    }
    const Read read(text);
    for (const diagnose::Diagnostic& one : read.diagnostics.all()) {
      const Span& span = one.primary.span;
      if (span.begin > span.end || span.end > text.size()) {
        FAIL_CHECK(one.message << "\n" << text);
      }
    }
  }
}
