#pragma once
// Materials: those that the submittals list, and those that their tests say they were made of. Internal to this folder.

#include "apply/followup/job_mix.hpp"
#include "apply/followup/values.hpp"

namespace plumbrule::followup {

class MaterialsFollower {
 public:
  explicit MaterialsFollower(Comparison& both) : both_(both), values_(both) {}

  void compare_listed();
  void compare_used(const Pair& pair);
  /// Of the list, if most tests stay as with the job mix; and of the tests that say what they were made of.
  void look(const JobMixFollower& job_mix) const;

 private:
  Comparison& both_;
  ValueComparer values_;
  std::vector<ValueChange> listed_;  // that say of a material what is not what was said before
  struct Used {
    ValueChange change;
    Pair pair;
  };
  std::vector<Used> used_;  // tests that were not repeated, of another material than before

  void compare_material(const evidence::Material& from, const evidence::Material& to);
};

}  // namespace plumbrule::followup
