// read_yaml: the tree, the places in it, and what it refuses. All expectations: computed here.
#include <catch2/catch.hpp>
#include <string>

#include "read_text.hpp"

using namespace plumbrule;
using namespace plumbrule::evidence;
using Kind = Node::Kind;

TEST_CASE("a tree of maps, lists and scalars") {
  const Read read("submittal: 1\nmix:\n  name: trial 4\n  dates: [2026-03-20, 2026-03-21]\nresults:\n- a: 1 g\n- b\n");
  CHECK(read.diagnostics.empty());
  CHECK(read.tree->kind == Kind::map);
  CHECK(read.tree->entries.size() == 3);
  CHECK(read.value("mix").find("name")->text == "trial 4");
  CHECK(read.value("mix").find("dates")->items.at(1).text == "2026-03-21");
  CHECK(read.value("results").kind == Kind::list);
  CHECK(read.value("results").items.at(0).find("a")->text == "1 g");
  CHECK(read.tree->find("absent") == nullptr);
}

TEST_CASE("the span of a scalar is exactly what is written") {
  const Read read(
      "\xC3\xA9t\xC3\xA9: \xC2\xB5 8 % # note\n"
      "single: 'it''s'\n"
      "double: \"a \\\" b\"  # note\n"
      "none: ''\n"
      "none too: \"\"\n"
      "apostrophe: ''''\n"
      "lines: one\n  two  # note\n"
      "quoted lines: \"one\n  two\"\n"
      "block: |\n  one\n\n   two\n\n"
      "folded: >-\n  one\n  two\n"
      "empty block: |\n"
      "4.75 mm : 95 %\n"
      "'key': {x: 1}\n");
  REQUIRE(read.diagnostics.empty());
  const auto written = [&](std::string_view key) { return read.at(read.value(key).span); };
  CHECK(read.at(read.tree->entries.front().key_span) == "\xC3\xA9t\xC3\xA9");
  CHECK(written("\xC3\xA9t\xC3\xA9") == "\xC2\xB5 8 %");
  CHECK(written("single") == "'it''s'");
  CHECK(read.value("single").text == "it's");
  CHECK(written("double") == "\"a \\\" b\"");
  CHECK(written("none") == "''");
  CHECK(written("none too") == "\"\"");
  CHECK(read.value("none too").kind == Kind::scalar);
  CHECK(written("apostrophe") == "''''");
  CHECK(written("lines") == "one\n  two");
  CHECK(written("quoted lines") == "\"one\n  two\"");
  CHECK(written("block") == "|\n  one\n\n   two");
  CHECK(written("folded") == ">-\n  one\n  two");
  CHECK(written("empty block") == "|");
  CHECK(written("4.75 mm") == "95 %");
  CHECK(read.at(read.tree->entries.back().key_span) == "'key'");
}

TEST_CASE("the span of a list or map reaches from its first to its last child, brackets included") {
  const Read read("a: [1, 2, ]\nb: {c: 1 }\nd:\n  - 1\n  - e: 2\nf: []\ng: [ # note\n ]\n");
  REQUIRE(read.diagnostics.empty());
  CHECK(read.at(read.value("a").span) == "[1, 2, ]");
  CHECK(read.at(read.value("b").span) == "{c: 1 }");
  CHECK(read.at(read.value("d").span) == "- 1\n  - e: 2");
  CHECK(read.at(read.value("d").items.at(1).span) == "e: 2");
  CHECK(read.at(read.value("f").span) == "[]");
  CHECK(read.at(read.value("g").span) == "[ # note\n ]");
}

