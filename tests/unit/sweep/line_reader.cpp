#include "apply/sweep/line_reader.hpp"

#include <catch2/catch.hpp>

using namespace plumbrule::sweep;

namespace {

Columns columns_of(std::initializer_list<const char*> names) {
  Columns out;
  for (const char* name : names) {
    out.add(name);
  }
  return out;
}

}  // namespace

TEST_CASE("a flat record is read into the cells of its columns, in any order") {
  const Columns columns = columns_of({"mix", "a (g)", "b"});
  LineReader reader;
  std::vector<Cell> cells;
  REQUIRE(reader.read_json(R"x( {"b": null , "a (g)":12.50, "mix":"M-1"}  )x", columns, cells));
  CHECK(cells[0].kind == CellKind::text);
  CHECK(cells[0].text == "M-1");
  CHECK(cells[1].kind == CellKind::number);
  CHECK(cells[1].number.digits == 1250);
  CHECK(cells[2].kind == CellKind::absent);
  REQUIRE(reader.read_json(R"({"mix":"M-2"})", columns, cells));
  CHECK(cells[1].kind == CellKind::absent);
}

TEST_CASE("what is out of the ordinary is not taken") {
  const Columns columns = columns_of({"mix", "a"});
  LineReader reader;
  std::vector<Cell> cells;
  for (const char* line : {"",
                           "{",
                           "{}",
                           "[]",
                           R"({"a":1)",
                           R"({"a":1}})",
                           R"({"a":1} x)",
                           R"({"a":1,})",
                           R"({"a":1 "mix":"x"})",
                           R"({"a":1,"a":2})",
                           R"({"a":null,"a":2})",
                           R"({"a":01})",
                           R"({"a":1e3})",
                           R"({"a":tru})",
                           R"({"a":true})",
                           R"({"a":[1]})",
                           R"({"a":{}})",
                           R"({"mix":"a\"b"})",
                           R"({"mix":"\u0041"})",
                           "{\"mix\":\"\xC3\xA9\"}",
                           "{\"mix\":\"a\tb\"}",
                           R"({"mix":""})",
                           R"({a:1})",
                           R"({'a':1})",
                           R"({"a" 1})",
                           R"({"mix":"open)",
                           R"({"a":})",
                           R"({"a":1;"mix":"x"})",
                           R"({"a":-})",
                           R"({"a":1.})"}) {
    CAPTURE(line);
    CHECK_FALSE(reader.read_json(line, columns, cells));
  }
  CHECK_FALSE(reader.read_json(R"({"c":1})", columns, cells));
}

TEST_CASE("a row has as many cells as the sheet has headings") {
  const Columns columns = columns_of({"mix", "a", "b"});
  std::vector<Cell> cells;
  REQUIRE(LineReader::read_row("M-1, 12.5 ,\r", columns, cells));
  CHECK(cells[0].text == "M-1");
  CHECK(cells[1].number.digits == 125);
  CHECK(cells[2].kind == CellKind::absent);
  CHECK_FALSE(LineReader::read_row("M-1,2", columns, cells));
  CHECK_FALSE(LineReader::read_row("M-1,2,3,4", columns, cells));
  CHECK_FALSE(LineReader::read_row("\"M-1\",2,3", columns, cells));
  CHECK_FALSE(LineReader::read_row(",,", columns, cells));
}
