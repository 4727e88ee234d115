#pragma once
// A submittal as a tree in which every key and value knows its place. YAML goes in through yaml-cpp's event
// interface; nothing of yaml-cpp leaves yaml.cpp.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "diagnose/diagnostic.hpp"
#include "source/source.hpp"

namespace plumbrule::evidence {

struct Entry;

struct Node {
  enum class Kind : std::uint8_t { empty, scalar, list, map };
  Kind kind = Kind::empty;
  std::string text;  // scalar: as written, quotes resolved
  source::Span span;
  std::vector<Node> items;     // list
  std::vector<Entry> entries;  // map, in written order, keys unique

  [[nodiscard]] const Node* find(std::string_view key) const;
};

struct Entry {
  std::string key;
  source::Span key_span;
  Node value;
};

inline constexpr int deepest_nesting = 32;

/// Reads one YAML document. Refused with a diagnostic (and nothing returned): text that is not UTF-8 or holds NUL,
/// YAML syntax errors, anchors and aliases, tags other than the plain ones, merge keys, duplicate keys, keys that are
/// not plain words, nesting beyond `deepest_nesting`, more than one document, an empty document. Never throws.
[[nodiscard]] std::optional<Node> read_yaml(const source::SourceMap& sources, source::FileId file,
                                            diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::evidence
