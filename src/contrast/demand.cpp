#include "contrast/demand.hpp"

#include <algorithm>
#include <iterator>

#include "explain/wording.hpp"

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
  Asked out;
  for (const auto* tests : {&requirement.where, &one.where}) {
    for (const check::Test& test : *tests) {
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
  }
  return out;
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

}  // namespace

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

std::string rounding_of(const check::Limit& limit) {
  std::string out;
  std::string before;
  for (const auto* end : {&limit.low, &limit.high, &limit.tolerance}) {
    if (!*end) {
      continue;
    }
    const check::Rounding& rule = (*end)->rounding;
    const std::string text = !rule.place ? "with every digit"
                                         : "rounded to " + rule.place->stripped().text() +
                                               (rule.ties == quantity::Ties::to_even ? ", ties to even" : ", ties up");
    out += text == before ? "" : (out.empty() ? "" : " and ") + text;
    before = text;
  }
  return out;
}

std::string beside_of(const Demand& demand) {
  std::string out;
  if (demand.assertion != nullptr && demand.assertion->staged) {
    const check::Rounding& rule = *demand.assertion->staged;
    out = "each specimen rounded to " + (rule.place ? rule.place->stripped().text() : std::string("every digit")) +
          (rule.ties == quantity::Ties::to_even ? ", ties to even" : ", ties up");
  }
  if (demand.assertion != nullptr && demand.one->alternatives[demand.alternative].ends) {
    out += (out.empty() ? "" : "; ") + std::string("ends of the band ") +
           demand.one->alternatives[demand.alternative].ends->stripped().text();
  }
  return out.empty() ? "nothing beside the limit" : out;
}

}  // namespace plumbrule::contrast
