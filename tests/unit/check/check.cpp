// Names, units and rounding resolved; what is broken yields nothing.
#include "language/check/check.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

#include "language/check/shelf.hpp"

using namespace plumbrule;
using namespace plumbrule::check;
using quantity::Decimal;

namespace {

const std::string vocabulary =
    "plumbrule 1 vocabulary mix \"Mix\"\n"
    "category traffic \"T\": light, medium, heavy\n"
    "condition soak \"S\" in min condition sieve \"V\" as sieve designation\n"
    "basis dry \"D\"\n"
    "measure loss \"L\" in g/m2 reported to 5 g/m2 under soak\n"
    "measure binder \"B\" in % of dry\n"
    "measure passing \"P\" in % under sieve\n";
const std::string head =
    "plumbrule 1 specification s \"S\" edition 2026 uses mix compare by the rounding method, ties to even\n";

struct Checked {
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  std::optional<Rules> rules;

  Checked(const std::string& first, const std::string& second) {
    std::vector<syntax::RuleFile> files;
    for (const std::string& text : {first, second}) {
      files.push_back(syntax::parse(sources, sources.add("rules.plumb", text), diagnostics));
    }
    rules = check::check(sources, files, diagnostics);
  }
  [[nodiscard]] const Assertion& assertion() const {
    REQUIRE(rules.has_value());
    return rules->requirements.at(0).cases.at(0).alternatives.at(0).assertions.at(0);
  }
  [[nodiscard]] std::string codes() const {
    std::string out;
    for (const diagnose::Diagnostic& one : diagnostics.all()) {
      out += std::string(diagnose::text(one.code)) + " ";
    }
    return out;
  }
};

Checked specified(const std::string& text) { return {head + text, vocabulary}; }

}  // namespace

TEST_CASE("a condition is kept in its own unit, and as written") {
  const Checked checked = specified("requirement 1 \"R\" loss under soak 1.5 h shall be at most 538 g/m2");
  const ConditionValue& soak = checked.assertion().conditions.at(0);
  CHECK(soak.value == Decimal{90});
  CHECK(soak.written == "1.5 h");
}

TEST_CASE("a sieve is kept as its opening in millimetres") {
  // ASTM E11, table 1: No. 200 is 75 um, 3/8 in is 9.5 mm.
  const Checked number = specified("requirement 1 \"R\" passing under sieve No. 200 shall be at most 5 %");
  CHECK(number.assertion().conditions.at(0).value == Decimal::of("0.075"));
  const Checked fraction = specified("requirement 1 \"R\" passing under sieve 3/8 in shall be at most 5 %");
  CHECK(fraction.assertion().conditions.at(0).value == Decimal::of("9.5"));
}

TEST_CASE("the rounding place: of the limit, of the measure, of the clause, or none") {
  const auto place = [](const std::string& limit, const std::string& clause) {
    const Checked checked = specified("requirement 1 \"R\" loss under soak 1 h shall be at most " + limit + clause);
    return checked.assertion().limit.high->rounding.place;
  };
  CHECK(place("538 g/m2", "") == Decimal{1});
  CHECK(place("50 g/m2", "") == Decimal{1});
  CHECK(place("2.10 g/m2", "") == Decimal::of("0.01"));
  CHECK(place("538 g/m2", " compare by the rounding method to reporting place, ties up") == Decimal{5});
  CHECK(place("538 g/m2", " compare by the rounding method to 0.5 g/m2, ties up") == Decimal::of("0.5"));
  CHECK_FALSE(place("538 g/m2", " compare by the absolute method").has_value());
}

TEST_CASE("words of a class become a mask") {
  const auto mask = [](const std::string& test) {
    const Checked checked =
        specified("requirement 1 \"R\" where traffic is " + test + " loss under soak 1 h shall be at most 5 g/m2");
    REQUIRE(checked.rules.has_value());
    return checked.rules->requirements.at(0).where.at(0).words;
  };
  CHECK(mask("light") == 1U);
  CHECK(mask("one of medium, heavy") == 6U);
  CHECK(mask("not light") == 6U);
  CHECK(mask("not one of light, heavy") == 2U);
}

TEST_CASE("the first end of a range takes unit and basis of the second") {
  const Checked checked = specified("requirement 1 \"R\" binder shall be between 5.5 and 10.5 % of dry");
  CHECK(checked.assertion().limit.low->value == Decimal::of("5.5"));
  CHECK(checked.rules->units.at(checked.assertion().limit.unit).text == "%");
}

TEST_CASE("names may be used before they are declared, and files stand in any order of items") {
  const Checked checked(
      head + "requirement 1 \"R\" passing shall conform to grading g\n grading g \"G\" sieve No. 4 100 %",
      "plumbrule 1 measure passing \"P\" in % under sieve vocabulary mix \"M\"\n"
      "condition sieve \"V\" as sieve designation");
  INFO(checked.codes());
  CHECK(checked.rules.has_value());
}

