#include "judge/explain/wording.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace plumbrule::explain {
namespace {

using quantity::Bound;
using quantity::Decimal;

constexpr std::size_t most_decimals = 8;
constexpr std::size_t longest_number = 48;

std::string_view bound_words(Bound bound) {
  switch (bound) {
    case Bound::at_least:
      return "at least ";
    case Bound::above:
      return "above ";
    case Bound::at_most:
      return "at most ";
    case Bound::below:
      return "below ";
    case Bound::undetermined:
      return "undetermined, about ";
    default:
      return "";
  }
}

std::string with_unit(const std::string& number, const std::string& unit) {
  return unit.empty() ? number : number + " " + unit;
}

std::string ties_text(quantity::Ties ties) { return ties == quantity::Ties::to_even ? "ties to even" : "ties up"; }

}  // namespace

std::string spaced(std::string text) {
  for (char& byte : text) {
    byte = byte == '_' ? ' ' : byte;
  }
  return text;
}

std::string limit_text(const check::Limit& limit) { return spaced(one_line(limit.written)); }

std::string one_line(std::string_view text) {
  std::string out;
  for (const char byte : text) {
    const bool blank = byte == ' ' || byte == '\n' || byte == '\t' || byte == '\r';
    if (!blank) {
      out.push_back(byte);
    } else if (!out.empty() && out.back() != ' ') {
      out.push_back(' ');
    }
  }
  return out;
}

std::string show(const Decimal& value) {
  std::string text = value.text();
  if (text.size() > longest_number) {
    return text.substr(0, longest_number) + "...";  // only a product of many large readings comes here
  }
  const std::size_t point = text.find('.');
  if (point == std::string::npos || text.size() - point - 1 <= most_decimals) {
    return text;
  }
  return quantity::round_to(value, Decimal::of("0.000001"), quantity::Ties::to_even).text() + "...";
}

std::string show(const quantity::Amount& amount, const quantity::UnitTable& units) {
  return std::string(bound_words(amount.bound)) + with_unit(show(amount.value), units.at(amount.unit).text);
}

std::string show(const Context& context, const quantity::Amount& amount, check::BasisId basis) {
  std::string text = show(amount, context.evidence.units);
  return basis == check::none ? text : text + " of " + spaced(context.rules.bases[basis].name);
}

std::string show(const Context& context, const check::Type& type, const quantity::Amount& amount, std::uint32_t word) {
  if (type.text) {
    return "stated";
  }
  if (type.is_word()) {
    const auto& words = context.rules.categories[type.category].words;
    return word < words.size() ? spaced(words[word]) : std::string();
  }
  return show(context, amount, type.basis);
}

std::string conditions(const check::Rules& rules, const check::Assertion& assertion) {
  std::string out;
  for (const check::ConditionValue& value : assertion.conditions) {
    out += (out.empty() ? "" : ", ") + spaced(rules.conditions[value.condition].name) + " " + value.written;
  }
  return out;
}

std::string label(const check::Rules& rules, const check::Assertion& assertion) {
  const std::string under = conditions(rules, assertion);
  const std::string& title = rules.measures[assertion.measure].title;
  return under.empty() ? title : title + ", " + under;
}

std::string_view statistic_name(syntax::StatisticKind kind) {
  constexpr std::array<std::string_view, 7> names{
      "mean", "mean", "each", "least", "greatest", "range", "standard deviation"};
  return names.at(static_cast<std::size_t>(kind));
}

std::string statistic(const syntax::Statistic& statistic) {
  if (!statistic.span.known()) {
    return {};
  }
  const bool specimens = statistic.over == syntax::Over::specimens;
  const std::string noun = specimens ? "specimen" : "result";
  const std::string lots = statistic.over == syntax::Over::results_of_lot ? " in each lot" : "";
  const std::string count = statistic.at_least > 1
                                ? " of at least " + std::to_string(statistic.at_least) + " " + noun + "s"
                            : statistic.kind == syntax::StatisticKind::each ? " " + noun
                                                                            : " of the " + noun + "s";
  return std::string(statistic_name(statistic.kind)) + count + lots;
}

