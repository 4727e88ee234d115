// The excerpt with the underlined text. Expectations: computed here.
#include "base/diagnose/render.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <random>
#include <sstream>

#include "base/diagnose/encoding.hpp"

using namespace plumbrule;
using namespace plumbrule::diagnose;

namespace {

struct Shown {
  source::SourceMap sources;
  source::FileId file;
  Diagnostics diagnostics;

  explicit Shown(std::string text) : file(sources.add("mix.plumb", std::move(text))) {}

  [[nodiscard]] source::Span at(std::string_view part) const {
    const auto begin = static_cast<std::uint32_t>(sources.text(file).find(part));
    return {file, begin, begin + static_cast<std::uint32_t>(part.size())};
  }
  Diagnostic& error(const source::Span& span) {
    return diagnostics.error(Code::name_unknown, span, "found it", "mend it");
  }
  [[nodiscard]] std::string text(bool colour = false) const {
    return render_text(diagnostics.all().front(), sources, colour);
  }
};

std::vector<std::string> lines(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) {
    out.push_back(line);
  }
  return out;
}

// Characters of a UTF-8 text.
std::vector<std::string> characters(std::string_view text) {
  std::vector<std::string> out;
  for (const char byte : text) {
    if ((static_cast<unsigned char>(byte) & 0xC0U) != 0x80U) {
      out.emplace_back();
    }
    out.back() += byte;
  }
  return out;
}

// What stands above the marks.
std::string underlined(const std::string& rendered) {
  const auto all = lines(rendered);
  const auto above = characters(all.at(1));
  const auto marks = characters(all.at(2));
  std::string out;
  for (std::size_t at = 0; at < marks.size(); ++at) {
    out += marks[at] == "^" ? at < above.size() ? above[at] : " " : "";
  }
  return out;
}

}  // namespace

TEST_CASE("place, severity, message, code, excerpt and help") {
  Shown shown("plumbrule 1\nmeasure odd in gr\n");
  shown.error(shown.at("gr"));
  CHECK(shown.text() ==
        "mix.plumb:2:16: error: found it [name.unknown]\n"
        "  2 | measure odd in gr\n"
        "    |                ^^\n"
        "  to mend: mend it\n");
}

TEST_CASE("further places, with and without words") {
  Shown shown("one\ntwo\n");
  Diagnostic& error = shown.error(shown.at("two"));
  error.secondary.push_back({shown.at("one"), "the first one"});
  error.secondary.push_back({{}, "nowhere"});
  error.help.clear();
  error.severity = Severity::warning;
  CHECK(shown.text() ==
        "mix.plumb:2:1: warning: found it [name.unknown]\n"
        "  2 | two\n"
        "    | ^^^\n"
        "  mix.plumb:1:1:\n"
        "  1 | one\n"
        "    | --- the first one\n");
}

TEST_CASE("no place: no excerpt") {
  Shown shown("x");
  shown.error({});
  CHECK(shown.text() == "error: found it [name.unknown]\n  to mend: mend it\n");
}

TEST_CASE("tabs, empty spans, ends of lines and files") {
  Shown tab("a\tbad\tb");
  tab.error(tab.at("bad"));
  CHECK(underlined(tab.text()) == "bad");
  Shown empty("abc");
  empty.error({empty.file, 1, 1});
  CHECK(underlined(empty.text()) == "b");
  Shown end("abc");
  end.error({end.file, 3, 3});
  CHECK(lines(end.text()).at(2) == "    |    ^");
  Shown over("abc\ndef\n");
  over.error({over.file, 1, 6});  // only the first line is underlined
  CHECK(underlined(over.text()) == "bc");
  Shown nothing("");
  nothing.error({nothing.file, 0, 0});
  CHECK(lines(nothing.text()).at(2) == "    | ^");
}

TEST_CASE("a line that fits is shown whole") {
  const std::string line = std::string(80, 'x') + " bad";
  Shown shown(line);
  shown.error(shown.at("bad"));
  CHECK(lines(shown.text()).at(1) == "  1 | " + line);
}

TEST_CASE("the marks stand below the text, wherever it is, and no line is endless") {
  std::mt19937 random(20261125);
  const std::vector<std::string> letters{"a", "b", " ", "\xC3\xB6", "\xE2\x82\xAC", "\xF0\x9F\x98\x80", "\t"};
  for (int round = 0; round < 3000; ++round) {
    std::string text = "first\n";
    const std::size_t length = 1 + random() % 300;
    std::vector<std::size_t> starts;
    for (std::size_t at = 0; at < length; ++at) {
      starts.push_back(text.size());
      text += letters[random() % letters.size()];
    }
    starts.push_back(text.size());
    const std::size_t from = random() % length;
    const std::size_t to = std::min(length, from + random() % 12 + 1);
    Shown shown(text + "\nlast");
    shown.error({shown.file, static_cast<std::uint32_t>(starts[from]), static_cast<std::uint32_t>(starts[to])});
    std::string wanted = text.substr(starts[from], starts[to] - starts[from]);
    std::replace(wanted.begin(), wanted.end(), '\t', ' ');
    const std::string rendered = shown.text();
    const std::string found = underlined(rendered);
    if (found.empty() || !wanted.starts_with(found) || (wanted != found && lines(rendered).at(1).size() < 120) ||
        characters(lines(rendered).at(1)).size() > 132 || first_bad_byte(rendered)) {
      FAIL_CHECK(rendered << "wanted: " << wanted);
    }
  }
}

TEST_CASE("control characters of the text do not reach the terminal") {
  Shown shown("a\x1B[31m \xC2\x9B[31m bad\x7F");
  shown.error(shown.at("bad"));
  const std::string rendered = shown.text();
  for (const std::string_view bad : {"\x1B", "\xC2\x9B", "\x7F"}) {
    CHECK(rendered.find(bad) == std::string::npos);
  }
  CHECK(underlined(rendered) == "bad");
}

TEST_CASE("colour only if asked for") {
  Shown shown("bad");
  shown.error(shown.at("bad"));
  CHECK(shown.text(false).find('\x1B') == std::string::npos);
  CHECK(shown.text(true).find('\x1B') != std::string::npos);
}

TEST_CASE("JSON says the same") {
  Shown shown("one\n\"tw\xC3\xB6\" \xFF\n");
  shown.error(shown.at("\"tw\xC3\xB6\"")).secondary.push_back({shown.at("one"), "the first one"});
  shown.error({}).severity = Severity::warning;
  shown.error(shown.at("\xFF"));
  const auto all = nlohmann::json::parse(
      render_json(shown.diagnostics, shown.sources).dump(2, ' ', false, nlohmann::json::error_handler_t::replace));
  REQUIRE(all.size() == 3);
  CHECK(all[0]["code"] == "name.unknown");
  CHECK(all[0]["severity"] == "error");
  CHECK(all[0]["place"]["file"] == "mix.plumb");
  CHECK(all[0]["place"]["line"] == 2);
  CHECK(all[0]["place"]["column"] == 1);
  CHECK(all[0]["place"]["text"] == "\"tw\xC3\xB6\"");
  CHECK(all[0]["also"][0]["label"] == "the first one");
  CHECK(all[1]["place"].empty());
  CHECK(all[1]["severity"] == "warning");
  CHECK(render_json({}, shown.sources) == nlohmann::json::array());
}
