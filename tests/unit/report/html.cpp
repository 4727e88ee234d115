#include "show/report/parts/html.hpp"

#include <catch2/catch.hpp>

namespace plumbrule::report {
namespace {

TEST_CASE("columns in which nothing stands are left out, the first never, and rows keep their cells") {
  const HtmlTable all{"c",
                      {"a", "b", "c", "d"},
                      {{Markup(), escaped("1"), Markup(), escaped("2")},
                       {escaped("group")},
                       {Markup(), Markup(), Markup(), escaped("3")}}};
  const HtmlTable out = without_empty_columns(all);
  CHECK(out.heads == std::vector<std::string>{"a", "b", "d"});
  REQUIRE(out.rows.size() == 3);
  CHECK(out.rows[0].size() == 3);
  CHECK(out.rows[0][1].html() == "1");
  CHECK(out.rows[0][2].html() == "2");
  CHECK(out.rows[1].size() == 1);
  CHECK(out.rows[2][2].html() == "3");
}

}  // namespace
}  // namespace plumbrule::report
