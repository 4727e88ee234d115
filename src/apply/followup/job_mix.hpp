#pragma once
// The job mix, and whether the tests at it are those of before. Internal to this folder.

#include <map>

#include "apply/followup/comparison.hpp"

namespace plumbrule::followup {

class JobMixFollower {
 public:
  explicit JobMixFollower(Comparison& both) : both_(both) {}

  /// Values that the job mix declares anew, and the tests at the job mix, a series as one.
  void count(const Pair& pair, const Differences& found);
  /// When all are counted.
  void look() const;
  [[nodiscard]] bool mostly_kept() const;
  [[nodiscard]] std::string kept_text() const;

 private:
  Comparison& both_;
  struct Test {
    bool kept = true;
    check::MeasureId measure = check::none;
  };
  std::map<std::pair<bool, std::uint32_t>, Test> tests_;  // by being a series, and its number
  std::vector<std::pair<check::MeasureId, ValueChange>> redeclared_;

  [[nodiscard]] bool left_behind(const Result& result) const;
  [[nodiscard]] std::size_t kept() const;
};

}  // namespace plumbrule::followup
