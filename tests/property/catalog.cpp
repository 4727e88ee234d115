#include "catalog.hpp"

#include <algorithm>

namespace plumbrule::property {
namespace {

template <typename Element>
const Element& named(const std::vector<Element>& all, std::string_view name) {
  return *std::find_if(all.begin(), all.end(), [&](const Element& one) { return one.name == name; });
}

}  // namespace

const std::vector<Family>& families() {
  static const std::vector<Family> all{
      {"mass", {"g", "kg", "lb", "mg"}},
      {"length", {"mm", "cm", "in", "m"}},
      {"time", {"s", "min", "h"}},
      {"torque", {"kg-cm", "N.m", "in-lb"}},
      {"area mass", {"g/m2", "g/ft2", "kg/m2", "lb/yd2"}},
      {"temperature", {"degC", "degF"}},
      {"temperature difference", {"Cdeg", "Fdeg"}},
      {"percent", {"%"}},
      {"number", {"number"}},
  };
  return all;
}

const Family& family(std::string_view name) { return named(families(), name); }

bool Measure::sieved() const { return std::find(conditions.begin(), conditions.end(), "sieve") != conditions.end(); }

const Category& Catalog::category(std::string_view name) const { return named(categories, name); }
const Condition& Catalog::condition(std::string_view name) const { return named(conditions, name); }

std::string sieve_key(std::size_t sieve) { return "sieve " + std::to_string(sieve); }

std::string phrase(const Written& written, const std::string& basis) {
  const std::string unit = written.unit == "number" || written.unit.empty() ? "" : " " + written.unit;
  return written.number + unit + (basis.empty() ? "" : " of " + basis);
}

}  // namespace plumbrule::property
