// The only translation unit that sees yaml-cpp. Its marks count the bytes of UTF-8 text, a byte order mark excepted.

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <istream>
#include <streambuf>

#include "base/diagnose/quote.hpp"
#include "judge/evidence/text_of_file.hpp"
#include "judge/evidence/tree_maker.hpp"
#include "judge/evidence/yaml_fault.hpp"
#include "judge/evidence/yaml_text.hpp"

namespace plumbrule::evidence {
namespace {

using diagnose::Code;
using source::Span;

std::size_t position(std::string_view text, const YAML::Mark& mark) {
  return std::min(static_cast<std::size_t>(std::max(mark.pos, 0)), text.size());
}

// Passes the library's events on, without the features that a submittal does not use.
class Events : public YAML::EventHandler {
 public:
  Events(std::string_view text, TreeMaker& maker) : text_(text), maker_(maker) {}

  void OnDocumentStart(const YAML::Mark& mark) override { maker_.begin_document(position(text_, mark)); }
  void OnDocumentEnd() override {}

  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override { maker_.add_empty(plain(mark, {}, anchor)); }

  void OnAlias(const YAML::Mark& mark, YAML::anchor_t /*anchor*/) override {
    maker_.refuse(Code::submittal_alias, maker_.word(position(text_, mark)),
                  "found a reference (`*name`) to another part of the file", "write the values out where they belong");
  }

  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    maker_.add_scalar(plain(mark, tag, anchor), value);
  }

  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value /*style*/) override {
    maker_.open(Node::Kind::list, plain(mark, tag, anchor));
  }
  void OnSequenceEnd() override { maker_.close(); }

  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value /*style*/) override {
    maker_.open(Node::Kind::map, plain(mark, tag, anchor));
  }
  void OnMapEnd() override { maker_.close(); }

 private:
  std::string_view text_;
  TreeMaker& maker_;

  // The place of a value that has neither a name nor a type mark. The library gives the tag "!" to quoted scalars too;
  // only the text tells whether it was written.
  std::size_t plain(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor) {
    const std::size_t at = position(text_, mark);
    if (anchor != YAML::NullAnchor) {
      maker_.refuse(Code::submittal_alias, maker_.word(at), "found a named part (`&name`)",
                    "write the values out where they belong");
    }
    if ((!tag.empty() && tag != "?" && tag != "!") || text_.substr(at).starts_with('!')) {
      const std::string_view written = text_.substr(at, word_end(text_, at) - at);
      maker_.refuse(Code::submittal_shape, maker_.word(at), "found a type mark " + diagnose::quoted(written),
                    "leave the mark out; a value that begins with `!` goes in quotes");
    }
    return at;
  }
};

// Reads straight from the text, without a copy.
class TextBuffer : public std::streambuf {
 public:
  explicit TextBuffer(std::string_view text) {
    char* const begin = const_cast<char*>(text.data());  // NOLINT(cppcoreguidelines-pro-type-const-cast): never written
    setg(begin, begin, begin + text.size());
  }
};

// Where the line of `at` is indented with a tab; the length of the text if it is not.
std::size_t tab_in_indentation(std::string_view text, std::size_t at) {
  const std::size_t line_break = at == 0 ? std::string_view::npos : text.rfind('\n', at - 1);
  const std::size_t line = line_break == std::string_view::npos ? 0 : line_break + 1;
  const std::size_t found = std::min(text.find_first_not_of(' ', line), text.size());
  return text.substr(found).starts_with('\t') ? found : text.size();
}

Span place_of(const YamlFault& fault, std::string_view text, std::size_t at, const TreeMaker& maker) {
  if (fault.points == YamlFault::Points::two_before && at >= 2) {
    return maker.span(at - 2, at);
  }
  if (fault.points == YamlFault::Points::word) {
    const bool behind = word_end(text, at) == at && at > 0;  // a lone `*`, and the parser stopped behind it
    return maker.word(behind ? at - 1 : at);
  }
  return maker.span(at, at + 1);
}

void report(const YAML::Exception& failure, std::string_view text, const TreeMaker& maker,
            diagnose::Diagnostics& diagnostics) {
  using Points = YamlFault::Points;
  const YamlFault* fault = &yaml_fault(failure.msg);
  std::size_t at = position(text, failure.mark);
  const std::size_t tab = tab_in_indentation(text, at);
  if (fault->points == Points::here && tab < text.size() && !maker.open_bracket()) {
    fault = &tab_fault();
    at = tab;
  } else if (fault->points == Points::open_bracket) {
    at = maker.open_bracket().value_or(at);
  } else if (fault->points == Points::open_quote) {
    at = unclosed_quote(text, maker.read_to()).value_or(at);
  }
  diagnostics.error(fault->code, place_of(*fault, text, at, maker), std::string(fault->message),
                    std::string(fault->help));
}

bool parse(std::string_view text, TreeMaker& maker, diagnose::Diagnostics& diagnostics) {
  try {
    TextBuffer buffer(text);
    std::istream stream(&buffer);
    YAML::Parser parser(stream);
    Events events(text, maker);
    while (parser.HandleNextDocument(events)) {
    }
    return !maker.has_duplicates();
  } catch (const Refused&) {
    return false;
  } catch (const YAML::Exception& failure) {
    report(failure, text, maker, diagnostics);
    return false;
  }
}

}  // namespace

std::optional<Node> read_yaml(const source::SourceMap& sources, source::FileId file,
                              diagnose::Diagnostics& diagnostics) {
  const auto readable = text_of_file(sources, file, Code::submittal_yaml, diagnostics);
  if (!readable) {
    return std::nullopt;
  }
  const std::string_view text = readable->text;
  TreeMaker maker(text, file, readable->offset, diagnostics);
  if (!parse(text, maker, diagnostics)) {
    return std::nullopt;
  }
  Node out = maker.take();
  if (out.kind == Node::Kind::empty) {
    diagnostics.error(Code::submittal_shape, {file, 0, 0}, "found an empty file", "begin with `submittal: 1`");
    return std::nullopt;
  }
  return out;
}

}  // namespace plumbrule::evidence
