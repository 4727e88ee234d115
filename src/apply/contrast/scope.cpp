#include "apply/contrast/scope.hpp"

#include <algorithm>

namespace plumbrule::contrast {

const quantity::Unit& EnvelopeScope::unit(std::size_t at, const Demand& demand) const {
  return rules[at]->units.at(demand.assertion->limit.unit);
}

Asked EnvelopeScope::chosen_classes() const {
  Asked out;
  for (const auto& [category, word] : chosen) {
    out[category] = {word};
  }
  return out;
}

Mixes EnvelopeScope::chosen_mixes(const Row& row) const {
  const Asked asked = chosen_classes();
  Mixes out;
  for (const auto& [at, demand] : row.all) {
    const Mixes of = common({asked}, mixes_of(demand->classes, demand->exceptions, words), words);
    out.insert(out.end(), of.begin(), of.end());
  }
  return out;
}

void EnvelopeScope::leave_out(std::size_t at, const Demand& demand, const std::string& what) const {
  const std::string text = rules[at]->specification->name + " " + demand.requirement->number + ": " + what;
  if (std::find(envelope.left_out.begin(), envelope.left_out.end(), text) == envelope.left_out.end()) {
    envelope.left_out.push_back(text);
  }
}

}  // namespace plumbrule::contrast
