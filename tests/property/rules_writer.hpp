#pragma once
// Whole random sets of rules as text: a vocabulary, a specification, and perhaps an amendment.

#include <span>

#include "catalog.hpp"

namespace plumbrule::property {

struct RuleTexts {
  std::string vocabulary;            // mix.plumb
  std::string head;                  // of the specification, with its terms and gradings
  std::vector<std::string> clauses;  // its requirements, in order
  std::string amendment;             // amend.plumb; empty: none
  Catalog catalog;
  [[nodiscard]] std::string specification() const;  // spec.plumb
};

/// The same seeds give the same rules on every machine. A clause depends on its own seed and on the vocabulary, not on
/// the other clauses (but for the numbers that it takes over from them).
[[nodiscard]] RuleTexts write_rules(std::uint64_t seed, std::span<const std::uint64_t> clause_seeds);

}  // namespace plumbrule::property
