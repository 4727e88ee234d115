// read_json: the tree, the places in it, what it refuses, and that it agrees with read_yaml. All expectations: computed
// here.
#include "judge/evidence/json.hpp"

#include <catch2/catch.hpp>
#include <string>

#include "judge/evidence/json_fault.hpp"
#include "read_text.hpp"

using namespace plumbrule;
using namespace plumbrule::evidence;
using Kind = Node::Kind;
using diagnose::Code;

namespace {

struct ReadJson {
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  std::optional<Node> tree;

  explicit ReadJson(std::string text) {
    const auto file = sources.add("mix.json", std::move(text));
    tree = read_json(sources, file, diagnostics);
  }
  [[nodiscard]] std::string_view at(const source::Span& span) const { return sources.text(span); }
  [[nodiscard]] const Node& value(std::string_view key) const {
    REQUIRE(tree.has_value());
    const Node* found = tree->find(key);
    REQUIRE(found != nullptr);
    return *found;
  }
};

void refused(const std::string& text, Code code, std::string_view underlined, std::string_view message) {
  INFO(text);
  const ReadJson read(text);
  CHECK_FALSE(read.tree.has_value());
  REQUIRE(read.diagnostics.all().size() == 1);
  const auto& one = read.diagnostics.all().front();
  CHECK(diagnose::text(one.code) == diagnose::text(code));
  CHECK(read.at(one.primary.span) == underlined);
  CHECK(one.message == message);
  CHECK_FALSE(one.help.empty());
}

bool same_tree(const Node& a, const Node& b) {
  if (a.kind != b.kind || a.text != b.text || a.items.size() != b.items.size() ||
      a.entries.size() != b.entries.size()) {
    return false;
  }
  for (std::size_t at = 0; at < a.items.size(); ++at) {
    if (!same_tree(a.items[at], b.items[at])) {
      return false;
    }
  }
  for (std::size_t at = 0; at < a.entries.size(); ++at) {
    if (a.entries[at].key != b.entries[at].key || !same_tree(a.entries[at].value, b.entries[at].value)) {
      return false;
    }
  }
  return true;
}

}  // namespace

TEST_CASE("JSON: every name and value with its place") {
  const ReadJson read(
      "\xEF\xBB\xBF{\"submittal\": 1, \"mix\": \"A \\\"4\\\" \\u00b5\",\n \"n\": 450.20 , \"yes\": true,\"none\" "
      ":null, "
      "\"text\": \"null\",\n \"list\" : [ \"a\", -0.5, [] , {} ], \"k\\u0065y\": 1e5}\n");
  REQUIRE(read.diagnostics.empty());
  CHECK(read.tree->entries.size() == 8);
  CHECK(read.value("submittal").text == "1");
  CHECK(read.value("mix").text == "A \"4\" \xC2\xB5");
  CHECK(read.at(read.value("mix").span) == "\"A \\\"4\\\" \\u00b5\"");
  CHECK(read.value("n").text == "450.20");
  CHECK(read.at(read.value("n").span) == "450.20");
  CHECK(read.value("yes").text == "true");
  CHECK(read.value("none").kind == Kind::empty);
  CHECK(read.at(read.value("none").span) == "null");
  CHECK(read.value("text").kind == Kind::scalar);
  CHECK(read.at(read.value("list").span) == "[ \"a\", -0.5, [] , {} ]");
  CHECK(read.value("list").items.at(1).text == "-0.5");
  CHECK(read.value("list").items.at(2).kind == Kind::list);
  CHECK(read.value("list").items.at(3).kind == Kind::map);
  CHECK(read.at(read.tree->entries.back().key_span) == "\"k\\u0065y\"");
  CHECK(read.value("key").text == "1e5");
  CHECK(read.at(read.tree->span).front() == '{');
  CHECK(read.at(read.tree->span).back() == '}');
}

TEST_CASE("JSON and YAML of the same submittal give the same tree") {
  const ReadJson json(
      R"({"submittal": 1, "classes": {"traffic": "heavy"}, "results": [{"measure": "mix_time", "reported": "180 s or more"},
      {"measure": "sand_equivalent", "reported": 71, "note": null, "specimens": [true, 2.50]}]})");
  const Read yaml(
      "submittal: 1\nclasses: {traffic: heavy}\nresults:\n- {measure: mix_time, reported: 180 s or more}\n"
      "- measure: sand_equivalent\n  reported: 71\n  note:\n  specimens: [true, 2.50]\n");
  REQUIRE(json.tree.has_value());
  REQUIRE(yaml.tree.has_value());
  CHECK(same_tree(*json.tree, *yaml.tree));
}

