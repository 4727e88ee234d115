#include "contrast/demand.hpp"

#include "explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

std::string classes(const check::Rules& rules, const std::vector<check::Test>& tests) {
  std::string out;
  for (const check::Test& test : tests) {
    const check::Category& category = rules.categories[test.category];
    out += (out.empty() ? "" : "; ") + explain::spaced(category.name) + " " + explain::words(category, test.words);
  }
  return out;
}

std::string who(const check::Rules& rules, const check::Requirement& requirement, const check::Case& one) {
  const std::string general = classes(rules, requirement.where);
  const std::string narrower = classes(rules, one.where);
  return general + (general.empty() || narrower.empty() ? "" : "; ") + narrower;
}

std::map<std::string, std::set<std::string>> words_of(const check::Rules& rules, const check::Requirement& requirement,
                                                      const check::Case& one) {
  std::map<std::string, std::set<std::string>> out;
  for (const auto* tests : {&requirement.where, &one.where}) {
    for (const check::Test& test : *tests) {
      const check::Category& category = rules.categories[test.category];
      std::set<std::string> words;
      for (std::size_t at = 0; at < category.words.size(); ++at) {
        if (((test.words >> at) & 1U) != 0) {
          words.insert(category.words[at]);
        }
      }
      out[category.name] = std::move(words);  // the narrower one counts
    }
  }
  return out;
}

void add(const check::Rules& rules, const check::Requirement& requirement, const check::Case& one,
         std::vector<Demand>& out) {
  const std::string classes_of = who(rules, requirement, one);
  const auto words = words_of(rules, requirement, one);
  if (one.alternatives.empty()) {
    out.push_back({&requirement, &one, nullptr, 0, "", "", classes_of, words});
  }
  for (std::size_t at = 0; at < one.alternatives.size(); ++at) {
    for (const check::Assertion& assertion : one.alternatives[at].assertions) {
      out.push_back({&requirement, &one, &assertion, at, explain::subject_key(rules, assertion),
                     rules.measures[assertion.measure].name, classes_of, words});
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

std::string statistic_of(const Demand& demand) {
  const std::string text = demand.assertion == nullptr ? "" : explain::statistic(demand.assertion->statistic);
  return text.empty() ? "the result" : text;
}

std::string weight_of(const Demand& demand) {
  return std::string(explain::severity_text(demand.requirement->severity)) +
         (demand.requirement->optional ? ", optional test" : "");
}

std::string rounding_of(const Demand& demand) {
  if (demand.assertion == nullptr || demand.assertion->limit.words != 0) {
    return {};
  }
  const check::Limit& limit = demand.assertion->limit;
  const auto& end = limit.high ? limit.high : limit.low ? limit.low : limit.tolerance;
  if (!end || !end->rounding.place) {
    return "with every digit";
  }
  return "rounded to " + end->rounding.place->stripped().text() +
         (end->rounding.ties == quantity::Ties::to_even ? ", ties to even" : ", ties up");
}

}  // namespace plumbrule::contrast
