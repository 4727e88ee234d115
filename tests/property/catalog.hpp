#pragma once
// What a generated set of rules speaks of, so that evidence for it can be made, close to its limits.

#include <map>
#include <optional>

#include "base/quantity/unit.hpp"
#include "random.hpp"

namespace plumbrule::property {

/// Units that measure the same thing.
struct Family {
  std::string name;
  Texts units;
};
[[nodiscard]] const std::vector<Family>& families();
[[nodiscard]] const Family& family(std::string_view name);

/// A number with its unit, written as a rule file writes it.
struct Written {
  std::string number, unit;
};

struct Category {
  std::string name;
  Texts words;
};

struct Condition {
  std::string name;
  std::string family;  // empty: sieves, or words
  std::string category;
  std::vector<Written> values;  // that clauses and results use
};

struct Reading {
  std::string name, family, unit, category;
};

/// The shapes of a formula that the maker of evidence knows how to aim at a limit.
enum class Shape : std::uint8_t { direct, difference, each_alike, free, passing };

struct Measure {
  std::string name;
  std::string family, unit, basis;  // a quantity; family empty: words or text
  std::string category;             // words
  bool text = false;
  Texts conditions;
  std::vector<Reading> readings;
  Shape shape = Shape::direct;
  std::string reported;    // the number of the reporting place, or empty
  std::string limit_unit;  // limits must be in this unit, so that a rounding place fits them; or empty
  [[nodiscard]] bool is_word() const { return !category.empty() || text; }
  [[nodiscard]] bool sieved() const;
};

/// What a demand asks for, so that results can answer it.
struct Use {
  std::string measure;
  std::vector<std::pair<std::string, Written>> conditions;
  std::size_t specimens = 1;
};

struct Catalog {
  std::vector<Category> categories;
  std::vector<Condition> conditions;
  std::vector<Measure> measures;
  std::vector<std::string> gradings;
  std::map<std::string, std::vector<Written>> near;  // of each measure: numbers at which verdicts turn; and of sieves
  std::vector<std::string> targets;                  // measures that a tolerance from the job mix speaks of
  std::vector<Use> uses;                             // a demand each
  bool dated = false;                                // some clause asks how old a test is
  [[nodiscard]] const Category& category(std::string_view name) const;
  [[nodiscard]] const Condition& condition(std::string_view name) const;
};

/// Under which a sieve's own numbers stand in `near`; sieves are counted from the coarsest.
[[nodiscard]] std::string sieve_key(std::size_t sieve);
/// "12 g/m2", "5 % of dry_aggregate", "3" for a plain number.
[[nodiscard]] std::string phrase(const Written& written, const std::string& basis);

}  // namespace plumbrule::property
