// Sheets: the tree that a row gives is that of the same submittal in YAML; places; what is refused. All expectations:
// computed here.
#include "judge/evidence/sheet.hpp"

#include <catch2/catch.hpp>
#include <string>

#include "judge/evidence/json.hpp"
#include "read_text.hpp"

using namespace plumbrule;
using namespace plumbrule::evidence;
using diagnose::Code;

namespace {

// YAML in braces, so that a difference can be read.
std::string shown(const Node& node) {
  std::string out;
  switch (node.kind) {
    case Node::Kind::empty:
      return "null";
    case Node::Kind::scalar:
      return "<" + node.text + ">";
    case Node::Kind::list:
      for (const Node& item : node.items) {
        out += shown(item) + " ";
      }
      return "[" + out + "]";
    case Node::Kind::map:
      for (const Entry& entry : node.entries) {
        out += entry.key + ": " + shown(entry.value) + " ";
      }
      return "{" + out + "}";
  }
  return out;
}

// A sheet of one heading line and one row.
struct Sheet {
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  std::optional<Node> tree;

  Sheet(const std::string& head, const std::string& row) {
    const auto file = sources.add("mixes.csv", head + "\n" + row + "\n");
    const auto headings = split_row(head, file, 0, diagnostics);
    const auto offset = static_cast<std::uint32_t>(head.size() + 1);
    const auto cells = split_row(row, file, offset, diagnostics);
    if (!headings || !cells) {
      return;
    }
    const auto plan = read_headings(*headings, diagnostics);
    const auto end = offset + static_cast<std::uint32_t>(row.size());
    tree = plan ? submittal_of(*plan, *cells, {file, offset, end}, diagnostics) : std::nullopt;
  }
  [[nodiscard]] std::string_view at(const source::Span& span) const { return sources.text(span); }
};

void same(const std::string& head, const std::string& row, const std::string& yaml) {
  INFO(head);
  const Sheet sheet(head, row);
  const Read read("submittal: 1\n" + yaml);
  REQUIRE(read.tree.has_value());
  INFO((sheet.diagnostics.empty() ? "" : sheet.diagnostics.all().front().message));
  REQUIRE(sheet.tree.has_value());
  CHECK(shown(*sheet.tree) == shown(*read.tree));
}

void refused(const std::string& head, const std::string& row, Code code, std::string_view underlined,
             std::string_view message) {
  INFO(head);
  INFO(row);
  const Sheet sheet(head, row);
  CHECK_FALSE(sheet.tree.has_value());
  REQUIRE_FALSE(sheet.diagnostics.empty());
  const auto& one = sheet.diagnostics.all().front();
  CHECK(diagnose::text(one.code) == diagnose::text(code));
  CHECK(sheet.at(one.primary.span) == underlined);
  CHECK(one.message == message);
}

}  // namespace

TEST_CASE("a row gives the tree of the same submittal in YAML") {
  same("mix,project,laboratory,prepared_by,date,note,classes; traffic", "M 1,P,L,R,2026-03-20,\"a, b\",heavy",
       "mix: M 1\nproject: P\nlaboratory: L\nprepared_by: R\ndate: 2026-03-20\nnote: a, b\nclasses: {traffic: heavy}");
  same(
      "job_mix; residual_binder (% of dry aggregate),job_mix; passing; sieve No. 4 (%),job_mix;passing;sieve 9.5 mm "
      "(%)",
      "7.80,82,100", "job_mix: {residual_binder: 7.80 % of dry aggregate, passing: {No. 4: 82 %, 9.5 mm: 100 %}}");
  same(
      "abrasion_loss; soak 1 h (g/m2),abrasion_loss ;soak  1 h;replicates, sand_equivalent ,mix_time; temperature 25 "
      "degC (s)",
      "412.5,3,71,180 or more",
      "results:\n- {measure: abrasion_loss, under: {soak: 1 h}, reported: 412.5 g/m2, replicates: 3}\n"
      "- {measure: sand_equivalent, reported: 71}\n"
      "- {measure: mix_time, under: {temperature: 25 degC}, reported: 180 s or more}");
  same("a; specimen 1 (g),a; specimen 2 (g),b; specimen 1; m (g),b; specimen 1; label,b; specimen 2; m (g)",
       "1,2,3,x,4",
       "results:\n- {measure: a, specimens: [1 g, 2 g]}\n"
       "- {measure: b, specimens: [{m: 3 g, label: x}, {m: 4 g}]}");
  same("a; at binder 7.0 % of dry aggregate; soak 1 h (g),a; soak 1 h (g),a; soak 1 h; result 2 (g)", "1,2,3",
       "results:\n- {measure: a, under: {soak: 1 h}, at: {binder: 7.0 % of dry aggregate}, reported: 1 g}\n"
       "- {measure: a, under: {soak: 1 h}, reported: 2 g}\n- {measure: a, under: {soak: 1 h}, reported: 3 g}");
  same(
      "p; tested,p; shared; dry_mass (g),p; row 1; sieve,p; row 1; retained (g),p; row 2; sieve,p; row 2; retained (g)",
      "2026-02-23,1250.0,3/8 in,0.0,No. 4,181.3",
      "results:\n- {measure: p, tested: 2026-02-23, shared: {dry_mass: 1250.0 g}, series: [{sieve: 3/8 in, retained: "
      "0.0 g}, {sieve: No. 4, retained: 181.3 g}]}");
  same(
      "a; made,a; lot,a; laboratory,a; accreditation,a; note,a; material emulsion,a; held water (degC),a; clock cure; "
      "end,a; clock cure; begin,a; reported (g),a; also (lb),material 1; material,material 1; id",
      "2026-01-01,7,L,A,N,E-2,24.6,9:05,8:10,5,0.01,emulsion,E-2",
      "results:\n- {measure: a, made: 2026-01-01, lot: 7, laboratory: L, accreditation: A, note: N, materials: "
      "{emulsion: E-2}, held: {water: 24.6 degC}, clock: {cure: [8:10, 9:05]}, reported: 5 g, also: 0.01 lb}\n"
      "materials: [{material: emulsion, id: E-2}]");
}

