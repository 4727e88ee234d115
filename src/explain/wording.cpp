#include "explain/wording.hpp"

#include <array>

namespace plumbrule::explain {
namespace {

using quantity::Bound;
using quantity::Decimal;

constexpr std::size_t most_decimals = 8;

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
  const std::string count = statistic.at_least > 1 ? " of at least " + std::to_string(statistic.at_least) + " specimens"
                            : statistic.kind == syntax::StatisticKind::each ? " specimen"
                                                                            : " of the specimens";
  return std::string(statistic_name(statistic.kind)) + count;
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

std::string sentence(const check::Rules& rules, const check::Requirement& requirement) {
  std::string out;
  for (const check::Test& test : requirement.where) {
    const check::Category& category = rules.categories[test.category];
    out += (out.empty() ? "where " : " and ") + spaced(category.name) + " is " + either(words(category, test.words));
  }
  out += out.empty() ? "" : ": ";
  for (std::size_t at = 0; at < requirement.alternatives.size(); ++at) {
    const check::Alternative& alternative = requirement.alternatives[at];
    out += at == 0 ? "" : "; or ";
    if (!alternative.grading.empty() && !alternative.assertions.empty()) {
      out += rules.measures[alternative.assertions.front().measure].title + " shall conform to the grading " +
             alternative.grading;
      continue;
    }
    for (const check::Assertion& assertion : alternative.assertions) {
      const std::string how = statistic(assertion.statistic);
      const bool qualified = !how.empty() || !assertion.conditions.empty();
      out += label(rules, assertion) + (how.empty() ? "" : ", " + how) + (qualified ? ", shall be " : " shall be ") +
             limit_text(assertion.limit);
    }
  }
  return out;
}

const check::Assertion& assertion_of(const Context& context, const evaluate::Finding& finding, std::uint32_t check) {
  const plan::Requirement& requirement = context.plan.requirements[finding.requirement];
  const auto& alternatives = context.rules.requirements[finding.requirement].alternatives;
  for (std::uint32_t group = requirement.groups.begin; group < requirement.groups.end; ++group) {
    const plan::Range checks = context.plan.groups[group].checks;
    if (check >= checks.begin && check < checks.end) {
      return alternatives[group - requirement.groups.begin].assertions[check - checks.begin];
    }
  }
  return alternatives.front().assertions.front();
}

namespace {

struct Against {
  Decimal rounded;
  Decimal margin;  // positive: inside the limit
};

Against against(const check::End& end, bool high, const Decimal& value) {
  const Decimal rounded =
      end.rounding.place ? quantity::round_to(value, *end.rounding.place, end.rounding.ties) : value;
  return {rounded, high ? end.value - rounded : rounded - end.value};
}

std::string margin_text(const Against& nearest, const check::End& end, const std::string& unit) {
  const bool outside = nearest.margin < Decimal{0};
  const Decimal size = outside ? -nearest.margin : nearest.margin;
  if (size.zero()) {
    return "exactly at the limit";
  }
  // Of percentages a margin in percent of the limit would be misread.
  const bool percentage = unit == "%";
  const std::string amount = percentage ? show(size) + (size == Decimal{1} ? " percentage point" : " percentage points")
                                        : with_unit(show(size), unit);
  std::string out = amount + (outside ? " outside the limit" : " inside the limit");
  if (!end.value.zero() && !percentage) {
    const Decimal reference = end.value < Decimal{0} ? -end.value : end.value;
    const Decimal percent = size * Decimal{100} / reference;
    out += " (" + quantity::round_to(percent, Decimal::of("0.1"), quantity::Ties::to_even).text() + " % of it)";
  }
  return out;
}

}  // namespace

Standing standing(const Context& context, const check::Assertion& assertion, const quantity::Amount& amount) {
  const std::string& unit = context.evidence.units.at(assertion.limit.unit).text;
  const auto low =
      assertion.limit.low ? std::optional(against(*assertion.limit.low, false, amount.value)) : std::nullopt;
  const auto high =
      assertion.limit.high ? std::optional(against(*assertion.limit.high, true, amount.value)) : std::nullopt;
  const bool use_low = low && (!high || low->margin < high->margin);
  const check::End& end = use_low ? *assertion.limit.low : *assertion.limit.high;
  const Against& nearest = use_low ? *low : *high;
  quantity::Amount rounded = amount;
  rounded.value = nearest.rounded;
  rounded.unit = assertion.limit.unit;
  Standing out;
  out.value = show(context, rounded, context.rules.measures[assertion.measure].type.basis);
  out.distance = nearest.margin;
  out.margin = amount.bound == Bound::exact ? margin_text(nearest, end, unit) : "";
  out.rule = end.rounding.place ? "rounded to the nearest " + with_unit(end.rounding.place->text(), unit) + ", " +
                                      ties_text(end.rounding.ties)
                                : "absolute method, every digit counts";
  return out;
}

}  // namespace plumbrule::explain
