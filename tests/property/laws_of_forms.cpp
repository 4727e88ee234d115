// Laws of the forms of a submittal (language.md, section 17), over random rules and submittals.

#include "judge/evidence/json.hpp"
#include "judge/evidence/sheet.hpp"
#include "judge/evidence/transcribe.hpp"
#include "law_tools.hpp"

namespace plumbrule::property {
namespace {

using evidence::Node;

enum class Form : std::uint8_t { yaml, json, sheet };

// Nothing if the form refuses the text.
std::optional<Node> read(Form form, const std::string& text) {
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  const auto file = sources.add("form", text);
  if (form == Form::sheet) {
    const auto sheet = evidence::read_sheet(sources, file, diagnostics);
    RC_ASSERT(sheet && sheet->rows.size() == 1);
    return evidence::submittal_of(sheet->headings, sheet->rows[0].cells, sheet->rows[0].span, diagnostics);
  }
  return form == Form::json ? evidence::read_json(sources, file, diagnostics)
                            : evidence::read_yaml(sources, file, diagnostics);
}

// The same values, and names in the same order.
void expect_same(const Node& tree, const std::optional<Node>& back) {
  RC_ASSERT(back.has_value());
  RC_ASSERT(evidence::same_values(tree, *back));
  RC_ASSERT(evidence::to_json(tree) == evidence::to_json(*back));
}

TEST_CASE("YAML and JSON say the same") {
  LAW("forms", [] {
    const Scene scene = draw_scene({});
    const std::string yaml = evidence::to_yaml(scene.submittal);
    const std::string json = evidence::to_json(scene.submittal);
    expect_same(scene.submittal, read(Form::yaml, yaml));
    expect_same(scene.submittal, read(Form::json, json));
    RC_ASSERT(evidence::to_yaml(*read(Form::json, json)) == yaml);
  });
}

TEST_CASE("a sheet says the same, or is not written") {
  std::size_t written = 0;
  std::size_t drawn = 0;
  LAW("sheets", [&] {
    const Scene scene = draw_scene({});
    diagnose::Diagnostics diagnostics;
    const auto sheet = evidence::to_sheet(scene.submittal, diagnostics);
    ++drawn;
    if (!sheet) {
      RC_ASSERT(diagnostics.has_errors());
      return;
    }
    ++written;
    const auto back = read(Form::sheet, *sheet);
    RC_ASSERT(back && evidence::same_values(scene.submittal, *back));
    RC_ASSERT(verdicts(*scene.made, scene.submittal) == verdicts(*scene.made, *back));
  });
  CHECK(written * 2 > drawn);
}

// Texts that a form may stumble over.
rc::Gen<std::string> text() {
  return rc::gen::container<std::string>(
      rc::gen::elementOf(std::string("aA1 09.-+:#,;'\"\\{}[]()%&*!|>@`~\t\n\x7F\x01/=?<_")));
}

rc::Gen<Node> tree(int depth) {
  return rc::gen::exec([depth] {
    const int kind = *rc::gen::inRange(0, depth > 0 ? 4 : 2);
    Node out;
    if (kind == 1) {
      out = scalar(*text());
    } else if (kind == 2) {
      out = list();
      for (int at = 0, count = *rc::gen::inRange(0, 4); at < count; ++at) {
        out.items.push_back(*tree(depth - 1));
      }
    } else if (kind == 3) {
      out = map();
      for (int at = 0, count = *rc::gen::inRange(0, 4); at < count; ++at) {
        const auto allowed = [](const std::string& name) {
          return name.find_first_of("\t\n\x01") == std::string::npos;
        };
        put(out, std::to_string(at) + *rc::gen::suchThat(text(), allowed), *tree(depth - 1));
      }
    }
    return out;
  });
}

TEST_CASE("any tree of any texts is written and read back") {
  LAW("trees", [] {
    Node whole = map();
    put(whole, "submittal", scalar("1"));
    put(whole, "tree", *tree(4));
    expect_same(whole, read(Form::yaml, evidence::to_yaml(whole)));
    expect_same(whole, read(Form::json, evidence::to_json(whole)));
    diagnose::Diagnostics diagnostics;
    RC_ASSERT(!evidence::to_sheet(whole, diagnostics) || whole.entries.back().value.kind == Node::Kind::scalar);
  });
}

TEST_CASE("a cell of any text is read back") {
  LAW("cells", [] {
    Node whole = map();
    put(whole, "submittal", scalar("1"));
    const std::string note = *text();
    put(whole, "note", scalar(note));
    diagnose::Diagnostics diagnostics;
    const auto sheet = evidence::to_sheet(whole, diagnostics);
    const bool blank = note.find_first_not_of(" \t") == std::string::npos;
    const bool unseen = note.find_first_of("\n\x7F\x01") != std::string::npos;
    RC_ASSERT(sheet.has_value() == !(blank || unseen));
    if (sheet) {
      const auto back = read(Form::sheet, *sheet);
      RC_ASSERT(back && evidence::same_values(whole, *back));
    }
  });
}

}  // namespace
}  // namespace plumbrule::property
