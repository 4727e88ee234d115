#pragma once
// The specimens of two results that are the same test. Internal to this folder.

#include "apply/followup/noted.hpp"

namespace plumbrule::followup {

class SpecimenComparer {
 public:
  explicit SpecimenComparer(Comparison& both) : both_(both), values_(both), noted_(both) {}

  void compare(const Pair& pair, Differences& out);

 private:
  Comparison& both_;
  ValueComparer values_;
  NotedComparer noted_;

  // What differs in the readings of one specimen, in Comparison::out.values.
  struct Readings {
    std::vector<std::size_t> altered, converted;
    bool unchanged = true;
  };
  void compare_pair(const Pair& pair, const SpecimenPair& specimen, Differences& out);
  std::string compare_labels(const Pair& pair, const SpecimenPair& specimen);
  Readings compare_readings(const Pair& pair, const SpecimenPair& specimen, const std::string& name);
  void worked_out(const Pair& pair, const SpecimenPair& specimen, const std::string& name);
};

/// Of its own.
[[nodiscard]] bool has_readings(const Specimen& specimen);

}  // namespace plumbrule::followup
