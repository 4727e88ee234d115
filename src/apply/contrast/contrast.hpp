#pragma once
// Two specifications against each other, limit by limit: two editions, a specification with and without an amendment,
// or two agencies. Measures are matched by their names in the vocabulary, conditions by value, amounts in one unit.

#include <cstdint>
#include <string>
#include <vector>

#include "apply/contrast/demand.hpp"

namespace plumbrule::contrast {

/// What became of a demand for some mixes. `tightened` and `relaxed`: the number is, and all else stays as it was but
/// the words, the classes that must be stated, and a rounding that does not take it back. `moved`: neither tighter nor
/// looser on the whole (a range shifted, one end by its number and the other by its rounding, other words allowed).
/// `conditions`: what is tested, over how many specimens, in how many ways, how rounded, how grave or which class must
/// be stated changed, whatever became of the number. `reworded`: only texts (title, citation, reason, number of the
/// clause) changed.
enum class ChangeKind : std::uint8_t { tightened, relaxed, moved, added, withdrawn, conditions, reworded, same };

struct Change {
  ChangeKind kind = ChangeKind::same;
  const Demand* before = nullptr;    // none: added
  const Demand* after = nullptr;     // none: withdrawn
  std::vector<std::string> details;  // "the upper limit is 108 g/m2 lower (20.1 %)", one sentence each
  std::string who;                   // the mixes that it is about, in words; empty for all
  bool narrowed = false;             // these are fewer than the demands themselves are for
};

/// What differs beside the demands: in the head of a specification, in what a measure is that both demand, in the words
/// of a class that both ask about. `reworded`: no verdict and no finding of the audit hangs on it.
struct General {
  ChangeKind kind = ChangeKind::conditions;
  std::string what;           // "outliers", "measure cohesion", "words of class traffic"
  std::string before, after;  // "5 %"; "table cohesion_factor: C-100 32.9"
  std::string detail;         // "the measure `cohesion` is defined otherwise: table cohesion_factor", or empty
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
  std::vector<General> general;
};

/// Demands are held against each other for the mixes that both are for; for the others one stands alone. So a demand
/// may be in several changes, but for no mix in two. Where several could be paired: between editions those of one
/// clause first, then of like statistic, weight and classes. Exact: amounts are computed in decimals; percentages are
/// rounded to 0.01.
[[nodiscard]] Contrast contrast(const check::Rules& before, const check::Rules& after);

/// Whether more than texts differs: a limit, what is tested or how, or what is asked of the papers.
[[nodiscard]] bool differs(const Contrast& contrast);

/// "tightened", "relaxed", "added" ...; between two agencies "tighter", "looser", "only in the second" ...
[[nodiscard]] std::string_view kind_text(ChangeKind kind, bool one_family);

}  // namespace plumbrule::contrast
