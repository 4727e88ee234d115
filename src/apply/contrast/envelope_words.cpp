#include "apply/contrast/envelope_words.hpp"

#include "apply/contrast/limits.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {

std::string word_list(const std::set<std::string>& words) {
  std::string out;
  for (const std::string& word : words) {
    out += (out.empty() ? "" : ", ") + word;
  }
  return out;
}

std::string classes_text(const Asked& classes) {
  std::string out;
  for (const auto& [category, words] : classes) {
    std::string list;
    for (const std::string& word : words) {
      list += (list.empty() ? "" : ", ") + explain::spaced(word);
    }
    out += (out.empty() ? "" : "; ") + explain::spaced(category) + " " + list;
  }
  return out;
}

std::string classes_text(const Asked& classes, const std::vector<Asked>& exceptions) {
  std::string out = classes_text(classes);
  for (const Asked& one : exceptions) {
    out += (out.empty() ? "except " : ", except ") + classes_text(one);
  }
  return out;
}

// Whether rounding lets less pass than the limit as printed. The ends of a tolerance lie where the job mix puts them.
bool rounding_matters(const check::Limit& limit) {
  const auto less = [](const std::optional<check::End>& end, bool upper) {
    return end && stricter(threshold_of(*end, upper), {end->value, true}, upper);
  };
  return less(limit.high, true) || less(limit.low, false) || (limit.tolerance && limit.tolerance->rounding.place);
}

// All ways to comply.
std::string ways_text(const check::Rules& rules, const check::Case& one) {
  std::string out;
  for (const check::Alternative& alternative : one.alternatives) {
    out += out.empty() ? "" : "; or ";
    for (const check::Assertion& assertion : alternative.assertions) {
      const std::string how = explain::statistic(assertion.statistic);
      out += (&assertion == &alternative.assertions.front() ? "" : " and ") + explain::label(rules, assertion) +
             (how.empty() ? "" : ", " + how) + ", shall be " + explain::limit_text(assertion.limit) +
             (rounding_matters(assertion.limit) ? ", " + rounding_of(assertion.limit) : "");
    }
  }
  return out;
}

}  // namespace plumbrule::contrast
