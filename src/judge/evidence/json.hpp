#pragma once
// A submittal written in JSON (RFC 8259), as the same tree that YAML gives. Nothing of simdjson leaves json.cpp.

#include <memory>
#include <optional>
#include <string_view>

#include "judge/evidence/document.hpp"

namespace plumbrule::evidence {

/// Reads one JSON document. Refused with a diagnostic (and nothing returned): what read_yaml refuses of a text and of a
/// tree, and whatever is not JSON: comments, single quotes, names without quotes, commas with nothing behind them,
/// numbers such as 007, .5 or +5, a second document. Never throws.
///
/// A text is a scalar without its quotes; a number is a scalar in the digits that are written ("450.20"); `true` and
/// `false` are scalars; `null` is an empty value. The span of a text includes its quotes, that of a list or map its
/// brackets.
[[nodiscard]] std::optional<Node> read_json(const source::SourceMap& sources, source::FileId file,
                                            diagnose::Diagnostics& diagnostics);

/// The same for one record among many: keeps the memory of the record before. Not for use by two threads at once.
class JsonReader {
 public:
  JsonReader();
  ~JsonReader();
  JsonReader(JsonReader&&) noexcept;
  JsonReader& operator=(JsonReader&&) noexcept;
  JsonReader(const JsonReader&) = delete;
  JsonReader& operator=(const JsonReader&) = delete;

  /// `record` is one line of a file, say, without its line end, and stands in it behind `offset` bytes.
  [[nodiscard]] std::optional<Node> read(std::string_view record, source::FileId file, std::uint32_t offset,
                                         diagnose::Diagnostics& diagnostics);

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace plumbrule::evidence
