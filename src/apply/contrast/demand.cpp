#include "apply/contrast/demand.hpp"

#include <algorithm>
#include <iterator>

#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

std::set<std::string> word_set(const check::Category& category, std::uint64_t mask) {
  std::set<std::string> out;
  for (std::size_t at = 0; at < category.words.size(); ++at) {
    if (((mask >> at) & 1U) != 0) {
      out.insert(category.words[at]);
    }
  }
  return out;
}

std::string who(const check::Rules& rules, const check::Requirement& requirement, const check::Case& one) {
  const std::string general = explain::classes(rules, requirement.where);
  const std::string narrower = explain::classes(rules, one.where);
  return general + (general.empty() || narrower.empty() ? "" : "; ") + narrower;
}

Asked asked_by(const check::Rules& rules, const check::Requirement& requirement, const check::Case& one) {
  std::vector<check::Test> tests = requirement.where;
  tests.insert(tests.end(), one.where.begin(), one.where.end());
  return classes_of(rules, tests);
}

void add(const check::Rules& rules, const check::Requirement& requirement, const check::Case& one,
         std::vector<Demand>& out) {
  const std::string classes_of = who(rules, requirement, one);
  const Asked asked = asked_by(rules, requirement, one);
  std::vector<Asked> exceptions;
  for (const check::Case* narrower = requirement.cases.data(); narrower != &one; ++narrower) {
    exceptions.push_back(asked_by(rules, requirement, *narrower));
  }
  if (one.alternatives.empty()) {
    out.push_back({&requirement, &one, nullptr, 0, "", "", classes_of, asked, exceptions});
  }
  for (std::size_t at = 0; at < one.alternatives.size(); ++at) {
    for (const check::Assertion& assertion : one.alternatives[at].assertions) {
      out.push_back({&requirement, &one, &assertion, at, explain::subject_key(rules, assertion),
                     rules.measures[assertion.measure].name, classes_of, asked, exceptions});
    }
  }
}

// A place is a difference: of a temperature in degC it is in Cdeg.
std::string place_unit(const check::Rules& rules, check::UnitId unit) {
  const std::string& text = rules.units.at(rules.units.difference(unit)).text;
  return text.empty() ? "" : " " + text;
}

std::string rounded_to(const check::Rounding& rule, const std::string& unit) {
  return !rule.place ? "with every digit"
                     : "rounded to " + rule.place->stripped().text() + unit +
                           (rule.ties == quantity::Ties::to_even ? ", ties to even" : ", ties up");
}

std::string roundings(const check::Limit& limit, const std::string& unit) {
  std::string out;
  std::string before;
  for (const auto* end : {&limit.low, &limit.high, &limit.tolerance}) {
    if (*end) {
      const std::string text = rounded_to((*end)->rounding, unit);
      out += text == before ? "" : (out.empty() ? "" : " and ") + text;
      before = text;
    }
  }
  return out;
}

}  // namespace

Asked classes_of(const check::Rules& rules, const std::vector<check::Test>& tests) {
  Asked out;
  for (const check::Test& test : tests) {
    const check::Category& category = rules.categories[test.category];
    std::set<std::string> words = word_set(category, test.words);
    const auto found = out.find(category.name);
    if (found == out.end()) {
      out.emplace(category.name, std::move(words));
      continue;
    }
    std::set<std::string> both;  // all tests must hold
    std::set_intersection(words.begin(), words.end(), found->second.begin(), found->second.end(),
                          std::inserter(both, both.begin()));
    found->second = std::move(both);
  }
  return out;
}

std::vector<Demand> demands(const check::Rules& rules) {
  std::vector<Demand> out;
  for (const check::Requirement& requirement : rules.requirements) {
    for (auto one = requirement.cases.rbegin(); one != requirement.cases.rend(); ++one) {
      add(rules, requirement, *one, out);
    }
  }
  return out;
}

std::set<std::string> allowed_words(const check::Rules& rules, const check::Assertion& assertion) {
  const check::CategoryId category = rules.measures[assertion.measure].type.category;
  return category == check::none ? std::set<std::string>()
                                 : word_set(rules.categories[category], assertion.limit.words);
}

std::string statistic_of(const Demand& demand) {
  const std::string text = demand.assertion == nullptr ? "" : explain::statistic(demand.assertion->statistic);
  return text.empty() ? "the result" : text;
}

std::string severity_of(const Demand& demand) {
  return std::string(explain::severity_text(demand.requirement->severity));
}

std::string weight_of(const Demand& demand) {
  return severity_of(demand) + (demand.requirement->optional ? ", optional test" : "");
}

std::string asked_of(const Demand& demand) { return demand.requirement->optional ? "optional test" : "required"; }

std::string rounding_of(const Demand& demand) {
  return demand.assertion == nullptr ? "" : rounding_of(demand.assertion->limit);
}

std::string rounding_of(const check::Limit& limit) { return roundings(limit, ""); }

std::string rounding_of(const check::Rules& rules, const Demand& demand) {
  return demand.assertion == nullptr
             ? ""
             : roundings(demand.assertion->limit, place_unit(rules, demand.assertion->limit.unit));
}

std::string beside_of(const check::Rules& rules, const Demand& demand) {
  std::string out;
  if (demand.assertion != nullptr && demand.assertion->staged) {
    const check::Rounding& rule = *demand.assertion->staged;
    const check::UnitId unit = rules.measures[demand.assertion->measure].type.unit;
    out = "each specimen " + (rule.place ? rounded_to(rule, place_unit(rules, unit)) : std::string("with every digit"));
  }
  if (demand.assertion != nullptr && demand.one->alternatives[demand.alternative].ends) {
    const quantity::Decimal part = *demand.one->alternatives[demand.alternative].ends * quantity::Decimal{100};
    out += (out.empty() ? "" : "; ") + std::string("ends of the band ") + part.stripped().text() + " %";
  }
  return out.empty() ? "nothing beside the limit" : out;
}

}  // namespace plumbrule::contrast
