#pragma once
// What all parts of making an envelope draw on. Internal to this folder.

#include "apply/contrast/envelope.hpp"

namespace plumbrule::contrast {

struct EnvelopeScope {
  const std::vector<const check::Rules*>& rules;
  const Classes& chosen;
  Words words;
  Envelope& envelope;

  /// The unit of the limit; that of a row is the one of its first demand.
  [[nodiscard]] const quantity::Unit& unit(std::size_t at, const Demand& demand) const;
  [[nodiscard]] const quantity::Unit& unit_of(const Row& row) const { return unit(row.specification, *row.demand); }

  [[nodiscard]] Asked chosen_classes() const;
  /// The mixes of these classes that the demands of the row are for.
  [[nodiscard]] Mixes chosen_mixes(const Row& row) const;

  /// States once that the envelope does not hold something.
  void leave_out(std::size_t at, const Demand& demand, const std::string& what) const;
};

}  // namespace plumbrule::contrast
