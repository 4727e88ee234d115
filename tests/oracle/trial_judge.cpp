#include "trial_judge.hpp"

#include <algorithm>
#include <map>

namespace plumbrule::oracle {
namespace {

using syntax::StatisticKind;

bool is_word(const Demand& demand) { return !demand.measure->unit; }

}  // namespace

void also(Judged& whole, const Judged& part) {
  const auto weight = [](Verdict verdict) {
    return verdict == Verdict::fails ? 2 : verdict == Verdict::not_shown ? 1 : 0;
  };
  whole = weight(part.verdict) > weight(whole.verdict) ? part : whole;
}

Interval TrialJudge::converted(const Demand& demand, const Value& value) {
  Interval amount = value.amount;
  quantity::UnitId unit = value.unit;
  const auto to = [&](quantity::UnitId wanted) {
    if (unit != wanted) {
      amount.low.value = units_.convert(amount.low.value, unit, wanted);
      amount.high.value = units_.convert(amount.high.value, unit, wanted);
      unit = wanted;
    }
  };
  if (demand.staged) {
    to(units_.of(*demand.measure->unit));
    if (open_tie(amount.low, *demand.staged->place) || open_tie(amount.high, *demand.staged->place)) {
      lost_.note(Loss::staged_tie);
    }
    amount = rounded(amount, *demand.staged->place, demand.staged->ties);
  }
  to(demand.on_scale);
  return amount;
}

Judged TrialJudge::tolerance(const Demand& demand, const Interval& value) {
  for (const Trial& aim : record_.trials) {
    const Stated& stated = aim.reported;
    const bool usable = stated.kind == Stated::Kind::quantity && stated.amount.exact();
    if (!aim.declared || aim.measure != demand.measure->name.value || !usable ||
        conditions(demand, aim.conditions) != Why::none) {
      continue;
    }
    const Decimal middle = units_.convert(stated.amount.value(), stated.unit, demand.on_scale);
    const Edge& edge = *demand.tolerance;
    Judged out;
    for (const Answer answer :
         {at_least(value, middle - edge.value, edge.rounding), at_most(value, middle + edge.value, edge.rounding)}) {
      also(out, answer == Answer::no     ? Judged{Verdict::fails, Why::none}
                : answer == Answer::open ? Judged{Verdict::not_shown, Why::only_a_bound}
                                         : Judged{});
    }
    return out;
  }
  return {Verdict::not_shown, Why::no_target};
}

Judged TrialJudge::compare(const Demand& demand, const Interval& value) {
  compared_.push_back({sample_, value});
  const auto judged = [](Answer answer) {
    return answer == Answer::yes  ? Judged{}
           : answer == Answer::no ? Judged{Verdict::fails, Why::none}
                                  : Judged{Verdict::not_shown, Why::only_a_bound};
  };
  Judged out;
  if (demand.low) {
    also(out, judged(at_least(value, demand.low->value, demand.low->rounding)));
  }
  if (demand.high) {
    also(out, judged(at_most(value, demand.high->value, demand.high->rounding)));
  }
  if (demand.tolerance) {
    also(out, tolerance(demand, value));
  }
  return out;
}

Why TrialJudge::samples(const Demand& demand, const Trial& trial, std::vector<Interval>& out) {
  Why why = Why::none;
  for (const Sample& sample : trial.samples) {
    const Value value = values_.sample(trial, sample);
    if (value.good()) {
      out.push_back(converted(demand, value));
    } else if (why == Why::none) {
      why = value.why;
    }
  }
  return why;
}

// Of single values each one counts: one that fails decides, whatever is missing beside it.
Judged TrialJudge::each(const Demand& demand, const std::vector<Interval>& values, Why missing) {
  Judged out = missing == Why::none ? Judged{} : Judged{Verdict::not_shown, missing};
  for (const Interval& one : values) {
    also(out, compare(demand, one));
  }
  if (missing == Why::none && values.size() < demand.statistic.at_least) {
    also(out, {Verdict::not_shown, Why::too_few_specimens});
  }
  return out;
}

// `missing`: why further values are not known.
Judged TrialJudge::statistic(const Demand& demand, const std::vector<Interval>& values, Why missing) {
  if (demand.statistic.kind == StatisticKind::each) {
    return each(demand, values, missing);
  }
  const bool spread =
      demand.statistic.kind == StatisticKind::range || demand.statistic.kind == StatisticKind::standard_deviation;
  if (missing != Why::none) {
    return {Verdict::not_shown, missing};
  }
  if (values.size() < std::max(demand.statistic.at_least, spread ? 2U : 1U)) {
    return {Verdict::not_shown, Why::too_few_specimens};  // one value has no spread
  }
  Interval out = values.front();
  switch (demand.statistic.kind) {
    case StatisticKind::least:
    case StatisticKind::greatest:
      for (const Interval& one : std::span(values).subspan(1)) {
        out = demand.statistic.kind == StatisticKind::least ? smaller(out, one) : larger(out, one);
      }
      return compare(demand, out);
    case StatisticKind::range:
      return compare(demand, range(values, lost_));
    case StatisticKind::standard_deviation: {
      const auto deviation = standard_deviation(values, lost_);
      return deviation ? compare(demand, *deviation) : Judged{Verdict::not_shown, Why::not_computable};
    }
    default:
      return compare(demand, mean(values));
  }
}

Judged TrialJudge::reported(const Demand& demand, const Trial& trial) {
  const Value value = values_.reported(trial);
  if (!value.good()) {
    return {Verdict::not_shown, value.why};
  }
  const StatisticKind kind = demand.statistic.kind;
  const bool spread = kind == StatisticKind::range || kind == StatisticKind::standard_deviation;
  const bool of_specimens =
      kind == StatisticKind::each || kind == StatisticKind::least || kind == StatisticKind::greatest;
  if (spread || (of_specimens && trial.replicates != 1)) {
    return {Verdict::not_shown, Why::specimens_needed};
  }
  if (demand.statistic.at_least > std::max(trial.replicates, 1U)) {
    return {Verdict::not_shown, trial.replicates == 0 ? Why::replicates_not_stated : Why::too_few_specimens};
  }
  return compare(demand, converted(demand, value));
}

Judged TrialJudge::words(const Demand& demand, const Trial& trial) {
  const auto judged = [&](const Value& value) {
    if (!value.good()) {
      return Judged{Verdict::not_shown, value.why};
    }
    const bool meets = demand.measure->text || demand.words.contains(value.word);
    return Judged{meets ? Verdict::complies : Verdict::fails, Why::none};
  };
  Judged out;
  for (const Sample& sample : trial.samples) {
    also(out, judged(values_.sample(trial, sample)));
  }
  if (trial.samples.empty()) {
    also(out, judged(values_.reported(trial)));
  }
  const std::size_t count = trial.samples.empty() ? std::max(trial.replicates, 1U) : trial.samples.size();
  if (demand.statistic.over == syntax::Over::specimens && count < demand.statistic.at_least) {
    also(out, {Verdict::not_shown, Why::too_few_specimens});
  }
  return out;
}

Judged TrialJudge::trial(const Demand& demand, const Trial& trial) {
  sample_ = trial.declared ? "job mix" : trial.series ? "series " + std::to_string(*trial.series) : "alone";
  if (is_word(demand)) {
    return words(demand, trial);
  }
  if (trial.samples.empty()) {
    return reported(demand, trial);
  }
  std::vector<Interval> values;
  const Why missing = samples(demand, trial, values);
  return statistic(demand, values, missing);
}

// Where results are taken together, one that is reported stands for itself, and one of specimens for their mean.
Value TrialJudge::own_value(const Demand& demand, const Trial& trial) {
  Value out;
  if (trial.samples.empty()) {
    out = values_.reported(trial);
    out.amount = out.good() ? converted(demand, out) : out.amount;
    return out;
  }
  std::vector<Interval> values;
  out.why = samples(demand, trial, values);
  out.amount = out.good() ? mean(values) : out.amount;
  return out;
}

Judged TrialJudge::trials(const Demand& demand, const std::vector<const Trial*>& all) {
  if (is_word(demand)) {
    Judged out;
    for (const Trial* one : all) {
      also(out, words(demand, *one));
    }
    if (all.size() < demand.statistic.at_least) {
      also(out, {Verdict::not_shown, Why::too_few_specimens});
    }
    return out;
  }
  std::vector<Interval> values;
  Why missing = Why::none;
  for (const Trial* one : all) {
    const Value value = own_value(demand, *one);
    if (value.good()) {
      values.push_back(value.amount);
    } else {
      missing = missing == Why::none ? value.why : missing;
    }
  }
  return statistic(demand, values, missing);
}

Judged TrialJudge::lots(const Demand& demand, const std::vector<const Trial*>& all) {
  Judged out;
  std::vector<const Trial*> lotless;
  std::map<std::string, std::vector<const Trial*>> lots;
  for (const Trial* one : all) {
    if (one->lot) {
      lots[*one->lot].push_back(one);
    } else {
      also(out, {Verdict::not_shown, Why::lot_not_stated});
      lotless.push_back(one);
    }
  }
  if (is_word(demand) && !lotless.empty()) {  // each by itself, whatever its lot
    also(out, trials(demand, lotless));
  }
  for (const auto& [name, results] : lots) {
    sample_ = "lot " + name;
    also(out, trials(demand, results));
  }
  return out;
}

}  // namespace plumbrule::oracle
