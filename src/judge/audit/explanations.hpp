#pragma once
// Why a reported value does not follow from its readings: known slips that would give exactly the reported value.
// Internal to this folder.

#include <functional>
#include <optional>
#include <string>

#include "judge/audit/audit.hpp"

namespace plumbrule::audit {

using quantity::Decimal;

/// A reported value that is not the computed one; both in the unit of the report. `near` says whether a value would be
/// reported as it is.
struct Mismatch {
  const evidence::Result& result;
  Decimal computed, reported;
  std::function<bool(const Decimal&)> near;
};

struct Slip {
  diagnose::Code code{};
  std::string text;  // "the factor of `N-50` in place of `C-100` gives the reported value"
};

/// The most specific slip that explains the value; nothing: it stays unexplained.
[[nodiscard]] std::optional<Slip> slip(const explain::Context& context, const Mismatch& mismatch);

/// x of 100 parts, taken of 100 + x or of 100 - x parts: whether that makes `near` true. For a percentage only.
[[nodiscard]] std::optional<std::string> other_basis(const Decimal& percent,
                                                     const std::function<bool(const Decimal&)>& near);

}  // namespace plumbrule::audit
