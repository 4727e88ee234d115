#include "clause_writer.hpp"

#include <array>

namespace plumbrule::property {
namespace {

constexpr std::array numbers{"0",   "1",   "2",    "5",  "7",   "10",  "12",   "20",   "0.5", "2.5",
                             "7.0", "7.5", "2.10", "50", "100", "538", "0.05", "98.5", "5.0", "1200"};
constexpr std::array spreads{"1", "2", "5", "0.5", "2.5", "10"};

bool temperature(const Measure& measure) { return measure.family == "temperature"; }

}  // namespace

const Measure& ClauseWriter::any_measure() { return random_.pick(catalog_.measures); }

std::string ClauseWriter::unit_for(const Measure& measure, bool spread) {
  if (spread && temperature(measure)) {
    return random_.pick(family("temperature difference").units);
  }
  if (!forced_unit_.empty()) {
    return forced_unit_;
  }
  if (!measure.limit_unit.empty() || house_.by_reporting_place) {
    return measure.limit_unit.empty() ? measure.unit : measure.limit_unit;
  }
  return random_.pick(family(measure.family).units);
}

std::string ClauseWriter::number(const Measure& measure, bool spread) {
  if (spread) {
    return random_.pick(spreads);
  }
  const auto& known = catalog_.near[measure.name];
  return !known.empty() && random_.chance(30) ? random_.pick(known).number : random_.pick(numbers);
}

std::string ClauseWriter::words(const Measure& measure) {
  if (measure.text) {
    return "stated";
  }
  const Texts& all = catalog_.category(measure.category).words;
  const std::string& first = random_.pick(all);
  const std::string& second = random_.pick(all);
  return first == second || random_.chance(40) ? first : "one of " + first + ", " + second;
}

std::string ClauseWriter::limit(const Measure& measure, bool spread) {
  if (measure.is_word()) {
    return words(measure);
  }
  const std::string unit = unit_for(measure, spread);
  const Written one{number(measure, spread), unit};
  auto& near = catalog_.near[measure.name];
  switch (random_.below(spread ? 2 : 4)) {
    case 0:
      near.push_back(one);
      return "at most " + phrase(one, measure.basis);
    case 1:
      near.push_back(one);
      return "at least " + phrase(one, measure.basis);
    case 2: {
      Written other{number(measure, spread), unit};
      near.insert(near.end(), {one, other});
      const bool ordered = quantity::Decimal::of(one.number) <= quantity::Decimal::of(other.number);
      return "between " + phrase(ordered ? one : other, random_.chance(50) ? measure.basis : "") + " and " +
             phrase(ordered ? other : one, measure.basis);
    }
    default: {
      const bool plain = forced_unit_.empty() && measure.limit_unit.empty() && !house_.by_reporting_place;
      if (temperature(measure) && !plain) {
        return "at least " + phrase(one, measure.basis);
      }
      catalog_.targets.push_back(measure.name);
      near.push_back({random_.pick(numbers), measure.unit});
      return "within " + phrase({random_.pick(spreads), temperature(measure) ? "Cdeg" : unit}, measure.basis) +
             " from the job mix";
    }
  }
}

std::string ClauseWriter::under(const Measure& measure, const std::string& except) {
  std::string text;
  for (const std::string& name : measure.conditions) {
    if (name == except) {
      continue;
    }
    const Condition& condition = catalog_.condition(name);
    text += text.empty() ? " under " : " and ";
    const bool ended = !condition.family.empty() && random_.chance(25);
    const std::string end = !ended ? "" : random_.chance(50) ? "at most " : "at least ";
    const Written& value = random_.pick(condition.values);
    use_.conditions.emplace_back(name, value);
    text += name + " " + end + phrase(value, "");
    if (!condition.family.empty() && random_.chance(20)) {
      text += name == "heat" ? random_.pick(Texts{" within 2 Cdeg", " within 1.8 Fdeg"}) : " within 5 min";
    }
  }
  return measure.conditions.size() == 1 && measure.conditions.front() == "soak" && random_.chance(20) ? " under early"
                                                                                                      : text;
}

std::string ClauseWriter::statistic(const Measure& measure, bool& spread) {
  if (random_.chance(30)) {
    return "";
  }
  const bool no_spread = !forced_unit_.empty() || !measure.limit_unit.empty() || house_.by_reporting_place;
  const std::size_t kinds = measure.is_word() || random_.chance(20) ? 1 : no_spread && temperature(measure) ? 4 : 6;
  const std::string kind =
      Texts{"each", "mean", "least", "greatest", "range", "standard deviation"}[random_.below(kinds)];
  spread = kind == "range" || kind == "standard deviation";
  const std::string over = random_.pick(Texts{"specimens", "specimens", "specimens", "results", "results in each lot"});
  const bool counted = random_.chance(60);
  if (!counted && kind == "each" && over != "results in each lot") {
    return over == "specimens" ? ", each specimen," : ", each result,";
  }
  const bool one_needed = !counted && over == "specimens";
  use_.specimens = counted ? 1 + random_.below(3) : spread ? 2 : 1;
  const std::string count = counted ? "at least " + std::to_string(use_.specimens) + " " : "";
  return ", " + kind + " of " + count + (one_needed ? "specimens" : over) + ",";
}

std::string ClauseWriter::grading_assertion(const Measure& measure) {
  std::string text = measure.name + under(measure, "sieve");
  bool spread = false;
  if (random_.chance(25)) {
    text += statistic(measure, spread);
  }
  if (spread) {
    text = measure.name + under(measure, "sieve");
  }
  const std::string tolerance = random_.pick(Texts{"", "", " within stockpile tolerance", " within job mix tolerance"});
  if (!tolerance.empty()) {
    catalog_.targets.push_back(measure.name);
  }
  return text + " shall conform to grading " + random_.pick(catalog_.gradings) + tolerance;
}

std::string ClauseWriter::assertion(const Measure& measure, bool alone) {
  use_ = {measure.name, {}, 1};
  std::string text = demand(measure, alone);
  catalog_.uses.push_back(use_);
  return text;
}

std::string ClauseWriter::demand(const Measure& measure, bool alone) {
  last_ = nullptr;
  if (measure.sieved() && forced_unit_.empty() && random_.chance(70)) {
    return grading_assertion(measure);
  }
  std::string text = measure.name + under(measure, "");
  bool spread = false;
  text += statistic(measure, spread);
  if (measure.name == "m1" && !spread && forced_unit_.empty() && random_.chance(25)) {
    return text + " shall be floor";  // a term for a limit
  }
  text += " shall be " + limit(measure, spread);
  if (alone) {
    last_ = &measure;
    last_spread_ = spread;
  }
  return text;
}

std::string ClauseWriter::tests(const std::string& category) {
  const Texts& words = catalog_.category(category).words;
  const std::string& word = random_.pick(words);
  switch (random_.below(4)) {
    case 0:
      return category + " is " + word;
    case 1:
      return category + " is not " + word;
    case 2:
      return category + " is one of " + word + ", " + random_.pick(words);
    default:
      return category + " is not one of " + word;
  }
}

std::string ClauseWriter::exceptions(const Measure& measure, bool other_limits) {
  // Behind a list of words a comma would go on with the list.
  const auto either_way = [&](bool list = false) {
    const bool other = other_limits && random_.chance(65);
    return (!list && random_.chance(50) ? ", " : " ") +
           (other ? "shall be " + limit(measure, last_spread_) : "not required") +
           (random_.chance(50) ? " cite \"note\"" : "");
  };
  std::string text;
  switch (random_.below(3)) {
    case 0:
      text = tests("traffic");
      return " except where " + text + either_way(text.find("one of") != std::string::npos);
    case 1:  // apart
      text = " except where traffic is light" + either_way();
      return text + " except where traffic is heavy" + either_way();
    default: {  // one inside the other, in either order
      const std::string wide = " except where traffic is not medium" + either_way();
      const std::string narrow = " except where traffic is light and climate is wet" + either_way();
      return random_.chance(50) ? wide + narrow : narrow + wide;
    }
  }
}

std::string ClauseWriter::rounding_rule(const Measure& measure) {
  const std::string ties = random_.chance(50) ? "ties to even" : "ties up";
  switch (random_.below(4)) {
    case 0:
      return "the absolute method";
    case 1:
      if (!measure.is_word() && !measure.reported.empty()) {
        forced_unit_ = measure.unit;
        return "the rounding method to reporting place, " + ties;
      }
      return "the rounding method, " + ties;
    case 2:
      if (!measure.is_word()) {
        forced_unit_ = random_.pick(family(measure.family).units);
        return "the rounding method to " + phrase({random_.pick(Texts{"1", "0.1", "0.5", "5"}), forced_unit_}, "") +
               ", " + ties;
      }
      return "the rounding method, " + ties;
    default:
      return "the rounding method, " + ties;
  }
}

std::string ClauseWriter::requirement(const std::string& number) {
  forced_unit_.clear();
  const Measure& measure = any_measure();
  std::string text = "requirement " + number + " \"clause " + number + "\"\n ";
  if (random_.chance(25)) {
    text += " where " + tests("course") + (random_.chance(20) ? " and " + tests("course") : "");
  }
  text += random_.chance(15) ? " optional" : "";
  text += random_.chance(25) ? " severity " + random_.pick(Texts{"reject", "refer", "advise"}) : "";
  const bool either = random_.chance(15);
  if (!either && !measure.sieved() && random_.chance(30)) {
    text += " compare by " + rounding_rule(measure);
  }
  if (random_.chance(12)) {
    text += " tested within " + random_.pick(Texts{"12 months", "1 months", "30 days", "24 months"});
    catalog_.dated = true;
  }
  text += "\n ";
  if (either) {
    text += " either " + assertion(measure, false);
    const std::size_t more = 1 + random_.below(2);
    for (std::size_t at = 0; at < more; ++at) {
      text += "\n  or " + assertion(any_measure(), false);
    }
    last_ = nullptr;
    return text + (random_.chance(15) ? "\n " + exceptions(measure, false) : "") + "\n";
  }
  text += " " + assertion(measure, true);
  const bool graded = last_ == nullptr;
  if (random_.chance(30)) {
    text += "\n " + exceptions(measure, !graded && last_ != nullptr);
  }
  return text + "\n";
}

std::string ClauseWriter::new_limit() { return last_ == nullptr ? "" : limit(*last_, last_spread_); }

}  // namespace plumbrule::property
