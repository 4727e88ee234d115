#pragma once
// Readings that stand again under another date of the test. Internal to this folder.

#include <map>

#include "apply/followup/comparison.hpp"

namespace plumbrule::followup {

class RepeatedReadings {
 public:
  explicit RepeatedReadings(Comparison& both) : both_(both) {}

  void look(const Pair& pair, const Differences& found);
  /// When all pairs were looked at: rows have few numbers each, so a series is judged as a whole.
  void look_at_series();

 private:
  Comparison& both_;
  struct Rows {
    std::size_t count = 0, same = 0;
    Pair first;
  };
  std::map<std::uint32_t, Rows> series_;  // under another date, by the number of the later series

  void input_repeated(const Pair& pair, const Differences& found);
  [[nodiscard]] bool same_input(const Pair& pair, std::size_t reading) const;
};

}  // namespace plumbrule::followup
