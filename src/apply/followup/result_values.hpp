#pragma once
// Two results that are the same test: all that differs between them. Internal to this folder.

#include "apply/followup/specimen_values.hpp"

namespace plumbrule::followup {

class ResultComparer {
 public:
  explicit ResultComparer(Comparison& both) : both_(both), values_(both), specimens_(both), noted_(both) {}

  Differences compare(const Pair& pair);

 private:
  Comparison& both_;
  ValueComparer values_;
  SpecimenComparer specimens_;
  NotedComparer noted_;

  bool restyled(const Pair& pair, Differences& out);
  void reported(const Pair& pair, Differences& out);
};

}  // namespace plumbrule::followup