std::string classes(const check::Rules& rules, const std::vector<check::Test>& tests) {
  std::string out;
  for (const check::Test& test : tests) {
    const check::Category& category = rules.categories[test.category];
    out += (out.empty() ? "" : "; ") + spaced(category.name) + " " + words(category, test.words);
  }
  return out;
}

std::string words(const check::Category& category, std::uint64_t mask) {
  std::string out;
  for (std::size_t at = 0; at < category.words.size(); ++at) {
    if ((mask >> at & 1U) != 0) {
      out += (out.empty() ? "" : ", ") + spaced(category.words[at]);
    }
  }
  return out;
}

// "light, medium" as "light or medium".
static std::string either(std::string list) {
  const std::size_t last = list.rfind(", ");
  return last == std::string::npos ? list : list.replace(last, 2, " or ");
}

static std::string tests_text(const check::Rules& rules, const std::vector<check::Test>& tests) {
  std::string out;
  for (const check::Test& test : tests) {
    const check::Category& category = rules.categories[test.category];
    out += (out.empty() ? "where " : " and ") + spaced(category.name) + " is " + either(words(category, test.words));
  }
  return out;
}

// "(sieve No. 4: 70 to 90 %; sieve No. 8: 45 to 70 %)".
static std::string sieves(const check::Rules& rules, const check::Alternative& grading) {
  std::string out;
  for (const check::Assertion& one : grading.assertions) {
    out += (out.empty() ? "(" : "; ") + conditions(rules, one) + ": " + limit_text(one.limit);
  }
  return out + ")";
}

static std::string grading_demand(const check::Rules& rules, const check::Alternative& grading) {
  const check::Assertion& first = grading.assertions.front();
  const bool tolerated = std::any_of(grading.assertions.begin(), grading.assertions.end(),
                                     [](const check::Assertion& one) { return one.limit.tolerance.has_value(); });
  const std::string how = statistic(first.statistic);
  return rules.measures[first.measure].title + (how.empty() ? "" : ", " + how + ",") +
         " shall conform to the grading " + grading.grading +
         (tolerated ? " and stay within its tolerance of the job mix " : " ") + sieves(rules, grading) +
         (grading.ends ? " and not run from one end of its band to the other on consecutive sieves" : "");
}

static std::string demand(const check::Rules& rules, const check::Alternative& alternative) {
  if (!alternative.grading.empty() && !alternative.assertions.empty()) {
    return grading_demand(rules, alternative);
  }
  std::string out;
  for (const check::Assertion& assertion : alternative.assertions) {
    const std::string how = statistic(assertion.statistic);
    const bool qualified = !how.empty() || !assertion.conditions.empty();
    out += label(rules, assertion) + (how.empty() ? "" : ", " + how) + (qualified ? ", shall be " : " shall be ") +
           limit_text(assertion.limit);
  }
  return out;
}

std::string sentence(const check::Rules& rules, const check::Requirement& requirement) {
  std::string out = tests_text(rules, requirement.where);
  out += out.empty() ? "" : ": ";
  const check::Case& general = requirement.cases.back();
  for (std::size_t at = 0; at < general.alternatives.size(); ++at) {
    out += (at == 0 ? "" : "; or ") + demand(rules, general.alternatives[at]);
  }
  for (const check::Case& narrower : requirement.cases) {
    if (&narrower != &general) {
      out += "; except " + tests_text(rules, narrower.where) + ": ";
      out += narrower.alternatives.empty() || narrower.alternatives.front().assertions.empty()
                 ? "not required"
                 : limit_text(narrower.alternatives.front().assertions.front().limit);
    }
  }
  return out;
}

