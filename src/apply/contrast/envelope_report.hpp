#pragma once
// The whole of what `envelope` reports, and what must hold before specifications can be held against each other.

#include <span>
#include <string>
#include <vector>

#include "apply/contrast/envelope.hpp"
#include "judge/assess/assessment.hpp"
#include "language/library/origin.hpp"
#include "language/library/rule_set.hpp"

namespace plumbrule::contrast {

/// The rules, the envelope and the classes must outlive it.
struct EnvelopeReport {
  const std::vector<const check::Rules*>& specifications;
  const Envelope& envelope;
  const Classes& classes;
  library::Origin origin;
};

/// Limits exclude each other: fails. Something cannot be compared, or had to be left out: incomplete.
[[nodiscard]] assess::Upshot upshot(const EnvelopeReport& report);

/// The classes that were chosen, each written "category=word"; or why one is none, fit to print.
struct Chosen {
  Classes classes;
  std::string misfit;
};
/// Every category that some specification asks about has its words; what is chosen must be among them.
[[nodiscard]] Chosen choose_classes(std::span<const library::RuleSet> sets, const std::vector<std::string>& classes);

/// A name that two files declare unlike: what the specifications say of it cannot be held against each other. What a
/// specification declares itself is its own, unless a vocabulary of another one has the name. Empty if there is none.
[[nodiscard]] std::string unlike_names(const source::SourceMap& sources, std::span<const library::RuleSet> sets);

/// The names under which the specifications use their vocabularies.
[[nodiscard]] std::vector<std::string> vocabularies_of(const source::SourceMap& sources,
                                                       std::span<const library::RuleSet> sets);

}  // namespace plumbrule::contrast