TEST_CASE("an empty cell states nothing") {
  same("mix,a (g),b; specimen 1 (g),b; specimen 2 (g),c; specimen 1; m (g),classes; traffic", "M,,,2,,\"\"",
       "mix: M\nresults: [{measure: b, specimens: [2 g]}]");
  same("mix,a; specimen 1 (g),a; specimen 1; label", "M,5,",
       "mix: M\nresults: [{measure: a, specimens: [{value: 5 g}]}]");
  refused("mix,a (g)", ",", Code::submittal_sheet, ",", "found a record in which nothing is stated");
}

TEST_CASE("a cell is what a submittal would write, without the unit of its heading") {
  const std::string head = "a (s)";
  const auto cell = [&](const std::string& row) {
    const Sheet sheet(head, row);
    REQUIRE(sheet.tree.has_value());
    return sheet.tree->find("results")->items.at(0).find("reported")->text;
  };
  CHECK(cell("180") == "180 s");
  CHECK(cell("> 180") == "> 180 s");
  CHECK(cell("180+") == "180 s+");
  CHECK(cell("at least 180.50") == "at least 180.50 s");
  CHECK(cell("-3") == "-3 s");
  CHECK(cell("spin") == "spin");  // a word, or unreadable as it is: the binder knows
  CHECK(cell("1.5e3") == "1.5e3");
  refused(head, "180 s", Code::submittal_unit, "180 s", "found `180 s`, a unit under a heading that has one");
  refused("a (%)", "7.8 % of binder", Code::submittal_unit, "7.8 % of binder",
          "found `7.8 % of binder`, a unit under a heading that has one");
}

TEST_CASE("values point at their cells, names at their part of the heading") {
  const Sheet sheet("mix,\"abrasion_loss; soak 1 h; specimen 2; mass_before (g)\"", "M, \"800.1\" ");
  REQUIRE(sheet.tree.has_value());
  const Node& result = sheet.tree->find("results")->items.at(0);
  CHECK(sheet.at(sheet.tree->span) == "M, \"800.1\" ");
  CHECK(sheet.at(sheet.tree->find("mix")->span) == "M");
  CHECK(sheet.at(result.find("measure")->span) == "abrasion_loss");
  CHECK(sheet.at(result.find("under")->find("soak")->span) == "1 h");
  CHECK(sheet.at(result.find("under")->entries.at(0).key_span) == "soak");
  const Entry& reading = result.find("specimens")->items.at(0).entries.at(0);
  CHECK(sheet.at(reading.key_span) == "mass_before");
  CHECK(sheet.at(reading.value.span) == "\"800.1\"");
  CHECK(sheet.at(result.span) == "\"800.1\"");
}

