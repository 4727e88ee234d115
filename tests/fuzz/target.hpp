#pragma once
// What all fuzz targets share: bytes become a text in a source map; rules come with a small vocabulary in memory, so
// that no target touches the disk.

#include <cstddef>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "base/diagnose/encoding.hpp"
#include "base/diagnose/render.hpp"
#include "language/check/check.hpp"

namespace plumbrule::fuzz {

inline std::string text_of(const std::uint8_t* data, std::size_t size) {
  return std::string(reinterpret_cast<const char*>(data), size);  // NOLINT: libFuzzer hands bytes
}

/// A small vocabulary, in memory.
const char* vocabulary();
/// A specification that uses it, with a clause of nearly every kind.
const char* specification();

/// Reads and parses one text; nothing if it is not text at all.
inline std::vector<syntax::RuleFile> parsed(source::SourceMap& sources, std::string text,
                                            diagnose::Diagnostics& diagnostics) {
  std::vector<syntax::RuleFile> out;
  const source::FileId file = sources.add("fuzz.plumb", std::move(text));
  if (diagnose::check_encoding(sources, file, diagnostics)) {
    out.push_back(syntax::parse(sources, file, diagnostics));
  }
  return out;
}

/// Every diagnostic must be printable in every form.
inline void print_all(const diagnose::Diagnostics& diagnostics, const source::SourceMap& sources) {
  for (const diagnose::Diagnostic& one : diagnostics.all()) {
    (void)diagnose::render_text(one, sources, true);
  }
  (void)diagnose::render_json(diagnostics, sources)
      .dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
  (void)diagnose::render_sarif(diagnostics, sources, "0");
}

}  // namespace plumbrule::fuzz
