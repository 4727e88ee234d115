#pragma once
// A submittal as a tree in which every key and value knows its place. YAML goes in through yaml-cpp's event
// interface; nothing of yaml-cpp leaves yaml.cpp.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnose/diagnostic.hpp"
#include "base/source/source.hpp"

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
/// The largest file, in bytes, and the most names, values, lists and maps in it: room for hundreds of results, and
/// hostile files are refused before they cost a second.
inline constexpr std::size_t largest_submittal = std::size_t{2} * 1024U * 1024U;
inline constexpr std::size_t most_values = 100'000;

/// Reads one YAML document. Refused with a diagnostic (and nothing returned): text that is not UTF-8 or holds NUL or
/// other control characters, YAML syntax errors, quotes that are never closed, names without a colon, anchors and
/// aliases, tags, merge keys, duplicate keys, keys that are not plain words, nesting beyond `deepest_nesting`, more
/// than `most_values` or `largest_submittal`, more than one document, an empty document. Never throws.
///
/// The span of a scalar is what is written, quotes included; of a list or map, from the first to the last child,
/// brackets included; of an empty value, the written `null`, the dash of its entry, or the place behind its colon.
[[nodiscard]] std::optional<Node> read_yaml(const source::SourceMap& sources, source::FileId file,
                                            diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::evidence
