#include "apply/followup/match.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace plumbrule::followup {
namespace {

using explain::Context;

// A value that compares equal to the same value in another unit. Texts and what could not be read: as written.
std::string canonical(const Context& context, const Value& value, const check::Type& type) {
  if (value.kind == Value::Kind::missing) {
    return "-";
  }
  if (value.kind == Value::Kind::unusable || type.text) {
    return "'" + written(context, value.span) + "'";
  }
  if (value.kind == Value::Kind::word) {
    return "w" + std::to_string(value.word);
  }
  const quantity::UnitTable& units = context.evidence.units;
  return std::to_string(static_cast<int>(value.amount.bound)) + ":" +
         quantity::convert(value.amount.value, units.at(value.amount.unit), units.at(type.unit)).stripped().text();
}

std::string canonical(const Context& context, const evidence::ConditionStated& one) {
  const std::string name = std::to_string(one.condition) + "=";
  if (one.value.kind == Value::Kind::word) {
    return name + "w" + std::to_string(one.value.word);
  }
  return name + (one.value.usable() ? one.value.amount.value.stripped().text() : written(context, one.value.span));
}

const check::Measure& measure_of(const Context& context, const Result& result) {
  return context.rules.measures[result.measure];
}

std::string values(const Context& context, const Result& result) {
  std::string out = canonical(context, result.reported, measure_of(context, result).type);
  for (const Specimen& specimen : result.specimens) {
    out += ";" + specimen_key(context, result, specimen);
  }
  return out;
}

// Of any measure: what is written for the specimens themselves.
std::string as_written(const Context& context, const Result& result) {
  const auto text = [&](const Value& value) {
    const bool number = value.kind == Value::Kind::quantity;
    return number ? std::to_string(static_cast<int>(value.amount.bound)) + ":" + value.amount.value.stripped().text() +
                        context.evidence.units.at(value.amount.unit).text + ","
           : value.usable() ? written(context, value.span) + ","
                            : std::string();
  };
  std::string out = text(result.reported);
  for (const Specimen& specimen : result.specimens) {
    out += ";" + text(specimen.direct);
    for (const Value& reading : specimen.readings) {
      out += own(specimen, reading) ? text(reading) : "";
    }
  }
  return out;
}

// So many numbers do not agree by chance.
bool weighty(const Result& result) {
  std::size_t numbers = 0;
  for (const Specimen& specimen : result.specimens) {
    numbers += own_numbers(specimen);
  }
  return numbers > 1;
}

// The design values that matter to each measure, as some result says with `at`.
using Varied = std::map<check::MeasureId, std::set<check::MeasureId>>;

void find_varied(const Context& context, Varied& out) {
  for (const Result& result : context.evidence.results) {
    for (const evidence::DesignValue& one : result.at) {
      out[result.measure].insert(one.measure);
    }
  }
}

std::string conditions_key(const Context& context, const Result& result) {
  std::vector<std::string> all;
  for (const evidence::ConditionStated& one : result.conditions) {
    all.push_back(canonical(context, one));
  }
  std::sort(all.begin(), all.end());
  std::string out;
  for (const std::string& one : all) {
    out += one + " ";
  }
  return out;
}

std::string design_value(const Context& context, const Result& result, check::MeasureId variable) {
  for (const evidence::DesignValue& one : result.at) {
    if (one.measure == variable) {
      return variable == check::none ? written(context, one.value.span)
                                     : canonical(context, one.value, context.rules.measures[variable].type);
    }
  }
  for (const evidence::Target& target : context.evidence.targets) {
    if (target.measure == variable && target.conditions.empty()) {
      return canonical(context, target.value, context.rules.measures[variable].type);
    }
  }
  return "?";
}

std::string at_key(const Context& context, const Result& result, const Varied& varied) {
  std::string out;
  const auto found = varied.find(result.measure);
  if (found == varied.end() || result.declared) {
    return out;
  }
  for (const check::MeasureId variable : found->second) {
    out += std::to_string(variable) + "@" + design_value(context, result, variable) + " ";
  }
  return out;
}

// The parts that a round compares.
struct Round {
  bool conditions = false, at = false, role = false, lot = false, series = false, values = false, date = false;
  bool moved = false;
  bool any_measure = false;
};

// What could agree by chance is no test that moved.
bool chance(const Result& result, const Round& round) {
  const bool dated = round.date && (!round.any_measure || result.tested != evidence::no_date);
  return round.moved && (result.declared || (!dated && !weighty(result)));
}

std::optional<std::string> key(const Context& context, const Result& result, const Varied& varied, const Round& round) {
  if (chance(result, round) || (round.role && result.design != evidence::Design::job_mix)) {
    return std::nullopt;
  }
  if (round.any_measure) {
    return std::to_string(result.tested) + "|" + as_written(context, result);
  }
  std::string out = std::to_string(result.measure) + (result.declared ? "d|" : "|");
  out += round.conditions ? conditions_key(context, result) + "|" : "";
  out += round.at ? at_key(context, result, varied) + "|" : "";
  out += round.lot ? result.record.lot.text + "|" : "";
  out += round.series ? std::to_string(result.series == check::none ? 0 : 1) + "|" : "";
  out += round.date ? std::to_string(result.tested) + "|" : "";
  return out + (round.values ? values(context, result) : "");
}

// Strictest first; what one round leaves is for the next.
std::vector<Round> rounds() {
  std::vector<Round> out;
  for (const bool series : {true, false}) {
    const Round base{true, true, false, true, series, false, false, false};
    for (const auto& [values, date] : {std::pair{true, true}, {true, false}, {false, true}, {false, false}}) {
      Round one = base;
      one.values = values;
      one.date = date;
      out.push_back(one);
    }
  }
  for (const bool date : {true, false}) {
    for (const bool conditions : {true, false}) {
      out.push_back({conditions, false, false, false, false, true, date, true});
    }
  }
  out.push_back({true, false, true, true, false, false, false, false});  // the job mix itself is another one now
  out.push_back({false, false, false, false, false, true, true, true, true});
  return out;
}

class Matcher {
 public:
  Matcher(const Context& before, const Context& after)
      : before_(before),
        after_(after),
        earlier_(before.evidence.results.size(), false),
        later_(after.evidence.results.size(), false) {
    find_varied(before, varied_);
    find_varied(after, varied_);
  }

