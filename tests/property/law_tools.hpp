#pragma once
// What the laws are stated over: a random set of rules and a random submittal, shrunk clause by clause and result by
// result, and the engine's verdicts on them.

#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "made_rules.hpp"
#include "submittal_maker.hpp"

namespace plumbrule::property {

/// Holds for many random cases; a failing one is shown as small as it gets.
#define LAW(description, ...) CHECK(rc::check(description, __VA_ARGS__))

/// Seeds of up to `most` parts. Parts are dropped while shrinking; a seed itself has nothing smaller.
[[nodiscard]] rc::Gen<std::vector<std::uint64_t>> seeds(int most);

struct Scene {
  std::unique_ptr<MadeRules> made;
  evidence::Node submittal;
};
/// Draws the rules and the submittal; discards rules that the checks refuse.
[[nodiscard]] Scene draw_scene(const Faults& faults);

using Verdicts = std::map<std::string, evaluate::Verdict>;
/// By clause number.
[[nodiscard]] Verdicts verdicts(const MadeRules& made, const evidence::Node& submittal);

/// A scalar somewhere in a submittal, with the key under which it or its list stands.
struct Scalar {
  std::string key;
  evidence::Node* node = nullptr;
};
[[nodiscard]] std::vector<Scalar> scalars(evidence::Node& submittal);

/// Where an entry may be left out.
struct Slot {
  evidence::Node* map = nullptr;
  std::size_t at = 0;
  std::string in;  // the key under which the map or its list stands
  [[nodiscard]] const std::string& key() const { return map->entries[at].key; }
};
[[nodiscard]] std::vector<Slot> slots(evidence::Node& submittal);

/// The submittal as text, and the rules with it, for the report of a failing law.
void show_scene(const Scene& scene, std::ostream& out);

}  // namespace plumbrule::property
