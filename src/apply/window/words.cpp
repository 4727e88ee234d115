#include "apply/window/words.hpp"

namespace plumbrule::window {

std::string plain(const Decimal& value) { return explain::show(value.stripped()); }

Number Words::number(const Decimal& value) const {
  const check::Type& type = context_.rules.measures[window_.variable].type;
  const Decimal bare = value.stripped();
  return {plain(bare), bare.text(), explain::show(context_, {bare, type.unit, quantity::Bound::exact}, type.basis)};
}

Number Words::difference(const Decimal& value) const {
  const quantity::UnitId unit = context_.rules.measures[window_.variable].type.unit;
  const Decimal bare = value.stripped();
  const quantity::UnitTable& units = context_.evidence.units;
  return {plain(bare), bare.text(), explain::apart(bare, units.at(units.difference(unit)).text)};
}

static quantity::UnitId unit_of(const plan::Check& check) {
  const bool spread =
      check.statistic == syntax::StatisticKind::range || check.statistic == syntax::StatisticKind::standard_deviation;
  return spread ? check.unit : check.value_unit;
}

std::string Words::unit(std::uint32_t check) const {
  return context_.evidence.units.at(unit_of(context_.plan.checks[check])).text;
}

std::string Words::value(std::uint32_t check, const Decimal& value) const {
  return explain::show({value.stripped(), unit_of(context_.plan.checks[check]), quantity::Bound::exact},
                       context_.evidence.units);
}

const check::Requirement& Words::requirement(const Clause& clause) const {
  return context_.rules.requirements[clause.requirement];
}

std::string Words::name(const Clause& clause) const {
  return requirement(clause).number + " " + requirement(clause).title;
}

std::string Words::names(const std::vector<std::size_t>& clauses) const {
  std::string out;
  for (std::size_t at = 0; at < clauses.size(); ++at) {
    out += at == 0 ? "" : at + 1 == clauses.size() ? " and " : ", ";
    out += name(window_.clauses[clauses[at]]);
  }
  return out;
}

const check::Assertion& Words::assertion(const Clause& clause, std::uint32_t check) const {
  return explain::assertion_of(context_, clause.finding, check);
}

std::string Words::threshold(std::uint32_t check, const quantity::Threshold& threshold, bool high) const {
  const std::string_view word =
      high ? (threshold.inclusive ? "at most " : "below ") : (threshold.inclusive ? "at least " : "above ");
  return std::string(word) + value(check, threshold.value);
}

std::string Words::thresholds(const Series& series) const {
  std::string out;
  if (series.limits.low) {
    out = threshold(series.check, *series.limits.low, false);
  }
  if (series.limits.high) {
    out += (out.empty() ? "" : " and ") + threshold(series.check, *series.limits.high, true);
  }
  return out;
}

LimitEnd Words::limit_end(const check::Assertion& demanded, std::uint32_t check, const quantity::Threshold& threshold,
                          bool high) const {
  const std::optional<check::End>& printed = high ? demanded.limit.high : demanded.limit.low;
  const bool as_printed = printed && !demanded.limit.tolerance;  // else the narrower of the two, about the job mix
  const std::string exact = threshold.value.stripped().text();
  const std::string unrounded = this->threshold(check, threshold, high);
  if (!as_printed) {
    return {exact, unrounded, "", ""};
  }
  LimitEnd out{printed->value.stripped().text(),
               std::string(high ? "at most " : "at least ") + value(check, printed->value), "", ""};
  if (printed->rounding.place) {
    out.threshold = exact;
    out.unrounded = unrounded;
  }
  return out;
}

bool Words::folded(const check::Limit& limit) {
  const auto rounded = [](const std::optional<check::End>& end) { return end && end->rounding.place; };
  return rounded(limit.low) || rounded(limit.high) || limit.tolerance;
}

std::string Words::stretch(const Stretch& stretch) const {
  const std::string low = plain(stretch.low);
  const std::string high = plain(stretch.high);
  if (stretch.low == stretch.high) {
    return "at " + low + " alone";
  }
  return (stretch.low_inside ? "from " : "above ") + low + (stretch.high_inside ? " to " : " to below ") + high;
}

std::string Words::stretches(const Profile& profile) const {
  std::string out;
  for (const Stretch& one : profile.complying()) {
    out += (out.empty() ? "" : "; ") + stretch(one);
  }
  return out.empty() ? "nowhere in the tested range" : out;
}

std::string Words::compared(std::uint32_t check, const Reading& reading) const {
  if (!reading.solid) {
    return "";
  }
  return reading.least == reading.greatest
             ? value(check, reading.least)
             : "from " + value(check, reading.least) + " to " + value(check, reading.greatest);
}

ReadingReport Words::reading(std::uint32_t check, const Reading& reading) const {
  ReadingReport out;
  out.at = plain(reading.at);
  out.position = reading.at.stripped().text();
  out.value = compared(check, reading);
  out.least = reading.solid ? reading.least.stripped().text() : "";
  out.greatest = reading.solid ? reading.greatest.stripped().text() : "";
  out.place = context_.sources.place_text(reading.place);
  out.verdict = reading.verdict;
  if (reading.verdict == Verdict::not_shown) {
    out.why = explain::reason_text(reading.reason);
  } else if (!reading.solid) {
    out.why = context_.plan.checks[check].words != 0
                  ? "no line is drawn to it: a word"
                  : "no line is drawn to it: it is only a bound, or not all is in order";
  }
  return out;
}

// Of the checks of the clause, the one whose line meets its limit there.
std::vector<Line> Words::derivation(const Clause& clause, const Decimal& at) const {
  std::vector<Line> out;
  for (const Series& series : clause.series) {
    for (const Crossing& crossing : crossings(series)) {
      if (!(crossing.at == at)) {
        continue;
      }
      const check::Assertion& demanded = assertion(clause, series.check);
      out.push_back({0, explain::label(context_.rules, demanded) + ": " + explain::limit_text(demanded.limit),
                     context_.sources.place_text(demanded.limit.span)});
      if (folded(demanded.limit)) {
        out.push_back({1, "on the unrounded value: " + threshold(series.check, crossing.threshold, crossing.high), ""});
      }
      const Reading& first = series.readings[crossing.first];
      const Reading& second = series.readings[crossing.first + 1];
      if (context_.plan.checks[series.check].measure == window_.variable) {
        out.push_back({1, "it limits the variable itself", ""});
        return out;
      }
      for (const Reading* one : {&first, &second}) {
        out.push_back({1,
                       "tested at " + number(one->at).full + ": " + compared(series.check, *one) + ", " +
                           std::string(explain::verdict_text(one->verdict)),
                       context_.sources.place_text(one->place)});
      }
      const Decimal& from = crossing.high ? first.greatest : first.least;
      const Decimal& to = crossing.high ? second.greatest : second.least;
      out.push_back({1,
                     plain(first.at) + " + (" + plain(crossing.threshold.value) + " - " + plain(from) + ") * (" +
                         plain(second.at) + " - " + plain(first.at) + ") / (" + plain(to) + " - " + plain(from) +
                         ") = " + plain(crossing.at),
                     ""});
      return out;
    }
  }
  return out;
}

}  // namespace plumbrule::window
