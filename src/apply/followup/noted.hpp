#pragma once
// What is noted beside the values of a test: dates, laboratory, circumstances. Internal to this folder.

#include "apply/followup/values.hpp"

namespace plumbrule::followup {

class NotedComparer {
 public:
  explicit NotedComparer(Comparison& both) : both_(both), values_(both) {}

  void compare(const Pair& pair, Differences& out);
  /// `whose`: "specimen 2, ", or empty for those that all specimens share.
  void circumstances(const Pair& pair, const std::string& of, const std::string& whose,
                     const evidence::Circumstances& from, const evidence::Circumstances& to, Differences& out);

 private:
  Comparison& both_;
  ValueComparer values_;

  void replicates(const Pair& pair, Differences& out);
  void clocks(const Pair& pair, const std::string& of, const std::string& whose, const evidence::Circumstances& from,
              const evidence::Circumstances& to, Differences& out);
};

}  // namespace plumbrule::followup
