#pragma once
// What is counted over an archive. Only sums of whole numbers, so that neither the order of the records nor the number
// of threads matters, and the counts of parts of an archive add up to those of the whole.

#include <array>
#include <cstdint>
#include <vector>

#include "apply/sweep/judgement.hpp"

namespace plumbrule::sweep {

/// How many comparisons had each margin, by thousandths of the limit.
class Margins {
 public:
  void add(std::int32_t margin, std::uint64_t times = 1);
  void add(const Margins& other);
  [[nodiscard]] std::uint64_t count() const { return count_; }
  [[nodiscard]] std::uint64_t at(std::int32_t margin) const;
  /// The margin below or at which `permille` thousandths of them lie: of n in order the one with number
  /// ceil(n * permille / 1000), at least the first. Precondition: count() > 0.
  [[nodiscard]] std::int32_t quantile(std::uint32_t permille) const;

 private:
  std::vector<std::uint64_t> counts_;  // empty until something is added
  std::uint64_t count_ = 0;
};

struct ClauseTally {
  std::array<std::uint64_t, 4> verdicts{};  // in the order of evaluate::Verdict
  Margins margins;
};

struct SpecificationTally {
  std::array<std::uint64_t, 4> outcomes{};  // in the order of evaluate::Outcome
  std::vector<ClauseTally> clauses;
};

struct Tally {
  std::uint64_t records = 0;     // all but blank lines
  std::uint64_t unreadable = 0;  // of these: no submittal at all, judged by nothing
  std::uint64_t faulty = 0;      // of these: judged, but with errors; never complies as a whole
  std::uint64_t blank = 0;       // lines with nothing on them
  std::vector<SpecificationTally> specifications;
};

void add(SpecificationTally& to, const Judgement& judgement);
/// Precondition: the same specifications in the same order.
void add(Tally& to, const Tally& other);

}  // namespace plumbrule::sweep
