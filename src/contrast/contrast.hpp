#pragma once
// Two specifications against each other, limit by limit: two editions, a specification with and without an amendment,
// or two agencies. Measures are matched by their names in the vocabulary, conditions by value, amounts in one unit.

#include <cstdint>
#include <string>
#include <vector>

#include "contrast/demand.hpp"

namespace plumbrule::contrast {

/// What became of a demand. Of several the first that holds: a limit that is tightened and reworded is tightened.
/// `moved`: neither tighter nor looser on the whole (a range shifted, other words allowed). `conditions`: the limit
/// stands, but what is tested, for which classes, over how many specimens, how rounded or how grave, changed.
/// `reworded`: only texts (title, citation, reason, number of the clause) changed.
enum class Kind : std::uint8_t { tightened, relaxed, moved, added, withdrawn, conditions, reworded, same };

struct Change {
  Kind kind = Kind::same;
  const Demand* before = nullptr;    // none: added
  const Demand* after = nullptr;     // none: withdrawn
  std::vector<std::string> details;  // "the upper limit is 108 g/m2 lower (20.1 %)", one sentence each
};

/// The changes point into the two lists: it is moved, not copied.
struct Contrast {
  Contrast() = default;
  Contrast(const Contrast&) = delete;
  Contrast& operator=(const Contrast&) = delete;
  Contrast(Contrast&&) = default;
  Contrast& operator=(Contrast&&) = default;
  ~Contrast() = default;
  bool one_family = false;  // two states of one specification
  std::vector<Demand> before, after;
  std::vector<Change>
      changes;  // in the order of the specification before, what was added at its place in the one after
};

/// Pairs are sought in this order: same clause, subject and classes (only between editions of one specification), same
/// subject and classes, same clause and measure, same subject for classes that overlap. Each demand is in one change at
/// most. Exact: amounts are computed in decimals; percentages are rounded to 0.01.
[[nodiscard]] Contrast contrast(const check::Rules& before, const check::Rules& after);

/// "tightened", "relaxed", "added" ...; between two agencies "tighter", "looser", "only in the second" ...
[[nodiscard]] std::string_view kind_text(Kind kind, bool one_family);

}  // namespace plumbrule::contrast
