#pragma once
// What is worth a look of one test. Wording: what differs, and what to compare; never whose fault it may be. Internal
// to this folder.

#include "apply/followup/comparison.hpp"

namespace plumbrule::followup {

class TestLooks {
 public:
  explicit TestLooks(Comparison& both) : both_(both) {}

  void look(const Pair& pair, const Differences& found);

 private:
  /// File and place.
  using Position = std::pair<std::uint32_t, std::size_t>;

  Comparison& both_;
  std::set<std::pair<Position, Position>> met_;  // values of which a look was drawn: one that is shared is met often

  void moved(const Pair& pair);
  void altered(const Pair& pair, const Differences& found);
  [[nodiscard]] std::vector<std::size_t> newly_met(const Differences& found);
  void too_coarse(const Pair& pair, const Differences& found);
  void readings_gone(const Pair& pair, const Differences& found);
  void reported_alone(const Pair& pair, const Differences& found);
  void specimen_gone(const Pair& pair, const Differences& found);
  void specimen_added(const Pair& pair, const Differences& found);
};

/// Failing results that are not submitted any more.
void look_at_gone(Comparison& both);

}  // namespace plumbrule::followup
