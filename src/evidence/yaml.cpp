// The only translation unit that sees yaml-cpp.

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <istream>
#include <set>
#include <streambuf>

#include "diagnose/encoding.hpp"
#include "diagnose/quote.hpp"
#include "evidence/document.hpp"

namespace plumbrule::evidence {
namespace {

using diagnose::Code;

// Thrown by the handler to leave the library's parser; caught in read_yaml.
struct Refused {};

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

class TreeMaker : public YAML::EventHandler {
 public:
  TreeMaker(std::string_view text, source::FileId file, std::uint32_t offset, diagnose::Diagnostics& diagnostics)
      : text_(text), file_(file), offset_(offset), diagnostics_(diagnostics) {}

  Node take() { return std::move(root_); }
  [[nodiscard]] bool filled() const { return documents_ > 0; }

  void OnDocumentStart(const YAML::Mark& mark) override {
    if (++documents_ > 1) {
      refuse(Code::submittal_shape, span(mark, 0), "found a second document in the file",
             "put each submittal in a file of its own");
    }
  }
  void OnDocumentEnd() override {}

  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    no_anchor(mark, anchor);
    Node node;
    node.span = span(mark, 0);
    place(std::move(node));
  }

  void OnAlias(const YAML::Mark& mark, YAML::anchor_t /*anchor*/) override {
    refuse(Code::submittal_alias, span(mark, 1), "found a reference (`*name`) to another part of the file",
           "write the values out where they belong");
  }

  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    no_anchor(mark, anchor);
    no_tag(mark, tag);
    Node node;
    node.kind = Node::Kind::scalar;
    node.text = value;
    node.span = scalar_span(mark, value);
    place(std::move(node));
  }

  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value /*style*/) override {
    open(Node::Kind::list, mark, tag, anchor);
  }
  void OnSequenceEnd() override { close(); }

  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value /*style*/) override {
    open(Node::Kind::map, mark, tag, anchor);
  }
  void OnMapEnd() override { close(); }

  void OnAnchor(const YAML::Mark& mark, const std::string& /*name*/) override {
    refuse(Code::submittal_alias, span(mark, 1), "found a named part (`&name`)",
           "write the values out where they belong");
  }

 private:
  struct Open {
    Node node;
    bool has_key = false;
    std::string key;
    source::Span key_span;
    std::set<std::string> keys;
  };

  std::string_view text_;
  source::FileId file_;
  std::uint32_t offset_;
  diagnose::Diagnostics& diagnostics_;
  std::vector<Open> open_;
  Node root_;
  int documents_ = 0;

  [[noreturn]] void refuse(Code code, const source::Span& where, std::string message, std::string help) {
    diagnostics_.error(code, where, std::move(message), std::move(help));
    throw Refused{};
  }

  [[nodiscard]] std::size_t position(const YAML::Mark& mark) const {
    return std::min(static_cast<std::size_t>(std::max(mark.pos, 0)), text_.size());
  }

  [[nodiscard]] source::Span span(const YAML::Mark& mark, std::size_t length) const {
    const std::size_t begin = position(mark);
    const std::size_t end = std::min(begin + length, text_.size());
    return {file_, offset_ + static_cast<std::uint32_t>(begin), offset_ + static_cast<std::uint32_t>(end)};
  }

  // The written scalar: its own bytes if plain, up to the closing quote if quoted, else the rest of its line.
  [[nodiscard]] source::Span scalar_span(const YAML::Mark& mark, const std::string& value) const {
    const std::string_view rest = text_.substr(position(mark));
    if (rest.substr(0, value.size()) == value) {
      return span(mark, value.size());
    }
    const char quote = rest.empty() ? ' ' : rest.front();
    if (quote == '"' || quote == '\'') {
      std::size_t at = 1;
      while (at < rest.size() && rest[at] != quote) {
        at += quote == '"' && rest[at] == '\\' ? 2 : 1;
      }
      return span(mark, at + 1);
    }
    return span(mark, std::min(rest.find('\n'), rest.size()));
  }

  void no_anchor(const YAML::Mark& mark, YAML::anchor_t anchor) {
    if (anchor != YAML::NullAnchor) {
      refuse(Code::submittal_alias, span(mark, 1), "found a named part (`&name`)",
             "write the values out where they belong");
    }
  }

  void no_tag(const YAML::Mark& mark, const std::string& tag) {
    if (!tag.empty() && tag != "?" && tag != "!") {
      refuse(Code::submittal_shape, span(mark, 1), "found a type mark " + diagnose::quoted(tag), "leave the mark out");
    }
  }

  void open(Node::Kind kind, const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor) {
    no_anchor(mark, anchor);
    no_tag(mark, tag);
    if (static_cast<int>(open_.size()) >= deepest_nesting) {
      refuse(Code::submittal_depth, span(mark, 1),
             "found lists or maps nested more than " + std::to_string(deepest_nesting) + " deep",
             "a submittal needs no more than a few levels");
    }
    if (!open_.empty() && open_.back().node.kind == Node::Kind::map && !open_.back().has_key) {
      refuse(Code::submittal_shape, span(mark, 1), "found a list or map as the name of an entry",
             "names are plain words");
    }
    open_.emplace_back();
    open_.back().node.kind = kind;
    open_.back().node.span = span(mark, 1);
  }

  void close() {
    Node done = std::move(open_.back().node);
    open_.pop_back();
    place(std::move(done));
  }

  void key(Open& map, Node node) {
    if (node.kind != Node::Kind::scalar) {
      refuse(Code::submittal_shape, node.span, "found an entry without a name", "write `name: value`");
    }
    if (!map.keys.insert(node.text).second) {
      const auto first = std::find_if(map.node.entries.begin(), map.node.entries.end(),
                                      [&](const Entry& entry) { return entry.key == node.text; });
      auto& report = diagnostics_.error(Code::submittal_duplicate_key, node.span,
                                        "found " + diagnose::quoted(node.text) + " a second time",
                                        "keep one of them; a second one would hide the first");
      report.secondary.push_back({first->key_span, "the first one"});
    }
    map.has_key = true;
    map.key = std::move(node.text);
    map.key_span = node.span;
  }

  void place(Node node) {
    if (open_.empty()) {
      root_ = std::move(node);
      return;
    }
    Open& parent = open_.back();
    if (parent.node.kind == Node::Kind::map && !parent.has_key) {
      return key(parent, std::move(node));
    }
    if (parent.node.kind == Node::Kind::list) {
      parent.node.span = source::cover(parent.node.span, node.span);
      parent.node.items.push_back(std::move(node));
      return;
    }
    parent.node.span = source::cover(source::cover(parent.node.span, parent.key_span), node.span);
    parent.node.entries.push_back({std::move(parent.key), parent.key_span, std::move(node)});
    parent.has_key = false;
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

source::Span mark_span(source::FileId file, std::string_view text, std::uint32_t offset, const YAML::Mark& mark) {
  const std::size_t at = std::min(static_cast<std::size_t>(std::max(mark.pos, 0)), text.size());
  const std::size_t end = at < text.size() && text[at] != '\n' ? at + 1 : at;
  return {file, offset + static_cast<std::uint32_t>(at), offset + static_cast<std::uint32_t>(end)};
}

void parse(TreeMaker& maker, std::string_view text) {
  TextBuffer buffer(text);
  std::istream stream(&buffer);
  YAML::Parser parser(stream);
  while (parser.HandleNextDocument(maker)) {
  }
}

}  // namespace

