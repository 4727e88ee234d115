#pragma once
// A submittal written in another form: the values stay as they were written, comments and layout do not.

#include <optional>
#include <string>

#include "judge/evidence/document.hpp"

namespace plumbrule::evidence {

/// YAML and JSON that read_yaml and read_json read as the same tree, apart from places.
[[nodiscard]] std::string to_yaml(const Node& tree);
[[nodiscard]] std::string to_json(const Node& tree);

/// A sheet (CSV) of one row, whose submittal is the same tree apart from places and the order of names. Nothing, and a
/// diagnostic with its place, for what headings cannot carry: empty values, lists and maps, texts with line breaks, a
/// condition whose value holds a semicolon, names that no submittal has.
[[nodiscard]] std::optional<std::string> to_sheet(const Node& submittal, diagnose::Diagnostics& diagnostics);

/// Whether two trees are the same apart from places and the order of names.
[[nodiscard]] bool same_values(const Node& one, const Node& other);

}  // namespace plumbrule::evidence
