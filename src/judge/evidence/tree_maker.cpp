#include "judge/evidence/tree_maker.hpp"

#include <algorithm>
#include <array>

#include "base/diagnose/quote.hpp"
#include "judge/evidence/yaml_fault.hpp"
#include "judge/evidence/yaml_text.hpp"

namespace plumbrule::evidence {
namespace {

using diagnose::Code;
using source::Span;

constexpr int most_duplicates = 20;  // reported of one file

bool means_nothing(std::string_view word) {
  constexpr std::array<std::string_view, 4> nothing{"null", "Null", "NULL", "~"};
  return std::find(nothing.begin(), nothing.end(), word) != nothing.end();
}

}  // namespace

void TreeMaker::refuse(Code code, const Span& where, const std::string& message, std::string_view help) {
  diagnostics_.error(code, where, message, std::string(help));
  throw Refused{};
}

Span TreeMaker::span(std::size_t begin, std::size_t end) const {
  const std::size_t last = std::min(end, text_.size());
  return {file_, static_cast<std::uint32_t>(offset_ + std::min(begin, last)),
          static_cast<std::uint32_t>(offset_ + last)};
}

Span TreeMaker::word(std::size_t at) const { return span(at, word_end(text_, at)); }

bool TreeMaker::wants_key() const {
  return !open_.empty() && open_.back().node.kind == Node::Kind::map && !open_.back().has_key;
}

std::optional<std::size_t> TreeMaker::open_bracket() const {
  const auto innermost = std::find_if(open_.rbegin(), open_.rend(), [this](const Open& one) {
    const std::size_t begin = in_text(one.node.span.begin);
    return stands_at(begin, '[') || stands_at(begin, '{');
  });
  return innermost == open_.rend() ? std::nullopt : std::optional(in_text(innermost->node.span.begin));
}

void TreeMaker::begin_document(std::size_t at) {
  if (++documents_ == 1) {
    return;
  }
  const std::string_view before = text_.substr(0, at);
  const std::string_view written = before.substr(0, before.find_last_not_of(" \t\r\n") + 1);
  if (text_.substr(at).starts_with("---") || written.ends_with("\n...")) {
    refuse(Code::submittal_shape, word(at), "found a second document in the file",
           "put each submittal in a file of its own");
  }
  // The library takes whatever stands behind a finished document for another one.
  refuse(Code::submittal_yaml, word(at), "found text that does not belong to what stands above it",
         "put each `name: value` on a line of its own, indented with blanks like its neighbours");
}

void TreeMaker::add_empty(std::size_t at) {
  Node node;
  node.span = empty_span(at);
  place(std::move(node));
}

void TreeMaker::add_scalar(std::size_t at, const std::string& value) {
  const auto end = scalar_end(text_, at, value);
  if (!end) {
    const YamlFault& fault = quote_fault();
    refuse(fault.code, span(at, at + 1), std::string(fault.message), fault.help);
  }
  Node node;
  node.kind = Node::Kind::scalar;
  node.text = value;
  node.span = span(at, *end);
  place(std::move(node));
}

// Behind the colon of the entry that has no value. An entry without a colon is a slip, which the library lets pass.
Span TreeMaker::empty_value_span(const Open& map) {
  const std::size_t colon = next_written(text_, in_text(map.key_span.end));
  const auto bracket = open_bracket();
  if (colon == text_.size() && bracket) {  // the library takes the last value of a list that is cut short for a name
    const YamlFault& fault = unclosed_fault(text_[*bracket]);
    refuse(fault.code, span(*bracket, *bracket + 1), std::string(fault.message), fault.help);
  }
  if (!stands_at(colon, ':')) {
    refuse(Code::submittal_yaml, map.key_span, "found " + diagnose::quoted(map.key) + ", a name without a value",
           "write `name: value`, with a blank behind the colon");
  }
  return span(colon + 1, colon + 1);
}

// A written "null"; or, since the library then tells the place of whatever comes next, where the value is missing.
Span TreeMaker::empty_span(std::size_t at) {
  const std::string_view next = text_.substr(at, word_end(text_, at) - at);
  const std::string_view plain = next.substr(0, next.find(':'));
  if (means_nothing(plain)) {
    return span(at, at + plain.size());
  }
  if (open_.empty() || wants_key()) {
    return span(at, at);
  }
  const Open& parent = open_.back();
  if (parent.node.kind == Node::Kind::map) {
    return empty_value_span(parent);
  }
  const std::size_t from = parent.node.items.empty() ? parent.node.span.begin : parent.node.span.end;
  const std::size_t dash = next_written(text_, from - offset_);
  return stands_at(dash, '-') ? span(dash, dash + 1) : span(at, at);
}

void TreeMaker::open(Node::Kind kind, std::size_t at) {
  if (static_cast<int>(open_.size()) >= deepest_nesting) {
    refuse(Code::submittal_depth, span(at, at + 1),
           "found lists or maps nested more than " + std::to_string(deepest_nesting) + " deep",
           "a submittal needs no more than a few levels");
  }
  if (wants_key()) {
    refuse(Code::submittal_shape, span(at, at + 1), "found a list or map as the name of an entry",
           "names are plain words; if no name is meant here, a closing bracket may be missing");
  }
  open_.emplace_back();
  open_.back().node.kind = kind;
  open_.back().node.span = span(at, at + 1);
}

void TreeMaker::close() {
  Node done = std::move(open_.back().node);
  open_.pop_back();
  const std::size_t begin = in_text(done.span.begin);
  if (stands_at(begin, '[') || stands_at(begin, '{')) {
    std::size_t at = next_written(text_, in_text(done.span.end));
    at = stands_at(at, ',') ? next_written(text_, at + 1) : at;  // the last comma may stand before the bracket
    if (stands_at(at, text_[begin] == '[' ? ']' : '}')) {
      done.span = source::cover(done.span, span(at, at + 1));
    }
  }
  place(std::move(done));
}

void TreeMaker::place_key(Open& map, Node node) {
  if (node.kind != Node::Kind::scalar || node.text.empty()) {
    refuse(Code::submittal_shape, node.span, "found an entry without a name", "write `name: value`");
  }
  if (std::any_of(node.text.begin(), node.text.end(), [](char byte) { return byte >= 0 && byte < ' '; })) {
    refuse(Code::submittal_shape, node.span, "found a name that holds a line end or another control character",
           "write `name: value` on one line");
  }
  if (node.text == "<<") {
    refuse(Code::submittal_alias, node.span, "found `<<`, which copies entries from another part of the file",
           "write the entries out where they belong");
  }
  const auto [first, is_new] = map.keys.try_emplace(node.text, node.span);
  if (!is_new) {
    auto& report = diagnostics_.error(Code::submittal_duplicate_key, node.span,
                                      "found " + diagnose::quoted(node.text) + " a second time",
                                      "keep one of them; a second one would hide the first");
    report.secondary.push_back({first->second, "the first one"});
    if (++duplicates_ >= most_duplicates) {
      throw Refused{};
    }
  }
  map.has_key = true;
  map.key = std::move(node.text);
  map.key_span = node.span;
}

void TreeMaker::place(Node node) {
  read_to_ = in_text(node.span.end);
  if (++values_ > most_values) {
    refuse(Code::submittal_shape, node.span, "found more than " + std::to_string(most_values) + " names and values",
           "put each submittal in a file of its own");
  }
  if (open_.empty()) {
    root_ = std::move(node);
    return;
  }
  Open& parent = open_.back();
  if (wants_key()) {
    return place_key(parent, std::move(node));
  }
  parent.node.span = source::cover(source::cover(parent.node.span, parent.key_span), node.span);
  if (parent.node.kind == Node::Kind::list) {
    parent.node.items.push_back(std::move(node));
    return;
  }
  parent.node.entries.push_back({std::move(parent.key), parent.key_span, std::move(node)});
  parent.has_key = false;
}

}  // namespace plumbrule::evidence
