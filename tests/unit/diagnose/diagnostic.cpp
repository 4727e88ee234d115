#include "base/diagnose/diagnostic.hpp"

#include <catch2/catch.hpp>

using namespace plumbrule;
using namespace plumbrule::diagnose;

TEST_CASE("errors and warnings keep their order") {
  Diagnostics all;
  CHECK(all.empty());
  all.warning(Code::table_gap, {}, "found a gap", "fill it");
  CHECK_FALSE(all.has_errors());
  all.error(Code::name_unknown, {0, 3, 5}, "found `x`").secondary.push_back({{0, 1, 2}, "here"});
  CHECK(all.has_errors());
  REQUIRE(all.all().size() == 2);
  CHECK(all.all()[0].severity == Severity::warning);
  CHECK(all.all()[0].help == "fill it");
  CHECK(all.all()[1].primary.span == source::Span{0, 3, 5});
  CHECK(all.all()[1].secondary.size() == 1);
}

TEST_CASE("appending, to itself too") {
  Diagnostics all;
  all.error(Code::name_unknown, {}, "found `a`");
  all.error(Code::name_unknown, {}, "found `b`");
  Diagnostics other;
  other.append(all);
  CHECK(other.all().size() == 2);
  all.append(all);
  REQUIRE(all.all().size() == 4);
  CHECK(all.all()[2].message == "found `a`");
}

TEST_CASE("sorting by place is stable and puts unknown places last") {
  Diagnostics all;
  all.error(Code::name_unknown, {}, "nowhere");
  all.error(Code::name_unknown, {1, 0, 1}, "second file");
  all.error(Code::name_unknown, {0, 9, 10}, "later");
  all.error(Code::name_unknown, {0, 2, 10}, "sooner, first");
  all.error(Code::name_unknown, {0, 2, 3}, "sooner, second");
  all.sort_by_place();
  std::string order;
  for (const Diagnostic& one : all.all()) {
    order += one.message + "; ";
  }
  CHECK(order == "sooner, first; sooner, second; later; second file; nowhere; ");
}
