// Made records of mix trials, for measuring `sweep`: INVENTED DATA, drawn around usual values so that a few of the
// limits of ../forty.plumb are missed now and then. No laboratory measured any of it.
//
// A record is a flat JSON object on one line, some 780 bytes long: the mix, its traffic class and twenty values under
// headings with units. About 1 % of the values are missing, half of them as null and half left out; one class in 200
// is left out. Record number n of a seed depends on the seed and n alone, and only whole numbers are used: the same
// bytes on every machine, and a shorter archive is the beginning of a longer one.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace plumbrule::bench {

/// Random numbers by steps of SplitMix64 (Steele, Lea and Flood 2014; constants from memory, verify).
class Draws {
 public:
  explicit Draws(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next();
  /// A whole number from 0 to below - 1; `below` is above zero.
  std::uint64_t below(std::uint64_t below) { return next() % below; }

 private:
  std::uint64_t state_;
};

/// How a value is drawn: the sum of four even draws about a centre, at most 2 widths away from it. All four numbers are
/// in units of the last decimal.
struct Value {
  std::string_view heading;
  int decimals;
  std::int64_t centre;
  std::int64_t heavy_centre;  // for heavy traffic, for which a mix is designed with more care
  std::int64_t width;
  std::int64_t greatest;  // a percentage has one
};

inline constexpr std::size_t value_count = 20;
extern const std::array<Value, value_count> values;

/// The draws for one record of one seed.
[[nodiscard]] Draws draws_for(std::uint64_t seed, std::uint64_t number);

/// Record `number`, counted from 1, without a line break.
[[nodiscard]] std::string make_record(std::uint64_t seed, std::uint64_t number);

}  // namespace plumbrule::bench