  Matching run() {
    for (const Round& one : rounds()) {
      round(one);
    }
    std::sort(out_.pairs.begin(), out_.pairs.end(),
              [](const Pair& left, const Pair& right) { return left.after < right.after; });
    rest(earlier_, out_.removed);
    rest(later_, out_.added);
    return std::move(out_);
  }

 private:
  const Context& before_;
  const Context& after_;
  std::vector<bool> earlier_, later_;  // matched
  Varied varied_;
  Matching out_;

  void round(const Round& one) {
    std::multimap<std::string, std::uint32_t> open;  // equal keys stay in order
    for (std::uint32_t at = 0; at < earlier_.size(); ++at) {
      const auto own = earlier_[at] ? std::nullopt : key(before_, before_.evidence.results[at], varied_, one);
      if (own) {
        open.emplace(*own, at);
      }
    }
    for (std::uint32_t at = 0; at < later_.size(); ++at) {
      const auto own = later_[at] ? std::nullopt : key(after_, after_.evidence.results[at], varied_, one);
      const auto found = own ? open.lower_bound(*own) : open.end();
      if (found != open.end() && found->first == *own) {
        out_.pairs.push_back({found->second, at, one.moved});
        earlier_[found->second] = true;
        later_[at] = true;
        open.erase(found);
      }
    }
  }

  static void rest(const std::vector<bool>& matched, std::vector<std::uint32_t>& out) {
    for (std::uint32_t at = 0; at < matched.size(); ++at) {
      if (!matched[at]) {
        out.push_back(at);
      }
    }
  }
};

}  // namespace

std::string specimen_key(const Context& context, const Result& result, const Specimen& specimen) {
  const check::Measure& measure = measure_of(context, result);
  std::string out = canonical(context, specimen.direct, measure.type);
  for (std::size_t at = 0; at < specimen.readings.size(); ++at) {
    out += "," + canonical(context, specimen.readings[at], measure.readings[at].type);
  }
  return out;
}

std::size_t own_numbers(const Specimen& specimen) {
  return static_cast<std::size_t>(
      std::count_if(specimen.readings.begin(), specimen.readings.end(),
                    [&](const Value& value) { return own(specimen, value) && value.kind == Value::Kind::quantity; }));
}

bool own(const Specimen& specimen, const Value& value) {
  return value.span.begin >= specimen.span.begin && value.span.end <= specimen.span.end;
}

bool same_conditions(const Context& context, const Result& left, const Result& right) {
  return conditions_key(context, left) == conditions_key(context, right);
}

bool converted(const Context& before, const Value& earlier, const Context& after, const Value& later) {
  const bool numbers = earlier.kind == Value::Kind::quantity && later.kind == Value::Kind::quantity;
  if (!numbers || earlier.amount.bound != later.amount.bound) {
    return false;
  }
  const quantity::Unit& from = before.evidence.units.at(earlier.amount.unit);
  const quantity::Unit& to = after.evidence.units.at(later.amount.unit);
  if (from.text == to.text) {
    return false;
  }
  const quantity::Decimal apart = later.amount.value - quantity::convert(earlier.amount.value, from, to);
  const quantity::Decimal half = later.amount.value.last_place() / quantity::Decimal{2};
  return apart <= half && apart >= -half;
}

std::string value_key(const Context& context, const Value& value, const check::Type& type) {
  return canonical(context, value, type);
}

bool same(const Context& before, const Value& earlier, const Context& after, const Value& later,
          const check::Type& type) {
  return canonical(before, earlier, type) == canonical(after, later, type);
}

Matching match(const Context& before, const Context& after) { return Matcher(before, after).run(); }

}  // namespace plumbrule::followup
