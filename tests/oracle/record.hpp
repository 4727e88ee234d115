#pragma once
// The submittal, read naively: names stay texts, conditions stay in a map. What cannot be used is kept as unusable.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "interval.hpp"
#include "judge/evidence/document.hpp"
#include "rulebook.hpp"

namespace plumbrule::oracle {

/// One written value.
struct Stated {
  enum class Kind : std::uint8_t { missing, unusable, quantity, word } kind = Kind::missing;
  Interval amount;
  quantity::UnitId unit = 0;
  std::string word;
  [[nodiscard]] bool usable() const { return kind == Kind::quantity || kind == Kind::word; }
};

using Conditions = std::map<std::string, Stated>;

struct Sample {
  std::map<std::string, Stated> readings;
  Stated direct;
};

/// Where a trial stands to the job mix, by its `at`.
enum class Standing : std::uint8_t { at_job_mix, elsewhere, unknown };

struct Trial {
  std::string measure;
  Conditions conditions;
  std::vector<Sample> samples;
  bool samples_unusable = false;  // `specimens` is there, but is no list of them
  Stated reported;
  std::uint32_t replicates = 0;
  std::optional<std::size_t> series;
  std::string series_condition;
  Standing standing = Standing::at_job_mix;
  bool declared = false;  // the job mix says it
  std::optional<std::int32_t> tested;
  std::optional<std::string> lot;
};

struct Record {
  std::map<std::string, std::string> classes;
  std::vector<Trial> trials;  // those that the job mix declares first
  std::optional<std::int32_t> date;
  bool readable = false;
};

[[nodiscard]] Record read_record(const Rulebook& book, Units& units, const evidence::Node& document);

}  // namespace plumbrule::oracle