TEST_CASE("any error leaves no rules") {
  for (const char* bad : {"requirement 1 \"R\" los under soak 1 h shall be at most 5 g/m2",
                          "requirement 1 \"R\" loss under soak 1 h shall be at most 5 g",
                          "requirement 1 \"R\" binder shall be at most 5 %", "requirement 1 \"R\" cite \"x\"",
                          "requirement 1 \"R\" loss under soak 1 h shall be at most 5,0 g/m2", "hello"}) {
    INFO(bad);
    const Checked checked = specified(bad);
    CHECK_FALSE(checked.rules.has_value());
    CHECK(checked.diagnostics.has_errors());
  }
}

TEST_CASE("an error in one clause is one error") {
  for (const char* bad :
       {"requirement 1 \"R\" loss under soke 1 h shall be at most 5 g/m2",
        "requirement 1 \"R\" los under soak 1 h shall be at most 5 g/m2",
        "requirement 1 \"R\" loss under soak 1 h shall be at most 5 zz",
        "requirement 1 \"R\" loss under soak 1 h shall be more than 5 g/m2 example \"E\" for 1 given loss 5 g/m2 under "
        "soak 1 h expect fails"}) {
    INFO(bad);
    const Checked checked = specified(bad);
    INFO(checked.codes());
    CHECK(checked.diagnostics.all().size() == 1);
  }
}

TEST_CASE("a vocabulary is found beside the file, in its vocabulary folder, beside its parent, in a library") {
  const auto base = std::filesystem::temp_directory_path() / "plumbrule-unit-check";
  const auto write = [&](const std::string& name, const std::string& text) {
    std::filesystem::create_directories((base / name).parent_path());
    std::ofstream(base / name) << text;
  };
  const auto found = [&](const std::vector<std::string>& libraries) {
    source::SourceMap sources;
    const source::Disk disk;
    Shelf shelf(sources, disk);
    diagnose::Diagnostics diagnostics;
    const auto files = load(shelf, {(base / "a/spec.plumb").string(), {}, libraries}, diagnostics).files;
    return files.size() == 2 ? std::filesystem::relative(std::string(sources.name(1)), base).string() : "";
  };
  std::filesystem::remove_all(base);
  write("a/spec.plumb", head);
  CHECK(found({}).empty());
  write("lib/mix.plumb", vocabulary);
  CHECK(found({(base / "lib").string()}) == "lib/mix.plumb");
  write("vocabulary/mix.plumb", vocabulary);
  CHECK(found({(base / "lib").string()}) == "vocabulary/mix.plumb");
  write("mix.plumb", vocabulary);
  CHECK(found({}) == "mix.plumb");
  write("a/vocabulary/mix.plumb", vocabulary);
  CHECK(found({}) == "a/vocabulary/mix.plumb");
  write("a/mix.plumb", vocabulary);
  CHECK(found({}) == "a/mix.plumb");
  std::filesystem::remove_all(base);
}

TEST_CASE("edges of a table by value run one way, in its unit, and leave something to each row") {
  const auto codes = [](const std::string& rows) {
    return specified("table t by value in g in points " + rows).codes();
  };
  CHECK(codes("below 0.7 g: 4 at most 0.7 g: 3 at most 1.0 g: 2 otherwise: 0").empty());
  CHECK(codes("above 0.7 g: 4 at least 0.7 g: 3 above -1.0 g: 2").empty());
  CHECK(codes("at most 0.7 g: 4 below 0.7 g: 3") == "table.row ");
  CHECK(codes("at least 0.7 g: 4 above 0.7 g: 3") == "table.row ");
  CHECK(codes("at most 0.7 g: 4 at most 0.70 g: 3") == "table.row ");
  CHECK(codes("at most 0.7 g: 4 at least 1.0 g: 3") == "table.row ");
  CHECK(codes("at most 1.0 g: 4 at most 0.7 g: 3") == "table.row ");
  CHECK(codes("at least 0.7 g: 4 at least 1.0 g: 3") == "table.row ");
  CHECK(codes("otherwise: 0 at most 0.7 g: 4") == "table.row ");
  CHECK(codes("at most 0.7 g: 4 heavy: 3") == "table.row ");
  CHECK(codes("at most 700 mg: 4") == "table.row ");
  CHECK(codes("at most 0.7 mm: 4") == "unit.dimension ");
  CHECK(codes("at most 0.7: 4") == "unit.dimension ");
  CHECK(codes("otherwise: 4") == "table.gap ");
  CHECK(codes("") == "table.gap ");
}
