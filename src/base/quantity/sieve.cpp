#include "base/quantity/sieve.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cstddef>

namespace plumbrule::quantity {

namespace {

// The opening in mm and the other designation, if there is one: "No. 4", "3/8 in".
struct Sieve {
  std::string_view opening;
  std::string_view name;
};

// ASTM E11 sizes (the same openings as ISO 3310), from memory but for those of the agency tables listed in the test;
// those without a second name are ISO 3310 sizes that E11 does not list.
constexpr std::array sieve_table = {
    Sieve{"125", "5 in"},      Sieve{"100", "4 in"},      Sieve{"90", "3 1/2 in"},   Sieve{"80", ""},
    Sieve{"75", "3 in"},       Sieve{"63", "2 1/2 in"},   Sieve{"50", "2 in"},       Sieve{"45", "1 3/4 in"},
    Sieve{"40", ""},           Sieve{"37.5", "1 1/2 in"}, Sieve{"31.5", "1 1/4 in"}, Sieve{"25", "1 in"},
    Sieve{"22.4", "7/8 in"},   Sieve{"20", ""},           Sieve{"19", "3/4 in"},     Sieve{"16", "5/8 in"},
    Sieve{"14", ""},           Sieve{"12.5", "1/2 in"},   Sieve{"11.2", "7/16 in"},  Sieve{"10", ""},
    Sieve{"9.5", "3/8 in"},    Sieve{"8", "5/16 in"},     Sieve{"6.3", "1/4 in"},    Sieve{"5.6", "No. 3 1/2"},
    Sieve{"4.75", "No. 4"},    Sieve{"4.00", "No. 5"},    Sieve{"3.35", "No. 6"},    Sieve{"2.80", "No. 7"},
    Sieve{"2.36", "No. 8"},    Sieve{"2.00", "No. 10"},   Sieve{"1.70", "No. 12"},   Sieve{"1.40", "No. 14"},
    Sieve{"1.18", "No. 16"},   Sieve{"1.00", "No. 18"},   Sieve{"0.850", "No. 20"},  Sieve{"0.710", "No. 25"},
    Sieve{"0.600", "No. 30"},  Sieve{"0.500", "No. 35"},  Sieve{"0.425", "No. 40"},  Sieve{"0.355", "No. 45"},
    Sieve{"0.300", "No. 50"},  Sieve{"0.250", "No. 60"},  Sieve{"0.212", "No. 70"},  Sieve{"0.180", "No. 80"},
    Sieve{"0.150", "No. 100"}, Sieve{"0.125", "No. 120"}, Sieve{"0.106", "No. 140"}, Sieve{"0.090", "No. 170"},
    Sieve{"0.075", "No. 200"}, Sieve{"0.063", "No. 230"}, Sieve{"0.053", "No. 270"}, Sieve{"0.045", "No. 325"},
    Sieve{"0.038", "No. 400"},
};

constexpr std::size_t longest_designation = 32;

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::string_view trimmed(std::string_view text) {
  while (text.starts_with(' ')) {
    text.remove_prefix(1);
  }
  while (text.ends_with(' ')) {
    text.remove_suffix(1);
  }
  return text;
}

bool take_suffix(std::string_view& text, std::string_view suffix) {
  if (!text.ends_with(suffix)) {
    return false;
  }
  text = trimmed(text.substr(0, text.size() - suffix.size()));
  return true;
}

bool take_prefix(std::string_view& text, std::string_view prefix) {
  if (!text.starts_with(prefix)) {
    return false;
  }
  text = trimmed(text.substr(prefix.size()));
  return true;
}

std::optional<Decimal> by_name(const std::string& name) {
  const auto* const found =
      std::find_if(sieve_table.begin(), sieve_table.end(), [&](const Sieve& sieve) { return sieve.name == name; });
  return found == sieve_table.end() ? std::nullopt : std::optional(Decimal::of(found->opening));
}

const Sieve* by_opening(const Decimal& opening) {
  const auto* const found = std::find_if(sieve_table.begin(), sieve_table.end(),
                                         [&](const Sieve& sieve) { return Decimal::of(sieve.opening) == opening; });
  return found == sieve_table.end() ? nullptr : found;
}

// As the table writes it, so that "9.50 mm" and "9.5 mm" give the same digits.
std::optional<Decimal> by_measure(std::string_view number, const Decimal& unit_in_mm) {
  const auto read = Decimal::parse(number);
  const Sieve* const found = read ? by_opening(*read * unit_in_mm) : nullptr;
  return found == nullptr ? std::nullopt : std::optional(Decimal::of(found->opening));
}

}  // namespace

std::optional<Decimal> sieve_opening(std::string_view designation) {
  if (designation.size() > longest_designation) {
    return std::nullopt;
  }
  std::string lowered(designation);
  std::transform(lowered.begin(), lowered.end(), lowered.begin(), lower);
  std::string_view rest = trimmed(lowered);
  if (take_prefix(rest, "no.") || take_prefix(rest, "no") || take_prefix(rest, "#")) {
    return by_name("No. " + std::string(rest));
  }
  if (take_suffix(rest, "mm")) {
    return by_measure(rest, 1);
  }
  if (take_suffix(rest, "um") || take_suffix(rest, "\xC2\xB5m") || take_suffix(rest, "\xCE\xBCm")) {
    return by_measure(rest, Decimal::of("0.001"));
  }
  if (take_suffix(rest, "in") || take_suffix(rest, "in.") || take_suffix(rest, "inch") || take_suffix(rest, "\"")) {
    std::string inches(rest);
    std::replace(inches.begin(), inches.end(), '-', ' ');  // "1-1/2 in"
    return by_name(inches + " in");
  }
  return std::nullopt;
}

std::string sieve_name(const Decimal& opening_mm) {
  const Sieve* const found = by_opening(opening_mm);
  assert(found != nullptr);
  std::string name = (found == nullptr ? opening_mm.text() : std::string(found->opening)) + " mm";
  if (found != nullptr && !found->name.empty()) {
    name += " (" + std::string(found->name) + ")";
  }
  return name;
}

std::vector<std::string> known_sieves() {
  std::vector<std::string> known;
  for (const Sieve& sieve : sieve_table) {
    known.push_back(std::string(sieve.opening) + " mm");
    if (!sieve.name.empty()) {
      known.emplace_back(sieve.name);
    }
  }
  return known;
}

}  // namespace plumbrule::quantity
