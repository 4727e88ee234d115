#pragma once
// "Did you mean": the nearest known word within a capped edit distance.

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace plumbrule::diagnose {

/// The candidate with the least edit distance (insert, delete, replace, swap of neighbours), if that distance is at
/// most a third of the longer length (at least 1) and leaves something of the word, be it in the other case (`G` for
/// `g`); on a tie the one that begins alike for longer, then the first. Words longer than 64 bytes get none.
[[nodiscard]] std::optional<std::string_view> nearest(std::string_view word, std::span<const std::string_view> known);

/// "did you mean `soak`?" or, without a near one, "known: `a`, `b`, ..." (at most eight), or empty if none is known.
[[nodiscard]] std::string suggestion(std::string_view word, std::span<const std::string_view> known);

}  // namespace plumbrule::diagnose
