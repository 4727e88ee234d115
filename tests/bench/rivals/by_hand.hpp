// The forty limits of ../forty.plumb as a programmer would write them by hand: comparisons of doubles in a struct, with
// the thresholds of limits.tsv. No units, no rounding, no reasons, no places: the floor of deciding.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>

namespace plumbrule::bench {

enum class Traffic : std::uint8_t { light, medium, heavy, missing };

// clang-format off
/// The values in the order in which a made record has them.
enum Slot : std::size_t {
  loss_1h, loss_6d, cohesion_30, cohesion_60, sand, lateral, gravity, mix_time, stripping, equivalent,
  no_4, no_16, no_50, no_200, soundness, los_angeles, residue, penetration, binder, filler, slot_count
};
// clang-format on

struct Mix {
  std::array<double, slot_count> values;  // not a number: missing
  Traffic traffic = Traffic::missing;
};

struct Counts {
  std::uint64_t records = 0;
  std::uint64_t complying = 0;
  std::array<std::uint64_t, 40> failed{};
  std::array<std::uint64_t, 40> not_shown{};
};

/// Judges one mix by all forty limits and adds to the counts.
void judge(const Mix& mix, Counts& counts);

}  // namespace plumbrule::bench
