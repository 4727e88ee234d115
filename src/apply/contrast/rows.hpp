#pragma once
// The rows of an envelope and their ends. Internal to this folder.

#include "apply/contrast/scope.hpp"

namespace plumbrule::contrast {

class RowBuilder {
 public:
  explicit RowBuilder(EnvelopeScope& scope) : scope_(scope) {}

  /// A demand with a single way to comply; what cannot be held against the others of its row is incomparable.
  void add(std::size_t at, const Demand& demand);

 private:
  EnvelopeScope& scope_;

  Row& row_for(std::size_t at, const Demand& demand);
  void allow(Row& row, std::size_t at, const Demand& demand) const;
  void tighten(Row& row, std::size_t at, const Demand& demand) const;
  void tighten(const Row& row, std::optional<Bound>& end, const std::optional<check::End>& asked, bool upper,
               bool interval, std::size_t at, const Demand& demand) const;
};

/// An end from the job mix loses less than half a place by rounding.
void mark_rounded(const EnvelopeScope& scope, Row& row);
/// An exception stands in a row of its own, for mixes of its own.
void mark_beside(const EnvelopeScope& scope, Row& row);

[[nodiscard]] std::set<std::string> in_both(const std::set<std::string>& left, const std::set<std::string>& right);

}  // namespace plumbrule::contrast
