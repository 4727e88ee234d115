// Made records through simdjson: touched only, or read into the struct of by_hand.hpp. One thread.
#pragma once

#include <cstdint>
#include <functional>
#include <string>

#include "by_hand.hpp"

namespace plumbrule::bench {

/// What came out of touching every value; it is printed, so that no reading can be left out by the compiler.
struct Touched {
  std::uint64_t records = 0;
  std::uint64_t texts = 0;  // bytes of texts
  double sum = 0;           // of all numbers
};

/// Both read every key, number and text of every record; they differ in the interface of the library. They throw
/// what simdjson throws.
[[nodiscard]] Touched touch_on_demand(const std::string& path);
[[nodiscard]] Touched touch_dom(const std::string& path);

/// Reads every record and gives it to `use`.
void read_mixes(const std::string& path, const std::function<void(const Mix&)>& use);

/// The same, judged while reading.
[[nodiscard]] Counts judge_all(const std::string& path);

}  // namespace plumbrule::bench
