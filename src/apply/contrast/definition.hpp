#pragma once
// What a measure is, as texts that can be held against those of another vocabulary: a limit of the same number says
// something else if its measure is computed otherwise.

#include <map>
#include <string>
#include <vector>

#include "language/check/rules.hpp"

namespace plumbrule::contrast {

/// What stands in one clause of a definition. A table is rows, other parts are one text.
struct DefinitionPart {
  std::map<std::string, std::string> rows;  // of a table by the words of a category
  std::string text;                         // of all else; of a table its unit and the kind of its key
  bool wording = false;                     // no verdict and no finding of the audit hangs on it
  friend bool operator==(const DefinitionPart&, const DefinitionPart&) = default;
};

/// By name: "formula", "table cohesion_factor", "condition cure" ... With all that the measure uses: its tables, the
/// words of its categories and its conditions. Numbers and units as written but for zeros at the end.
using Definition = std::map<std::string, DefinitionPart>;
[[nodiscard]] Definition definition_of(const check::Rules& rules, const check::Measure& measure);

/// Where two differ: the names of the parts, and what each says; of tables the rows that differ.
struct Redefined {
  std::vector<std::string> parts;  // "table cohesion_factor"
  std::string before, after;       // "table cohesion_factor: C-100 32.9"
  bool wording = true;             // nothing but wording
  [[nodiscard]] bool any() const { return !parts.empty(); }
};
[[nodiscard]] Redefined redefined(const Definition& before, const Definition& after);

}  // namespace plumbrule::contrast
