#include "show/picture/picture.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <clocale>
#include <functional>
#include <map>
#include <numeric>
#include <regex>

#include "samples.hpp"
#include "show/picture/labels.hpp"
#include "show/picture/svg.hpp"

namespace plumbrule::picture {
namespace {

// What an element covers is worked out anew from the SVG text: the drawing's own record is not asked.
struct Text {
  std::string words;
  Box box;
};

std::string unescaped(std::string text) {
  for (const auto& [from, to] :
       std::map<std::string, std::string>{{"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&#39;", "'"}}) {
    for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from)) {
      text.replace(at, from.size(), to);
    }
  }
  for (std::size_t at = text.find("&amp;"); at != std::string::npos; at = text.find("&amp;", at + 1)) {
    text.replace(at, 5, "&");
  }
  return text;
}

std::vector<Text> texts_of(const std::string& svg) {
  static const std::regex element(
      R"re(<text x="([-0-9.]+)" y="([-0-9.]+)" font-size="([0-9.]+)"(?: text-anchor="(\w+)")?( font-weight="bold")?[^>]*>([^<]*)</text>)re");
  std::vector<Text> out;
  for (std::sregex_iterator at(svg.begin(), svg.end(), element), end; at != end; ++at) {
    const std::string anchor = (*at)[4];
    const std::string words = unescaped((*at)[6]);
    const double size = std::stod((*at)[3]) * ((*at)[5].matched ? bold_share : 1);
    out.push_back({words, text_box({std::stod((*at)[1]), std::stod((*at)[2])}, words, size,
                                   anchor == "end"      ? Anchor::end
                                   : anchor == "middle" ? Anchor::middle
                                                        : Anchor::start)});
  }
  return out;
}

double height_of(const std::string& svg) {
  static const std::regex box(R"re(viewBox="0 0 420 ([0-9.]+)")re");
  std::smatch found;
  return std::regex_search(svg, found, box) ? std::stod(found[1]) : 0;
}

void check_layout(const Picture& picture) {
  const std::vector<Text> all = texts_of(picture.svg);
  const double height = height_of(picture.svg);
  REQUIRE(!all.empty());
  CHECK(all.size() == static_cast<std::size_t>(
                          std::count_if(all.begin(), all.end(), [](const Text& one) { return !one.words.empty(); })));
  for (std::size_t at = 0; at < all.size(); ++at) {
    INFO(picture.title << ": `" << all[at].words << "`");
    CHECK(all[at].box.left >= -0.01);
    CHECK(all[at].box.right <= 420.01);
    CHECK(all[at].box.top >= -0.01);
    CHECK(all[at].box.bottom <= height);
    for (std::size_t other = 0; other < at; ++other) {
      INFO("against `" << all[other].words << "`");
      CHECK_FALSE(all[at].box.overlaps(all[other].box));
    }
  }
}

// Enough of XML: elements nest, attributes are quoted, nothing is bare.
bool well_formed(const std::string& svg) {
  static const std::regex tag(R"re(<(/?)([a-z]+)((?: [a-zA-Z0-9:-]+="[^"<>]*")*)(/?)>)re");
  std::vector<std::string> open;
  std::size_t end = 0;
  for (std::sregex_iterator at(svg.begin(), svg.end(), tag), last; at != last; ++at) {
    const auto begin = static_cast<std::size_t>(at->position());
    if (svg.substr(end, begin - end).find_first_of("<>") != std::string::npos) {
      return false;
    }
    end = begin + static_cast<std::size_t>(at->length());
    if ((*at)[1].length() != 0) {
      if (open.empty() || open.back() != (*at)[2]) {
        return false;
      }
      open.pop_back();
    } else if ((*at)[4].length() == 0) {
      open.push_back((*at)[2]);
    }
  }
  static const std::regex bare("&(?!(amp|lt|gt|quot|#39);)");
  return open.empty() && svg.find_first_of("<>", end) == std::string::npos && !std::regex_search(svg, bare);
}

