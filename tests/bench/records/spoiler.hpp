// Spoiled records: about one line in a hundred of a made archive, in one of ten ways that archives are spoiled in.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace plumbrule::bench {

struct Spoiled {
  std::string_view kind;  // one word, for the list of spoiled lines
  std::string line;
};

/// Record `number` of the seed, spoiled, or nothing if this one is left whole. None of the ways adds or takes a line.
[[nodiscard]] std::optional<Spoiled> spoil(std::uint64_t seed, std::uint64_t number, const std::string& line);

}  // namespace plumbrule::bench
