#include "show/report/review/pictures.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

namespace plumbrule::report {
namespace {

using explain::Comparison;
using explain::Explanation;
using explain::Verdict;
using quantity::Decimal;

// Invented clauses; the numbers are only to be found again.
Explanation clause(const std::string& number, Verdict verdict, std::vector<Comparison> comparisons) {
  Explanation out;
  out.number = number;
  out.title = "Clause " + number;
  out.verdict = verdict;
  out.comparisons = std::move(comparisons);
  return out;
}

Comparison comparison(Verdict verdict, const std::string& value, const std::optional<Decimal>& headroom) {
  Comparison out;
  out.label = "some test";
  out.verdict = verdict;
  out.value = value;
  out.limit = "at most 5.0 %";
  out.headroom = headroom;
  out.margin = headroom ? "the margin of " + value : "";
  return out;
}

Comparison on_sieve(const std::string& name, const char* opening, const char* value) {
  Comparison out = comparison(Verdict::complies, value, std::nullopt);
  out.numbers.unit = "%";
  out.numbers.sieve = Decimal::of(opening);
  out.numbers.sieve_name = name;
  out.numbers.low = Decimal::of("5");
  out.numbers.high = Decimal::of("15.0");
  out.numbers.value = Decimal::of(value);
  return out;
}

Report report_of(std::vector<Explanation> findings) {
  review::Found out;
  out.specifications.emplace_back();
  out.specifications.back().title = "An invented specification";
  out.specifications.back().findings = std::move(findings);
  return Report(std::move(out), {});
}

std::vector<std::string> row(const picture::Picture& picture, const std::string& first) {
  for (const std::vector<std::string>& one : picture.table.rows) {
    if (one.front() == first) {
      return one;
    }
  }
  return {};
}

using Row = std::vector<std::string>;

TEST_CASE("a margin is that of the comparison which decides its clause") {
  const auto all = pictures(
      report_of({clause("1", Verdict::fails,
                        {comparison(Verdict::complies, "4 %", Decimal::of("20")),
                         comparison(Verdict::fails, "6 %", Decimal::of("-20")),
                         comparison(Verdict::fails, "5.5 %", Decimal::of("-10"))}),
                 clause("2", Verdict::complies, {comparison(Verdict::complies, "4.999 %", Decimal::of("0.02"))}),
                 clause("3", Verdict::not_shown, {comparison(Verdict::not_shown, "", std::nullopt)}),
                 clause("4", Verdict::does_not_apply, {}),
                 clause("5", Verdict::complies, {comparison(Verdict::complies, "spin", std::nullopt)}),
                 clause("6", Verdict::fails, {comparison(Verdict::complies, "4 %", Decimal::of("20"))})}));
  REQUIRE(all.size() == 1);
  CHECK(all[0].specification == "An invented specification");
  const picture::Picture& one = all[0].picture;
  CHECK(row(one, "1") ==
        Row{"1", "Clause 1", "fails", "6 %", "at most 5.0 %", "the margin of 6 %", "-20.0 % of the limit"});
  CHECK(row(one, "2") ==
        Row{"2", "Clause 2", "complies", "4.999 %", "at most 5.0 %", "the margin of 4.999 %", "0.02 % of the limit"});
  CHECK(row(one, "3") == Row{"3", "Clause 3", "not shown", "", "at most 5.0 %", "", ""});
  CHECK(row(one, "4") == Row{"4", "Clause 4", "does not apply", "", "", "", ""});
  CHECK(row(one, "5") == Row{"5", "Clause 5", "complies", "spin", "at most 5.0 %", "", ""});
  CHECK(row(one, "6") == Row{"6", "Clause 6", "fails", "", "", "", ""});  // as a whole: no margin that reads as good
}

TEST_CASE("a grading is drawn on both axes, its alternatives apart, and not without a tested sieve") {
  std::vector<Comparison> two;
  for (int alternative = 0; alternative < 2; ++alternative) {
    two.push_back(on_sieve("No. 4", "4.75", "9"));
    two.push_back(on_sieve("No. 8", "2.36", "8"));
    two.push_back(on_sieve("No. 200", "0.075", "7.50"));
  }
  const auto all = pictures(report_of({clause("7", Verdict::complies, two)}));
  CHECK(std::count_if(all.begin(), all.end(), [](const Placed& one) { return one.picture.title == "7 Clause 7"; }) ==
        4);
  CHECK(row(all.back().picture, "No. 200") == Row{"No. 200", "5 %", "15.0 %", "7.5 %", "complies"});
  for (Comparison& one : two) {
    one.numbers.value.reset();
  }
  CHECK(pictures(report_of({clause("7", Verdict::not_shown, two)})).size() == 1);  // the margins alone
}

TEST_CASE("specimens are drawn where their spread may carry one over the limit") {
  Comparison one = comparison(Verdict::complies, "4.8 %", Decimal::of("4"));
  one.numbers.unit = "%";
  one.numbers.high = Decimal::of("5.0");
  one.numbers.value = Decimal::of("4.80");
  one.numbers.statistic = "mean";
  one.numbers.specimens = {Decimal::of("4.6"), Decimal::of("5.0")};
  const auto all = pictures(report_of({clause("8", Verdict::complies, {one})}));
  REQUIRE(all.size() == 2);
  CHECK(row(all[1].picture, "8 some test") == Row{"8 some test", "4.6; 5", "mean 4.8 %", "at most 5.0 %", "complies"});
  one.numbers.specimens = {Decimal::of("4.75"), Decimal::of("4.85")};
  CHECK(pictures(report_of({clause("8", Verdict::complies, {one})})).size() == 1);
  one.numbers.spread = true;  // a range has no place among the values
  one.numbers.specimens = {Decimal::of("4.6"), Decimal::of("5.0")};
  CHECK(pictures(report_of({clause("8", Verdict::complies, {one})})).size() == 1);
}

TEST_CASE("a value beyond the printed limit that rounds to it is said to comply by rounding") {
  const auto shown = [](const char* value, Verdict verdict) {
    std::vector<Comparison> three{on_sieve("No. 4", "4.75", value), on_sieve("No. 8", "2.36", "8"),
                                  on_sieve("No. 200", "0.075", "7.5")};
    three[0].verdict = verdict;
    return row(pictures(report_of({clause("7", verdict, three)})).back().picture, "No. 4")[3];
  };
  CHECK(shown("15.4", Verdict::complies) == "15.4 %, complies by rounding");
  CHECK(shown("4.6", Verdict::complies) == "4.6 %, complies by rounding");
  CHECK(shown("15", Verdict::complies) == "15 %");
  CHECK(shown("15.6", Verdict::fails) == "15.6 %");
}

window::ReadingReport reading(const std::string& at, const std::string& value, Verdict verdict) {
  window::ReadingReport out;
  out.at = at;
  out.position = at;
  out.value = value.empty() ? "" : value + " g/m2";
  out.least = value;
  out.greatest = value;
  out.verdict = verdict;
  out.why = value.empty() ? "only a bound" : "";
  return out;
}

TEST_CASE("a window: what is drawn, and what is said because it is not") {
  Windows report;
  report.specifications.emplace_back();
  window::VariableWindow one;
  one.title = "binder";
  one.unit = "%";
  window::ClauseReport clause;
  clause.number = "9";
  window::SeriesReport series;
  series.label = "loss";
  series.unit = "g/m2";
  series.high = window::LimitEnd{"538", "at most 538 g/m2", "538.5", "at most 538.5 g/m2"};
  series.readings = {reading("6", "600", Verdict::fails), reading("7", "", Verdict::not_shown),
                     reading("8", "500", Verdict::complies)};
  clause.series.push_back(series);
  one.clauses.push_back(clause);
  report.specifications.back().windows.push_back(one);
  const auto all = pictures(report);
  REQUIRE(all.size() == 1);
  const picture::Picture& drawn = all[0].picture;
  CHECK(row(drawn, "9 loss") == Row{"9 loss", "6", "600 g/m2", "fails"});
  CHECK(drawn.table.rows.size() == 3);  // two readings and the limit
  CHECK(drawn.table.rows.back() == Row{"9 loss", "all", "at most 538 g/m2 (unrounded: at most 538.5 g/m2)", "limit"});
  CHECK(drawn.description.find("loss at 7 is not drawn: only a bound") != std::string::npos);
}

TEST_CASE("levels of one series stand on one picture") {
  Windows report;
  report.specifications.emplace_back();
  for (const char* level : {"12", "20"}) {
    window::StrengthReport one;
    one.clause = level;
    one.reached = "reached after 27 min";
    one.verdict = Verdict::complies;
    one.build = {"cohesion",
                 "kg-cm",
                 "cure",
                 "min",
                 "30",
                 "30 min",
                 {level, std::string("at least ") + level + " kg-cm", "", ""}};
    one.readings = {reading("20", "8", Verdict::fails), reading("30", "21", Verdict::complies)};
    report.specifications.back().strengths.push_back(one);
  }
  CHECK(pictures(report).size() == 1);
  report.specifications.back().strengths[1].readings.pop_back();
  CHECK(pictures(report).size() == 2);
}

TEST_CASE("a matrix says of every cell what stands there") {
  Matrix matrix;
  matrix.columns.resize(2);
  matrix.columns[0].label = "one";
  matrix.columns[1].label = "two";
  Cell cell;
  cell.asked = true;
  cell.verdict = Verdict::fails;
  cell.clause = "3.1";
  cell.value = "6 %";
  cell.limit = "at most 5 %";
  matrix.kinds.push_back({"subject", "loss", {cell, {}}});
  CHECK(row(pictures_of(matrix).front(), "loss") == Row{"loss", "fails: 3.1, 6 % against at most 5 %", "not asked"});
}

TEST_CASE("a long matrix is drawn in parts that hold every test once") {
  Matrix matrix;
  matrix.columns.resize(1);
  Cell cell;
  cell.asked = true;
  cell.verdict = Verdict::complies;
  for (std::size_t at = 0; at < 49; ++at) {
    matrix.kinds.push_back({"subject", "test " + std::to_string(at), {cell}});
  }
  cell.verdict = Verdict::does_not_apply;
  matrix.kinds.push_back({"subject", "applies nowhere", {cell}});
  const std::vector<picture::Picture> parts = pictures_of(matrix);
  REQUIRE(parts.size() == 3);
  std::size_t next = 0;
  for (const picture::Picture& one : parts) {
    CHECK(one.title.find("tests " + std::to_string(next + 1) + " to ") != std::string::npos);
    for (const Row& found : one.table.rows) {
      CHECK(found.front() == "test " + std::to_string(next++));
    }
  }
  CHECK(next == 49);
}

TEST_CASE("coordinates are read from all the digits, whatever they are") {
  CHECK(coordinate("7.378947368421052631578947368421053") == Approx(7.378947368421));
  CHECK(coordinate("-12.50") == -12.5);
  CHECK(std::isnan(coordinate("")));
  CHECK(std::isnan(coordinate("none")));
}

}  // namespace
}  // namespace plumbrule::report