TEST_CASE("empty values and null, each in its place") {
  const Read read("a:\nb: null\nc: ~   # note\nd:   # note\n  # another\ne:\n- # note\n- 2\n-\nf: 'null'\n");
  REQUIRE(read.diagnostics.empty());
  const auto place = [&](const Node& node) { return read.sources.place_text(node.span); };
  CHECK(read.value("a").kind == Kind::empty);
  CHECK(place(read.value("a")) == "mix.yaml:1:3");
  CHECK(read.at(read.value("b").span) == "null");
  CHECK(read.value("b").kind == Kind::empty);
  CHECK(read.at(read.value("c").span) == "~");
  CHECK(place(read.value("d")) == "mix.yaml:4:3");
  CHECK(place(read.value("e").items.at(0)) == "mix.yaml:7:1");
  CHECK(read.at(read.value("e").items.at(0).span) == "-");
  CHECK(place(read.value("e").items.at(2)) == "mix.yaml:9:1");
  CHECK(read.value("f").kind == Kind::scalar);
}

TEST_CASE("JSON is read too") {
  const Read read(R"({"submittal":1,"results":[{"loss":"412 g/m2"},{"loss":""}],"none":null})");
  REQUIRE(read.diagnostics.empty());
  CHECK(read.value("results").items.at(0).find("loss")->text == "412 g/m2");
  CHECK(read.at(read.value("results").items.at(1).find("loss")->span) == "\"\"");
  CHECK(read.value("none").kind == Kind::empty);
}

TEST_CASE("byte order marks and line ends do not move places") {
  for (const std::string mark : {"", "\xEF\xBB\xBF", "\xEF\xBB\xBF\xEF\xBB\xBF"}) {
    const Read read(mark + "a: 1\r\nb: x y\r\nc: 'd\r\n  e'\r\n---");
    CHECK_FALSE(read.tree.has_value());
    CHECK(read.at(read.diagnostics.all().at(0).primary.span) == "---");
    const Read good(mark + "a: 1\r\nb: x y\r\nc: 'd\r\n  e'\r\n");
    REQUIRE(good.diagnostics.empty());
    CHECK(good.at(good.value("a").span) == "1");
    CHECK(good.at(good.value("b").span) == "x y");
    CHECK(good.at(good.value("c").span) == "'d\r\n  e'");
  }
}

TEST_CASE("earlier errors of other files do not refuse a good one") {
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  diagnostics.error(diagnose::Code::name_unknown, {}, "found `x`");
  CHECK(evidence::read_yaml(sources, sources.add("mix.yaml", "a: 1\n"), diagnostics).has_value());
  CHECK(diagnostics.all().size() == 1);
}

TEST_CASE("one document with its marks is read") {
  CHECK(Read("---\na: 1\n...\n").tree.has_value());
  CHECK(Read("%YAML 1.2\n---\na: 1\n").tree.has_value());
}

TEST_CASE("references, names of parts, merges and type marks are refused at the first") {
  using enum diagnose::Code;
  check({"a: &x 1\nb: *x\n", submittal_alias, "&x", "1:4"});
  check({"a: *x\n", submittal_alias, "*x", "1:4"});
  check({"a: *\n", submittal_alias, "*", "1:4"});
  check({"a: & b\n", submittal_alias, "&", "1:4"});
  check({"a: &x [*x, *x]\n", submittal_alias, "&x", "1:4"});
  check({"<<: {a: 1}\n", submittal_alias, "<<", "1:1"});
  check({"a: !!str 1\n", submittal_shape, "!!str", "1:4"});
  check({"a: !own\n", submittal_shape, "!own", "1:4"});
  check({"a: ! 1\n", submittal_shape, "!", "1:4"});
  check({"!!map {a: 1}\n", submittal_shape, "!!map", "1:1"});
}

TEST_CASE("what is no name of an entry") {
  using enum diagnose::Code;
  check({"? [a]\n: b\n", submittal_shape, "[", "1:3"});
  check({"{a: 1}: b\n", submittal_shape, "{", "1:1"});
  check({"null: 1\n", submittal_shape, "null", "1:1"});
  check({"\"\": 1\n", submittal_shape, "\"\"", "1:1"});
  check({"? |\n  k\n: v\n", submittal_shape, "|\n  k", "1:3"});
  check({"\"a\\0b\": 1\n", submittal_shape, "\"a\\0b\"", "1:1"});
  check({"a: 1\nb\n", submittal_yaml, "b", "2:1"});
  check({"{a:1}\n", submittal_yaml, "a:1", "1:2"});
}

