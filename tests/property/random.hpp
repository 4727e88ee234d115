#pragma once
// Random choices that are the same on every machine: no distribution of the standard library is used.

#include <cstdint>
#include <random>
#include <string>
#include <string_view>
#include <vector>

namespace plumbrule::property {

class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}
  /// From 0 to count - 1; precondition: count > 0.
  [[nodiscard]] std::size_t below(std::size_t count) { return static_cast<std::size_t>(engine_() % count); }
  /// True so many times out of a hundred.
  [[nodiscard]] bool chance(unsigned percent) { return below(100) < percent; }
  template <typename Range>
  [[nodiscard]] const auto& pick(const Range& range) {
    return range[below(std::size(range))];
  }
  [[nodiscard]] std::uint64_t seed() { return engine_(); }

 private:
  std::mt19937_64 engine_;
};

using Texts = std::vector<std::string>;

}  // namespace plumbrule::property