TEST_CASE("the check of well-formed text is no rubber stamp") {
  CHECK(well_formed("<svg a=\"1\"><text>x &amp; y</text><line x1=\"2\"/></svg>"));
  for (const char* bad : {"<svg><text></svg></text>", "<svg>", "<svg>a < b</svg>", "<svg>a & b</svg>",
                          "<svg a=1></svg>", "<svg></svg></svg>", "<svg>x</svg>>"}) {
    INFO(bad);
    CHECK_FALSE(well_formed(bad));
  }
}

std::vector<Picture> all_samples() {
  std::vector<Picture> out{draw(design_sample()),
                           draw(build_sample()),
                           draw(grading_sample(SieveAxis::power)),
                           draw(grading_sample(SieveAxis::logarithmic)),
                           draw(margin_sample(40)),
                           draw(margin_sample(12)),
                           draw(scatter_sample()),
                           draw(matrix_sample(12)),
                           draw(matrix_sample(19))};
  return out;
}

TEST_CASE("no text of a picture overlaps another or leaves it") {
  for (const Picture& one : all_samples()) {
    check_layout(one);
  }
}

TEST_CASE("40 clauses and 12 specifications are all there") {
  const auto words = [](const Picture& picture) {
    std::vector<std::string> out;
    for (const Text& one : texts_of(picture.svg)) {
      out.push_back(one.words);
    }
    return out;
  };
  const std::vector<std::string> margins = words(draw(margin_sample(40)));
  for (int at = 1; at <= 40; ++at) {
    const std::string number = "512.3." + std::to_string(at) + " ";
    CHECK(std::count_if(margins.begin(), margins.end(),
                        [&number](const std::string& one) { return one.starts_with(number); }) == 1);
  }
  const std::vector<std::string> matrix = words(draw(matrix_sample(12)));
  for (int at = 1; at <= 12; ++at) {
    CHECK(std::count(matrix.begin(), matrix.end(), std::to_string(at)) == 2);  // over its column, and in the key
  }
}

TEST_CASE("every picture is well-formed, has a role, a title and a description, and a table of full rows") {
  for (const Picture& one : all_samples()) {
    INFO(one.title);
    CHECK(well_formed(one.svg));
    CHECK(one.svg.find(" role=\"img\"") != std::string::npos);
    CHECK(one.svg.find("<title>" + escaped(one.title) + "</title>") != std::string::npos);
    CHECK(one.svg.find("<desc>" + escaped(one.description) + "</desc>") != std::string::npos);
    CHECK(!one.description.empty());
    CHECK(!one.table.rows.empty());
    for (const std::vector<std::string>& row : one.table.rows) {
      CHECK(row.size() == one.table.heads.size());
    }
  }
}

TEST_CASE("a picture has nothing that a strict page forbids, and text in the colour of the page") {
  for (const Picture& one : all_samples()) {
    for (const std::string_view forbidden : {"style=", "<style", "<script", "href", "url(", " on", " id="}) {
      INFO(forbidden);
      static const std::regex words(">[^<]*<");  // text may say what it likes
      CHECK(std::regex_replace(one.svg, words, "><").find(forbidden) == std::string::npos);
    }
    CHECK(one.svg.find("fill=\"currentColor\"") != std::string::npos);
  }
}

TEST_CASE("markup, control characters, turned writing and broken bytes are made harmless") {
  CHECK(escaped("<b>&\"'") == "&lt;b&gt;&amp;&quot;&#39;");
  CHECK(escaped("a\nb\tc") == "a b c");
  CHECK(escaped(std::string("a\0b", 3)) ==
        "a\xEF\xBF\xBD"
        "b");
  CHECK(escaped("a\x1b[31m") == "a\xEF\xBF\xBD[31m");
  CHECK(escaped("\xE2\x80\xAEx") == "\xEF\xBF\xBDx");        // right-to-left override
  CHECK(escaped("\xFF\xC3") == "\xEF\xBF\xBD\xEF\xBF\xBD");  // no UTF-8
  CHECK(escaped("\xC0\xBC") == "\xEF\xBF\xBD\xEF\xBF\xBD");  // an overlong `<`
  CHECK(escaped("\xED\xA0\x80") == "\xEF\xBF\xBD");          // a surrogate
  CHECK(escaped("\xC2\xB5m \xE2\x89\xA4") == "\xC2\xB5m \xE2\x89\xA4");
}

