#include "record_maker.hpp"

#include <algorithm>

namespace plumbrule::bench {

// Centres and widths: invented. In each row the limits of forty.plumb lie some 1.2 to 1.4 widths from a centre.
// clang-format off
const std::array<Value, value_count> values{{
    {"abrasion_loss; soak 1 h (g/m2)",                  1, 4000, 3000, 1000, 99999},
    {"abrasion_loss; soak 6 d (g/m2)",                  1, 6400, 4900, 1250, 99999},
    {"cohesion; cure 30 min (kg-cm)",                   1,  145,  158,   22,   260},
    {"cohesion; cure 60 min (kg-cm)",                   1,  225,  230,   24,   300},
    {"sand_adhesion (g/m2)",                            1, 4250, 4150,   700, 99999},
    {"lateral_displacement; rolling 1000 cycles (%)",   2,  320,  270,  135,  9999},
    {"compacted_specific_gravity; rolling 1000 cycles", 3, 1950, 1955,  112,  2400},
    {"mix_time; temperature 25 degC (s)",               1, 2050, 2150,  640,  9999},
    {"wet_stripping (%)",                               1,  950,  978,   40,  1000},
    {"sand_equivalent",                                 1,  690,  735,   70,  1000},
    {"passing; sieve No. 4 (%)",                        1,  800,  790,   78,  1000},
    {"passing; sieve No. 16 (%)",                       1,  390,  385,   84,  1000},
    {"passing; sieve No. 50 (%)",                       1,  185,  183,   52,  1000},
    {"passing; sieve No. 200 (%)",                      1,  100,   98,   41,  1000},
    {"soundness_magnesium (%)",                         1,  165,  130,   60,  1000},
    {"los_angeles_abrasion (%)",                        1,  250,  205,   75,  1000},
    {"emulsion_residue (% of emulsion)",                1,  632,  648,   27,  1000},
    {"residue_penetration (dmm)",                       1,  650,  620,  190,  9999},
    {"residual_binder (% of dry_aggregate)",            2,  775,  770,   98,  9999},
    {"mineral_filler (% of dry_aggregate)",             2,  175,  180,   97,  9999},
}};
// clang-format on

std::uint64_t Draws::next() {
  state_ += 0x9E3779B97F4A7C15U;
  std::uint64_t mixed = state_;
  mixed = (mixed ^ (mixed >> 30U)) * 0xBF58476D1CE4E5B9U;
  mixed = (mixed ^ (mixed >> 27U)) * 0x94D049BB133111EBU;
  return mixed ^ (mixed >> 31U);
}

Draws draws_for(std::uint64_t seed, std::uint64_t number) {
  Draws start(seed);
  return Draws(start.next() ^ (number * 0xD1342543DE82EF95U));
}

namespace {

// A number of `decimals` decimals, given in units of the last one.
void append_number(std::string& line, std::int64_t scaled, int decimals) {
  const std::string digits = std::to_string(scaled);
  const auto places = static_cast<std::size_t>(decimals);
  const std::string padded = std::string(digits.size() > places ? 0 : places + 1 - digits.size(), '0') + digits;
  line.append(padded, 0, padded.size() - places).append(1, '.').append(padded, padded.size() - places);
}

std::int64_t drawn(const Value& value, bool heavy, Draws& draws) {
  std::uint64_t bits = draws.next();
  std::int64_t sum = (heavy ? value.heavy_centre : value.centre) - 2 * value.width;
  for (int part = 0; part < 4; ++part, bits >>= 16U) {
    sum += static_cast<std::int64_t>(bits & 0xFFFFU) * (value.width + 1) / 0x10000;
  }
  return std::clamp<std::int64_t>(sum, 5, value.greatest);  // no property here is zero or below
}

}  // namespace

std::string make_record(std::uint64_t seed, std::uint64_t number) {
  Draws draws = draws_for(seed, number);
  const std::string digits = std::to_string(number);
  std::string line = R"({"mix":"M-)" + std::string(digits.size() < 7 ? 7 - digits.size() : 0, '0') + digits + '"';
  static constexpr std::array<std::string_view, 3> classes{"light", "medium", "heavy"};
  const std::string_view traffic = classes.at(draws.below(classes.size()));
  if (draws.below(200) != 0) {
    line.append(R"(,"classes; traffic":")").append(traffic).append(1, '"');
  }
  for (const Value& value : values) {
    const std::int64_t scaled = drawn(value, traffic == "heavy", draws);
    const std::uint64_t lot = draws.below(200);
    if (lot == 0) {
      continue;
    }
    line.append(",\"").append(value.heading).append("\":");
    if (lot == 1) {
      line.append("null");
    } else {
      append_number(line, scaled, value.decimals);
    }
  }
  return line.append(1, '}');
}

}  // namespace plumbrule::bench
