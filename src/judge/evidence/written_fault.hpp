#pragma once
// Why a text is no quantity, and how to mend it. Inside the evidence stage only.

#include <cstddef>
#include <optional>
#include <string_view>

#include "judge/evidence/written.hpp"

namespace plumbrule::evidence {

/// Without blanks at either end; no-break and thin blanks, which word processors put before a unit, count as blanks.
[[nodiscard]] std::string_view trimmed(std::string_view text);

[[nodiscard]] bool digit_at(std::string_view text, std::size_t at);

/// For a text in which no number stands where one should: `rest` is `whole` behind the words of a bound, if any.
[[nodiscard]] Unreadable no_number(std::string_view whole, std::string_view rest);

/// What is wrong with `number`, the digits read from `whole`, and the `rest` behind them; nothing if all is well so
/// far.
[[nodiscard]] std::optional<Unreadable> fault_behind_number(std::string_view whole, std::string_view number,
                                                            std::string_view rest);

}  // namespace plumbrule::evidence