TEST_CASE("hostile texts in every field stay text") {
  const std::string hostile = "</text><script>alert(1)</script>\" onload=\"x ]]>& \x01";
  DesignChart design = design_sample();
  design.title = design.axis.title = design.axis.unit = hostile;
  design.panels[0].title = design.panels[0].unit = design.panels[0].limits[0].label = hostile;
  design.windows[0].label = design.job_mix->text = design.tolerance->label = hostile;
  MarginChart margins = margin_sample(3);
  margins.margins[0].number = margins.margins[0].title = margins.margins[0].shown = hostile;
  MatrixChart matrix = matrix_sample(3);
  matrix.columns[0].label = matrix.columns[0].outcome = matrix.rows[0].label = hostile;
  GradingChart grading = grading_sample(SieveAxis::power);
  grading.sieves[2].name = hostile;
  for (const Picture& one : {draw(design), draw(margins), draw(matrix), draw(grading)}) {
    CHECK(well_formed(one.svg));
    CHECK(one.svg.find("<script") == std::string::npos);
    CHECK(one.svg.find('\x01') == std::string::npos);
  }
}

TEST_CASE("numbers have at most two decimals and no noise") {
  CHECK(number(1) == "1");
  CHECK(number(0.1 + 0.2) == "0.3");
  CHECK(number(-0.001) == "0");
  CHECK(number(12.345678) == "12.35");
  CHECK(number(1e6) == "1000000");
  CHECK(number(std::nan("")) == "0");
}

TEST_CASE("the same data give the same bytes, whatever the locale is") {
  const std::vector<Picture> before = all_samples();
  std::setlocale(LC_ALL, "de_DE.UTF-8");  // where it is installed, a comma
  const std::vector<Picture> after = all_samples();
  std::setlocale(LC_ALL, "C");
  for (std::size_t at = 0; at < before.size(); ++at) {
    CHECK(before[at].svg == after[at].svg);
    CHECK(before[at].description == after[at].description);
  }
}

TEST_CASE("pictures of little or nothing, and of numbers that are none, are drawn") {
  DesignChart empty;
  empty.title = "nothing";
  empty.axis = {"binder", "%"};
  DesignChart odd = design_sample();
  odd.panels[0].readings[1].low.at = std::nan("");
  odd.panels[0].limits[0].value.at = INFINITY;
  DesignChart single = empty;
  single.panels.push_back({"one point", "g", {reading(7, 0, Verdict::not_shown)}, {}, ""});
  for (const Picture& one : {draw(empty), draw(odd), draw(single), draw(BuildChart{}), draw(GradingChart{}),
                             draw(MarginChart{}), draw(ScatterChart{}), draw(MatrixChart{})}) {
    CHECK(well_formed(one.svg));
    CHECK(one.svg.find("nan") == std::string::npos);
    CHECK(one.svg.find("inf") == std::string::npos);
  }
}