const check::Assertion& assertion_of(const Context& context, const evaluate::Finding& finding, std::uint32_t check) {
  return assertion_of(context.rules, context.plan, finding.requirement, check);
}

const check::Test& test_of(const Context& context, const evaluate::Finding& finding, std::uint32_t index) {
  const plan::Requirement& requirement = context.plan.requirements[finding.requirement];
  const check::Requirement& rules = context.rules.requirements[finding.requirement];
  for (std::uint32_t at = requirement.cases.begin; at < requirement.cases.end; ++at) {
    const plan::Range tests = context.plan.cases[at].tests;
    if (index >= tests.begin && index < tests.end) {
      return rules.cases[at - requirement.cases.begin].where[index - tests.begin];
    }
  }
  return rules.where[index - requirement.tests.begin];
}

std::uint32_t alternatives_of(const Context& context, const evaluate::Finding& finding) {
  for (const evaluate::Step& step : plan::part(context.review.trace, finding.steps)) {
    if (step.kind == evaluate::StepKind::case_chosen) {
      return context.plan.cases[step.index].groups.size();
    }
  }
  return 1;
}

std::string standing_text(const check::Provenance& limits) {
  return std::string(status_text(limits.status)) + (limits.status_note.empty() ? "" : ": " + limits.status_note);
}

std::string age_text(const check::Validity& validity) {
  return validity.count == 0 ? "" : std::to_string(validity.count) + (validity.days ? " days" : " months");
}

std::string apart(const Decimal& value, const std::string& unit) {
  if (unit != "%") {
    return with_unit(show(value), unit);
  }
  return show(value) + (value == Decimal{1} ? " percentage point" : " percentage points");
}

namespace {

// A share of the limit where there is one. Of percentages it would be misread, of a tolerance it is not asked for.
std::string margin_text(const check::Rules& rules, const check::Assertion& assertion, const Room& nearest) {
  const check::Limit& limit = assertion.limit;
  const Decimal& end = nearest.end.value;
  const std::string& unit = rules.units.at(rules.units.difference(limit.unit)).text;
  const bool from_job_mix = limit.tolerance && !limit.low && !limit.high;
  const bool outside = nearest.distance < Decimal{0};
  const Decimal size = outside ? -nearest.distance : nearest.distance;
  if (size.zero()) {
    return "exactly at the limit";
  }
  std::string out = apart(size, unit) + (outside ? " outside the limit" : " inside the limit");
  if (!end.zero() && unit != "%" && !from_job_mix && !of_temperature(rules, assertion)) {
    const Decimal reference = end < Decimal{0} ? -end : end;
    const Decimal percent = size * Decimal{100} / reference;
    out += " (" + quantity::round_to(percent, Decimal::of("0.1"), quantity::Ties::to_even).text() + " % of it)";
  }
  return out;
}

}  // namespace

Standing standing(const Context& context, const check::Assertion& assertion, const quantity::Amount& amount,
                  const std::optional<quantity::Decimal>& target) {
  const std::string& unit = context.evidence.units.at(assertion.limit.unit).text;
  quantity::Amount rounded = amount;
  Standing out;
  if (const auto nearest = room(context.rules, assertion, amount, target)) {
    const check::End& end = nearest->end;
    if (amount.bound == Bound::exact) {  // "below 120.4 s" is not "below 120 s", which decides more
      rounded.value = nearest->rounded;
    }
    out.distance = nearest->distance;
    out.headroom = nearest->headroom;
    out.margin = amount.bound == Bound::exact ? margin_text(context.rules, assertion, *nearest) : "";
    out.rule = end.rounding.place ? "rounded to the nearest " + with_unit(end.rounding.place->text(), unit) + ", " +
                                        ties_text(end.rounding.ties)
                                  : "absolute method, every digit counts";
  }
  out.value = show(context, rounded, context.rules.measures[assertion.measure].type.basis);
  return out;
}

}  // namespace plumbrule::explain