const Node* Node::find(std::string_view key) const {
  const auto at = std::find_if(entries.begin(), entries.end(), [&](const Entry& entry) { return entry.key == key; });
  return at == entries.end() ? nullptr : &at->value;
}

std::optional<Node> read_yaml(const source::SourceMap& sources, source::FileId file,
                              diagnose::Diagnostics& diagnostics) {
  if (!diagnose::check_encoding(sources, file, diagnostics)) {
    return std::nullopt;
  }
  std::string_view text = sources.text(file);
  const std::uint32_t offset = text.starts_with(byte_order_mark) ? 3 : 0;
  text.remove_prefix(offset);
  TreeMaker maker(text, file, offset, diagnostics);
  try {
    parse(maker, text);
  } catch (const Refused&) {
    return std::nullopt;
  } catch (const YAML::Exception& failure) {
    diagnostics.error(Code::submittal_yaml, mark_span(file, text, offset, failure.mark),
                      "found something that is not YAML: " + failure.msg,
                      "check the indentation (blanks, no tabs), the colons and the quotes around here");
    return std::nullopt;
  }
  Node out = maker.take();
  if (!maker.filled() || out.kind == Node::Kind::empty) {
    diagnostics.error(Code::submittal_shape, {file, 0, 0}, "found an empty file", "begin with `submittal: 1`");
    return std::nullopt;
  }
  if (diagnostics.has_errors()) {
    return std::nullopt;
  }
  return out;
}

}  // namespace plumbrule::evidence