TEST_CASE("headings that cannot be read") {
  const Code sheet = Code::submittal_sheet;
  refused("mix,", "a,b", sheet, "", "found a column without a heading");
  refused("a;; b (g)", "1", sheet, "", "found nothing between two semicolons of a heading");
  refused("a (gramme)", "1", Code::submittal_unit, "gramme", "found `gramme`, no unit that is known");
  refused("a ()", "1", Code::submittal_unit, "", "found ``, no unit that is known");
  refused("mix (g)", "1", sheet, "g", "found a unit for `mix`, which is a text");
  refused("a; tested (d)", "1", sheet, "d", "found a unit for `tested`, which is a text");
  refused("abrasion loss (g)", "1", sheet, "abrasion loss",
          "found `abrasion loss`, no entry of a submittal and no measure");
  refused("a; 1 h (g)", "1", sheet, "1 h", "found `1 h`, no condition");
  refused("a; mass_before (g)", "1", sheet, "mass_before",
          "found `mass_before`, neither a key word nor a condition with its value");
  refused("job_mix; passing; No. 4 (%)", "1", sheet, "No. 4", "found `No. 4`, no condition");
  refused("a; specimen two (g)", "1", sheet, "specimen two",
          "found `specimen two`, expected a whole number from 1 up behind `specimen`");
  refused("a; specimen 0 (g)", "1", sheet, "specimen 0",
          "found `specimen 0`, expected a whole number from 1 up behind `specimen`");
  refused("a; soak 1 h; soak 6 d (g)", "1", Code::submittal_duplicate_key, "soak 6 d",
          "found `soak` a second time in one heading");
  refused("a; clock cure", "8:10", sheet, "clock cure", "found `clock cure` without `begin` or `end`");
  refused("mix;date", "1", sheet, "date", "found `date` behind `mix`, where a heading ends");
  refused("a; lot 5", "1", sheet, "lot 5", "found `lot 5`, no condition");
  refused("classes; a b", "1", sheet, "a b", "found `a b`, no name of a class");
}

TEST_CASE("a heading twice, in whatever order its conditions are written") {
  const auto twice = [](const std::string& first, const std::string& second) {
    refused(first + "," + second, "1,2", Code::submittal_duplicate_key, second,
            "found a second heading for the same, `" + second + "`");
  };
  twice("mix", "mix");
  twice("a; soak 1 h; heat 2 degC (g)", "a; heat 2 degC; soak 1 h (s)");
  twice("a (g)", "a; reported (g)");
  twice("a; specimen 1 (g)", "a; specimen 1; value (g)");
  twice("job_mix; passing (%)", "job_mix; passing; sieve No. 4 (%)");
  twice("a; clock cure; end", "a; clock cure; end");
}

TEST_CASE("rows that do not fit their headings") {
  refused("mix,date", "a", Code::submittal_sheet, "a", "found 1 cell in a record, expected 2, one for each heading");
  refused("mix", "a,b", Code::submittal_sheet, "b", "found 2 cells in a record, expected 1, one for each heading");
  refused("mix", "\"a", Code::submittal_sheet, "\"", "found a quote that is not closed on its line");
  refused("mix", "5\" pipe", Code::submittal_sheet, "\"", "found a quote inside a cell that does not begin with one");
  refused("mix", "\"a\" b", Code::submittal_sheet, "b", "found `b` behind a closing quote");
}

TEST_CASE("a flat JSON object is a row whose names are the headings") {
  source::SourceMap sources;
  const auto file =
      sources.add("mix.json", R"j({"mix": "M", "abrasion_loss; soak 1 h (g/m2)": 412.50, "b (g)": null, "c": " "})j");
  diagnose::Diagnostics diagnostics;
  const auto flat = read_json(sources, file, diagnostics);
  REQUIRE(flat.has_value());
  CHECK(is_flat(*flat));
  const auto tree = submittal_of(*flat, diagnostics);
  REQUIRE(tree.has_value());
  const Read yaml(
      "submittal: 1\nmix: M\nresults: [{measure: abrasion_loss, under: {soak: 1 h}, reported: 412.50 g/m2}]");
  CHECK(shown(*tree) == shown(*yaml.tree));
  const Node& result = tree->find("results")->items.at(0);
  CHECK(sources.text(result.find("measure")->span) == "abrasion_loss");
  CHECK(sources.text(result.find("reported")->span) == "412.50");
  CHECK_FALSE(is_flat(*Read("submittal: 1\n").tree));
  CHECK_FALSE(is_flat(*Read("mix: 1\nresults: []\n").tree));
}

TEST_CASE("a hundred thousand columns are read in time in proportion") {
  std::vector<Cell> headings;
  std::vector<Cell> cells;
  for (int at = 1; at <= 50'000; ++at) {
    headings.push_back({"a; specimen " + std::to_string(at) + " (g)", {}, true});
    headings.push_back({"m" + std::to_string(at), {}, true});
    cells.push_back({"1", {0, 0, 1}, true});
    cells.push_back({"1", {0, 0, 1}, true});
  }
  diagnose::Diagnostics diagnostics;
  const auto plan = read_headings(headings, diagnostics);
  REQUIRE(plan.has_value());
  const auto tree = submittal_of(*plan, cells, {0, 0, 1}, diagnostics);
  REQUIRE(tree.has_value());
  CHECK(tree->find("results")->items.size() == 50'001);
}