TEST_CASE("verdicts differ in shape, not in colour alone") {
  std::vector<std::string> shapes;
  for (const Verdict one : {Verdict::complies, Verdict::fails, Verdict::not_shown, Verdict::does_not_apply}) {
    Drawing drawing;
    drawing.mark({50, 50}, one);
    static const std::regex colour(R"re((fill|stroke)="var[^"]*")re");
    shapes.push_back(std::regex_replace(drawing.finish(100, "", ""), colour, ""));
  }
  for (std::size_t at = 0; at < shapes.size(); ++at) {
    CHECK(std::count(shapes.begin(), shapes.end(), shapes[at]) == 1);
  }
}

// The places of lines across the plot that are drawn so.
std::vector<double> lines_at(const std::string& svg, const std::string& pen) {
  const std::regex line(R"re(<line x1="[^"]*" y1="([-0-9.]+)" x2="[^"]*" y2="([-0-9.]+)" stroke="[^"]*)re" + pen);
  std::vector<double> out;
  for (std::sregex_iterator at(svg.begin(), svg.end(), line), end; at != end; ++at) {
    if ((*at)[1] == (*at)[2]) {
      out.push_back(std::stod((*at)[1]));
    }
  }
  return out;
}

TEST_CASE("the line of a limit stands at the limit as stated, and what rounding lets comply between two lines") {
  DesignChart chart;
  chart.title = "rounded";
  chart.axis = {"binder", "%"};
  chart.panels.push_back(
      {"torque", "kg-cm", {reading(7, 0, Verdict::fails), reading(8, 40, Verdict::complies)}, {}, ""});
  Limit limit{value(20, "20"), Limit::Side::lower, "at least 20 kg-cm"};
  limit.unrounded = value(15, "at least 15 kg-cm");  // rounded to 10
  chart.panels[0].limits.push_back(limit);
  const Picture drawn = draw(chart);
  check_layout(drawn);
  // Ticks at 0, 10 ... 40 or finer: the grid has a line where the limit stands.
  const std::string fails = R"re(fails[^"]*" stroke-width=)re";
  const std::vector<double> stated = lines_at(drawn.svg, fails + R"re("1.5"/>)re");
  const std::vector<double> dotted = lines_at(drawn.svg, fails + R"re("0.8" stroke-dasharray="1 2"/>)re");
  const std::vector<double> grid = lines_at(drawn.svg, R"re(quiet[^"]*" stroke-width="0.4"/>)re");
  REQUIRE(stated.size() == 1);
  REQUIRE(dotted.size() == 1);
  CHECK(std::count(grid.begin(), grid.end(), stated[0]) == 1);
  CHECK(dotted[0] > stated[0]);  // lower
  CHECK(drawn.svg.find(">dotted: at least 20 kg-cm, unrounded at least 15 kg-cm<") != std::string::npos);
  CHECK(drawn.description.find("limit at least 20 kg-cm (unrounded: at least 15 kg-cm)") != std::string::npos);

  BuildChart build = build_sample();
  build.levels[1].unrounded = value(19.5, "at least 19.5 kg-cm");
  const std::vector<double> levels = lines_at(draw(build).svg, fails + R"re("1.5"/>)re");
  CHECK(levels == lines_at(draw(build_sample()).svg, fails + R"re("1.5"/>)re"));
  CHECK(draw(build).table.rows.back()[2] == "20 kg-cm (unrounded: at least 19.5 kg-cm)");
}

// Panels with many limits close to each other: labels find room, or stand under the plot.
TEST_CASE("labels of limits that lie close together do not overlap, and none is lost") {
  DesignChart chart = design_sample();
  for (int at = 0; at < 7; ++at) {
    chart.panels[0].limits.push_back(
        {value(500 + at * 6, "x"), Limit::Side::upper,
         "at most " + std::to_string(500 + at * 6) + " g/m2 for class " + std::to_string(at)});
  }
  const Picture picture = draw(chart);
  check_layout(picture);
  const std::vector<Text> all = texts_of(picture.svg);
  for (const std::vector<std::string>& row : picture.table.rows) {
    if (row[3] == "limit") {
      CHECK(std::any_of(all.begin(), all.end(), [&row](const Text& one) {
        return one.words.find(row[2]) != std::string::npos || one.words == "x";
      }));
    }
  }
}

}  // namespace
}  // namespace plumbrule::picture
