#include "apply/sweep/tally.hpp"

#include <algorithm>

namespace plumbrule::sweep {
namespace {

constexpr std::size_t bins = 2 * static_cast<std::size_t>(widest_margin) + 1;

std::size_t bin(std::int32_t margin) { return static_cast<std::size_t>(std::int64_t{margin} + widest_margin); }

}  // namespace

void Margins::add(std::int32_t margin, std::uint64_t times) {
  if (counts_.empty()) {
    counts_.resize(bins);
  }
  counts_[bin(margin)] += times;
  count_ += times;
}

void Margins::add(const Margins& other) {
  for (std::size_t at = 0; at < other.counts_.size(); ++at) {
    if (other.counts_[at] > 0) {
      add(static_cast<std::int32_t>(at) - widest_margin, other.counts_[at]);
    }
  }
}

std::uint64_t Margins::at(std::int32_t margin) const { return counts_.empty() ? 0 : counts_.at(bin(margin)); }

std::int32_t Margins::quantile(std::uint32_t permille) const {
  const std::uint64_t wanted = std::max<std::uint64_t>(1, (count_ * permille + 999) / 1000);
  std::uint64_t passed = 0;
  for (std::size_t at = 0; at < counts_.size(); ++at) {
    passed += counts_[at];
    if (passed >= wanted) {
      return static_cast<std::int32_t>(at) - widest_margin;
    }
  }
  return widest_margin;
}

void add(SpecificationTally& to, const Judgement& judgement) {
  to.clauses.resize(judgement.verdicts.size());
  ++to.outcomes.at(static_cast<std::size_t>(judgement.outcome));
  for (std::size_t at = 0; at < judgement.verdicts.size(); ++at) {
    ClauseTally& clause = to.clauses[at];
    ++clause.verdicts[static_cast<std::size_t>(judgement.verdicts[at])];
    if (judgement.margins[at] != no_margin) {
      clause.margins.add(judgement.margins[at]);
    }
  }
}

void add(Tally& to, const Tally& other) {
  to.records += other.records;
  to.unreadable += other.unreadable;
  to.faulty += other.faulty;
  to.blank += other.blank;
  to.specifications.resize(other.specifications.size());
  for (std::size_t at = 0; at < other.specifications.size(); ++at) {
    SpecificationTally& own = to.specifications[at];
    const SpecificationTally& more = other.specifications[at];
    own.clauses.resize(std::max(own.clauses.size(), more.clauses.size()));
    for (std::size_t outcome = 0; outcome < own.outcomes.size(); ++outcome) {
      own.outcomes.at(outcome) += more.outcomes.at(outcome);
    }
    for (std::size_t clause = 0; clause < more.clauses.size(); ++clause) {
      for (std::size_t verdict = 0; verdict < 4; ++verdict) {
        own.clauses[clause].verdicts.at(verdict) += more.clauses[clause].verdicts.at(verdict);
      }
      own.clauses[clause].margins.add(more.clauses[clause].margins);
    }
  }
}

}  // namespace plumbrule::sweep
