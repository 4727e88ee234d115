#pragma once
// A text read as a submittal, for the tests of read_yaml.
#include <catch2/catch.hpp>
#include <optional>
#include <string>

#include "judge/evidence/document.hpp"

namespace plumbrule::evidence {

struct Read {
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  std::optional<Node> tree;

  explicit Read(std::string text) {
    const auto file = sources.add("mix.yaml", std::move(text));
    tree = read_yaml(sources, file, diagnostics);
  }
  [[nodiscard]] std::string_view at(const source::Span& span) const { return sources.text(span); }
  [[nodiscard]] const Node& value(std::string_view key) const {
    REQUIRE(tree.has_value());
    const Node* found = tree->find(key);
    REQUIRE(found != nullptr);
    return *found;
  }
};

inline std::string repeated(std::string_view part, std::size_t times) {
  std::string out;
  out.reserve(part.size() * times);
  for (std::size_t at = 0; at < times; ++at) {
    out += part;
  }
  return out;
}

struct Refusal {
  std::string text;
  diagnose::Code code;
  std::string underlined;
  std::string place;
};

// Wording rules of diagnostic.hpp, and a place inside the text.
inline void check_refused(const Read& read, diagnose::Code code) {
  CHECK_FALSE(read.tree.has_value());
  REQUIRE_FALSE(read.diagnostics.empty());
  for (const auto& one : read.diagnostics.all()) {
    CHECK(diagnose::text(one.code) == diagnose::text(code));
    CHECK(one.message.starts_with("found "));
    CHECK_FALSE(one.message.ends_with("."));
    CHECK_FALSE(one.help.empty());
    CHECK_FALSE(one.help.ends_with("."));
    CHECK(one.message.size() < 200);
    CHECK(one.primary.span.begin <= one.primary.span.end);
    CHECK(one.primary.span.end <= read.sources.text(one.primary.span.file).size());
  }
}

inline void check(const Refusal& one) {
  INFO(one.text);
  const Read read(one.text);
  check_refused(read, one.code);
  const auto& first = read.diagnostics.all().front();
  INFO(first.message);
  CHECK(read.at(first.primary.span) == one.underlined);
  CHECK(read.sources.place_text(first.primary.span) == "mix.yaml:" + one.place);
}

}  // namespace plumbrule::evidence