TEST_CASE("JSON that is none is refused where it stops being JSON") {
  const Code json = Code::submittal_json;
  refused("{\"a\": 'b'}", json, "'", "found a single quote");
  refused("{\"a\": 1,}", json, ",", "found a comma with nothing behind it");
  refused("{\"a\": [1,]}", json, ",", "found a comma with nothing behind it");
  refused("{\"a\": 1 \"b\": 2}", json, "\"", "found `\"` behind a value");
  refused("{\"a\": 1 // why\n}", json, "// why", "found a comment, and JSON has none");
  refused("{a: 1}", json, "a", "found `a` where a name should stand");
  refused("{\"a\" 1}", json, "1", "found a name without a colon behind it");
  refused("{\"a\": }", json, "}", "found `}` where a value should stand");
  refused("{\"a\": [1, 2}", json, "}", "found `}` behind a value");
  refused("{\"a\": NaN}", json, "NaN", "found `NaN`, no value of JSON");
  refused("{\"a\": 007}", json, "007", "found `007`, no number of JSON");
  refused("{\"a\": .5}", json, ".5", "found `.5`, no value of JSON");
  refused("{\"a\": 5.}", json, "5.", "found `5.`, no number of JSON");
  refused("{\"a\": 1.2.3}", json, "1.2.3", "found `1.2.3`, no number of JSON");
  refused("{\"a\": -}", json, "-", "found `-`, no number of JSON");
  refused("{\"a\": nul}", json, "nul", "found `nul`, no value of JSON");
  refused("{\"a\": trueish}", json, "trueish", "found `trueish`, no value of JSON");
  refused("{\"a\": \"b}", json, "\"", "found a quote that is never closed");
  refused("{\"a\": \"b\n\"}", json, "\"b", "found a quote that is not closed on its line");
  refused("{\"a\": \"\\q\"}", json, "\\q", "found a backslash before a character that needs none");
  refused("{\"a\": \"\\u12\"}", json, "\\u",
          "found a character number that is not written in four digits 0 to 9 and a to f");
  refused("{\"a\": \"\\ud800\"}", json, "\\ud800", "found the number of a character that does not exist");
  refused("{\"a\": [1, 2", json, "[", "found a list that is never closed");
  refused("{\"a\": 1", json, "{", "found entries in braces that are never closed");
  refused("{\"a\": 1} {\"b\": 2}", json, "{", "found text behind the end of the document");
  refused("{\"a\": 1} }", json, "}", "found text behind the end of the document");
  refused("{\"a\": \"\x7F\"}", json, "\x7F", "found a control character");
}

TEST_CASE("JSON: what no submittal may have") {
  refused("", Code::submittal_shape, "", "found an empty file");
  refused(" \n", Code::submittal_shape, "", "found an empty file");
  refused("\"text\"", Code::submittal_shape, "\"", "found a single value, no submittal");
  refused("{\"a\": 1, \"\\u0061\": 2}", Code::submittal_duplicate_key, "\"\\u0061\"", "found `a` a second time");
  refused("{\"\": 1}", Code::submittal_shape, "\"\"", "found an entry without a name");
  refused("{\"<<\": {}}", Code::submittal_alias, "\"<<\"",
          "found `<<`, which copies entries from another part of the file");
  refused(repeated("[", 33) + repeated("]", 33), Code::submittal_depth, "[",
          "found lists or maps nested more than 32 deep");
  refused(repeated("[", 100000), Code::submittal_depth, "[", "found lists or maps nested more than 32 deep");
  refused("[" + repeated("1,", 100001) + "1]", Code::submittal_shape, "1", "found more than 100000 names and values");
  CHECK_FALSE(ReadJson("{\"a\": \"\xFF\"}").tree.has_value());
  CHECK_FALSE(ReadJson(std::string("{\"a\": \"\0\"}", 10)).tree.has_value());
  CHECK_FALSE(ReadJson("[\"" + std::string(largest_submittal, 'a') + "\"]").tree.has_value());
  CHECK(ReadJson("[" + std::string(largest_submittal - 2, ' ') + "]").tree.has_value());
}

TEST_CASE("JSON: one reader for many records, each in its place") {
  source::SourceMap sources;
  const std::string first = "{\"a\": 1}";
  const std::string second = "{\"b\": \"two\"}";
  const auto file = sources.add("mixes.ndjson", first + "\n" + second + "\n");
  diagnose::Diagnostics diagnostics;
  JsonReader reader;
  CHECK(reader.read(first, file, 0, diagnostics)->find("a")->text == "1");
  CHECK_FALSE(reader.read("{\"a\": ", file, 0, diagnostics).has_value());
  const auto tree = reader.read(second, file, 9, diagnostics);
  REQUIRE(tree.has_value());
  CHECK(sources.text(tree->find("b")->span) == "\"two\"");
}

TEST_CASE("the words for a fault and the library agree on what is JSON") {
  // Every text of up to five of these pieces: about 150 000.
  const std::vector<std::string> pieces{"{", "}", "[", "]", ",", ":", "\"a\"", "1", "-", "null", " "};
  std::size_t checked = 0;
  std::size_t good = 0;
  for (std::size_t number = 0; number < 161051; ++number) {
    std::string text = "[";
    for (std::size_t rest = number, at = 0; at < 5; ++at, rest /= pieces.size()) {
      text += pieces[rest % pieces.size()];
    }
    text += "]";
    source::SourceMap sources;
    diagnose::Diagnostics diagnostics;
    const bool read = JsonReader().read(text, 0, 0, diagnostics).has_value();
    if (read == json_fault(text).has_value()) {
      FAIL(text);
    }
    ++checked;
    good += read ? 1 : 0;
  }
  CHECK(checked == 161051);
  CHECK(good > 100);
}
