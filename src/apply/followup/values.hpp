#pragma once
// Two values of the same thing. Internal to this folder.

#include "apply/followup/comparison.hpp"

namespace plumbrule::followup {

enum class Difference : std::uint8_t { none, converted, other };

/// Records each difference among the changed values.
class ValueComparer {
 public:
  explicit ValueComparer(Comparison& both) : both_(both) {}

  Difference value(const std::string& of, const std::string& what, const Value& from, const Value& to,
                   const check::Type& type);
  void day(const Pair& pair, const std::string& what, const evidence::Day& from, const evidence::Day& to);
  void note(const Pair& pair, const std::string& what, const evidence::Note& from, const evidence::Note& to);
  /// After less before, in words. In the unit of both if they are written in one, else in the declared one.
  [[nodiscard]] std::string apart(const Value& from, const Value& to, const check::Type& type) const;

 private:
  Comparison& both_;
};

}  // namespace plumbrule::followup
