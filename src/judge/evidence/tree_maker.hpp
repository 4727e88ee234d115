#pragma once
// Builds the tree of a submittal from what a YAML parser reports, and refuses what a submittal does not use. Knows
// places in the text, not the parser. Inside the evidence stage only.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "judge/evidence/document.hpp"

namespace plumbrule::evidence {

/// Thrown to leave the parser in the middle of a text, after the diagnostic was reported; read_yaml catches it.
struct Refused {};

/// All places are bytes of the text, which stands in its file behind `offset` bytes.
class TreeMaker {
 public:
  TreeMaker(std::string_view text, source::FileId file, std::size_t offset, diagnose::Diagnostics& diagnostics)
      : text_(text), file_(file), offset_(offset), diagnostics_(diagnostics) {}

  void begin_document(std::size_t at);
  void add_empty(std::size_t at);
  void add_scalar(std::size_t at, const std::string& value);
  void open(Node::Kind kind, std::size_t at);
  void close();
  /// The finished tree; empty if there was none.
  [[nodiscard]] Node take() { return std::move(root_); }

  [[noreturn]] void refuse(diagnose::Code code, const source::Span& where, const std::string& message,
                           std::string_view help);
  [[nodiscard]] source::Span span(std::size_t begin, std::size_t end) const;
  [[nodiscard]] source::Span word(std::size_t at) const;
  /// Duplicate names are reported without leaving the parser, so that all are seen at once.
  [[nodiscard]] bool has_duplicates() const { return duplicates_ > 0; }
  /// The innermost list or map in brackets that is still open.
  [[nodiscard]] std::optional<std::size_t> open_bracket() const;
  /// The end of the last value or name that was added.
  [[nodiscard]] std::size_t read_to() const { return read_to_; }

 private:
  struct Open {
    Node node;
    bool has_key = false;
    std::string key;
    source::Span key_span;
    std::map<std::string, source::Span> keys;
  };

  std::string_view text_;
  source::FileId file_;
  std::size_t offset_;
  diagnose::Diagnostics& diagnostics_;
  std::vector<Open> open_;
  Node root_;
  int documents_ = 0;
  int duplicates_ = 0;
  std::size_t values_ = 0;
  std::size_t read_to_ = 0;

  [[nodiscard]] std::size_t in_text(std::uint32_t place) const { return place - offset_; }
  [[nodiscard]] bool stands_at(std::size_t at, char byte) const { return at < text_.size() && text_[at] == byte; }
  [[nodiscard]] bool wants_key() const;
  [[nodiscard]] source::Span empty_span(std::size_t at);
  [[nodiscard]] source::Span empty_value_span(const Open& map);
  void place(Node node);
  void place_key(Open& map, Node node);
};

}  // namespace plumbrule::evidence
