#pragma once
// Which mixes a demand is for, so that two demands are held against each other only where both apply.

#include <map>
#include <set>
#include <string>
#include <vector>

#include "language/check/rules.hpp"

namespace plumbrule::contrast {

/// The words of each category that is asked about; of a category that is not named, every word.
using Asked = std::map<std::string, std::set<std::string>>;
/// Mixes as parts that no mix is in twice; without any, no mix at all.
using Mixes = std::vector<Asked>;
/// All words of each category, in the order in which it declares them.
using Words = std::map<std::string, std::vector<std::string>>;

/// Of a category that several declare, the words of all.
[[nodiscard]] Words words_of(const std::vector<const check::Rules*>& specifications);

/// The mixes that are asked for, without those for which one of the exceptions holds.
[[nodiscard]] Mixes mixes_of(const Asked& asked, const std::vector<Asked>& exceptions, const Words& words);
[[nodiscard]] Mixes common(const Mixes& left, const Mixes& right, const Words& words);
/// Beyond 64 parts the rest is no longer taken away: more is left than should be, never less.
[[nodiscard]] Mixes without(const Mixes& left, const Mixes& right, const Words& words);

/// "traffic medium, heavy; course surface", parts joined by "or"; empty for all mixes.
[[nodiscard]] std::string in_words(const Mixes& mixes, const Words& words);

}  // namespace plumbrule::contrast