TEST_CASE("duplicate names point at both places") {
  const Read read("a: 1\nm: {b: 1, b: 2}\na: 2\n");
  check_refused(read, diagnose::Code::submittal_duplicate_key);
  REQUIRE(read.diagnostics.all().size() == 2);
  const auto& second = read.diagnostics.all().at(1);
  CHECK(read.sources.place_text(second.primary.span) == "mix.yaml:3:1");
  REQUIRE(second.secondary.size() == 1);
  CHECK(read.sources.place_text(second.secondary.front().span) == "mix.yaml:1:1");
  CHECK(Read("a: {x: 1}\nb: {x: 1}\n").tree.has_value());
}

TEST_CASE("text that is not YAML is explained in plain words") {
  using enum diagnose::Code;
  check({"a: [1, 2\n", submittal_yaml, "[", "1:4"});
  check({"a: [1, 2\nb: 3\n", submittal_yaml, "[", "1:4"});
  check({"\xC3\xA9: {b: 1\n", submittal_yaml, "{", "1:4"});
  check({"a: [1]]\n", submittal_yaml, "]", "1:7"});
  check({"a: b: c\n", submittal_yaml, ":", "1:5"});
  check({"a: - b\n", submittal_yaml, "-", "1:4"});
  check({"a: 1\n- b\n", submittal_yaml, "-", "2:1"});
  check({"a: \"12\" g\n", submittal_yaml, "g", "1:9"});
  check({"  a: 1\n b: 2\n", submittal_yaml, "b:", "2:2"});
  check({"a: @x\n", submittal_yaml, "@", "1:4"});
  check({"a: \"x\\q\"\n", submittal_yaml, "\\q", "1:6"});
  check({"%YAML 9.9\n---\na: 1\n", submittal_yaml, "%YAML", "1:1"});
  check({"a:\n\tb: 1\n", submittal_yaml, "\t", "2:1"});
  check({"a:\n  b: 1\n \tc: 2\n", submittal_yaml, "\t", "3:2"});
}

TEST_CASE("a quote that is never closed does not swallow the rest of the file") {
  using enum diagnose::Code;
  check({"a: \"x\n", submittal_yaml, "\"", "1:4"});
  check({"a: \"x", submittal_yaml, "\"", "1:4"});
  check({"a: 'x\nb: 2\n", submittal_yaml, "'", "1:4"});
  check({"a: \"x\\\"\nb: 2\n", submittal_yaml, "\"", "1:4"});
  check({"a: 5'\nb: ['q', \"r]\nc: 3", submittal_yaml, "\"", "2:10"});
}

TEST_CASE("texts that are no text, and empty ones") {
  using enum diagnose::Code;
  using namespace std::string_literals;
  check({"a: \0b\n"s, file_encoding, "\0"s, "1:4"});
  check({"a: \xFF\n", file_encoding, "\xFF", "1:4"});
  check(
      {"\x7F"
       "ELF\x02\x01",
       submittal_yaml, "\x7F", "1:1"});
  check({"a: 1\n\x04\nb: 2\n", submittal_yaml, "\x04", "2:1"});
  check(
      {"a: \xC2\x9B"
       "31m\n",
       submittal_yaml, "\xC2\x9B", "1:4"});
  for (const std::string empty : {"", "# only a comment\n", "\n\n", "\xEF\xBB\xBF", "---\n", "...\n", "null\n", "\t"}) {
    check({empty, submittal_shape, "", "1:1"});
  }
}

TEST_CASE("a second document is refused") {
  using enum diagnose::Code;
  check({"a: 1\n---\nb: 2\n", submittal_shape, "---", "2:1"});
  check({"---\n---\n", submittal_shape, "---", "2:1"});
  check({"a: 1\n...\nb: 2\n", submittal_shape, "b:", "3:1"});
}
