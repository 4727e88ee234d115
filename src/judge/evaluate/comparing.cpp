#include <algorithm>
#include <map>

#include "judge/evaluate/evaluator.hpp"

namespace plumbrule::evaluate {

Amount Evaluator::convert(const plan::Check& check, const Measured& value) {
  Amount out = value.amount;
  if (check.is_staged) {
    const quantity::UnitId unit = plan_.measures[check.measure].type.unit;
    out.value = quantity::convert(out.value, evidence_.units.at(out.unit), evidence_.units.at(unit));
    out.value = quantity::round_to(out.value, *check.staged.place, check.staged.ties);
    out.unit = unit;
    // "above 20.4" rounds to 20 or more: the end may be met.
    out.bound = out.bound == Bound::above ? Bound::at_least : out.bound == Bound::below ? Bound::at_most : out.bound;
    measuring_.step(StepKind::rounded).amount = out;
  }
  if (out.unit != check.value_unit) {
    out.value = quantity::convert(out.value, evidence_.units.at(out.unit), evidence_.units.at(check.value_unit));
    out.unit = check.value_unit;
    measuring_.step(StepKind::converted).amount = out;
  }
  return out;
}

static std::pair<quantity::Threshold, quantity::Threshold> tolerance_ends(const plan::Check& check,
                                                                          const Decimal& middle) {
  const Decimal low = middle - check.tolerance;
  const Decimal high = middle + check.tolerance;
  if (const auto& rule = check.tolerance_rounding; rule.place) {
    return {quantity::fold_at_least(low, *rule.place, rule.ties), quantity::fold_at_most(high, *rule.place, rule.ties)};
  }
  return {{low, true}, {high, true}};
}

// From the job mix, up and down: thresholds around its value, in the unit of the specimens.
Judged Evaluator::tolerance(const plan::Check& check, const Ends& value) {
  const evidence::Target* const aim = target(check);
  if (aim == nullptr) {
    return {Verdict::not_shown, Reason::no_target};
  }
  Amount middle = aim->value.amount;
  middle.value = quantity::convert(middle.value, evidence_.units.at(middle.unit), evidence_.units.at(check.value_unit));
  middle.unit = check.value_unit;
  Step& noted = measuring_.step(StepKind::target);
  noted.amount = middle;
  noted.span = aim->value.span;
  const auto [low, high] = tolerance_ends(check, middle.value);
  Judged out{decided(value, low, compare_low), Reason::none};
  also(out, {decided(value, high, compare_high), Reason::none});
  out.reason = out.verdict == Verdict::not_shown ? Reason::only_a_bound : Reason::none;
  return out;
}

Judged Evaluator::compare(const plan::Check& check, std::uint32_t index, const Amount& value, const Span& span) {
  return compare(check, index, Ends{value, value}, span);
}

Judged Evaluator::compare(const plan::Check& check, std::uint32_t index, const Ends& value, const Span& span) {
  Judged out;
  if (!value.low.value.finite() || !value.high.value.finite()) {
    out = {Verdict::not_shown, Reason::not_computable};
  } else {
    const auto judge = [](Verdict verdict) {
      return Judged{verdict, verdict == Verdict::not_shown ? Reason::only_a_bound : Reason::none};
    };
    if (check.has_low) {
      also(out, judge(decided(value, check.low, compare_low)));
    }
    if (check.has_high) {
      also(out, judge(decided(value, check.high, compare_high)));
    }
    if (check.has_tolerance) {
      also(out, tolerance(check, value));
    }
  }
  if (!compared_.empty()) {
    compared_.back().emplace_back(sample_, value.low);
  }
  Step& noted = measuring_.step(StepKind::compared, index);
  noted.amount = check.has_high && !check.has_low ? value.high : value.low;  // the end that the limit is about
  noted.outcome = out.verdict;
  noted.reason = out.reason;
  noted.span = span;
  return out;
}

// Of two ends that must both hold, the narrower one.
static void narrow(std::optional<quantity::Threshold>& have, const quantity::Threshold& other, bool low) {
  if (!have || (low ? have->value < other.value : other.value < have->value)) {
    have = other;
  } else if (have->value == other.value) {
    have->inclusive = have->inclusive && other.inclusive;
  }
}

Thresholds thresholds(const plan::Check& check, const std::optional<Decimal>& target) {
  Thresholds out;
  if (check.has_low) {
    out.low = check.low;
  }
  if (check.has_high) {
    out.high = check.high;
  }
  if (check.has_tolerance && target) {
    const auto [low, high] = tolerance_ends(check, *target);
    narrow(out.low, low, true);
    narrow(out.high, high, false);
  }
  return out;
}

// The values of all specimens in values_, or why one has none.
Reason Evaluator::collect(const plan::Check& check, const Result& result) {
  values_.clear();
  places_.clear();
  Reason out = Reason::none;
  for (std::uint32_t at = 0; at < result.specimens.size(); ++at) {
    const Measured value = measuring_.specimen(result, at);
    if (value.good()) {
      values_.push_back(convert(check, value));
      places_.push_back(value.span);
    } else if (out == Reason::none) {
      out = value.reason;
    }
  }
  return out;
}

Judged Evaluator::each(const plan::Check& check, std::uint32_t index) {
  Judged out;
  const std::vector<Amount> values = values_;
  for (std::size_t at = 0; at < values.size(); ++at) {
    also(out, compare(check, index, values[at], places_[at]));
  }
  return out;
}

// The statistic of values_, in the unit of the limit.
Ends Evaluator::statistic(const plan::Check& check) {
  Ends value = combine(check.statistic, values_);
  const bool spread =
      check.statistic == syntax::StatisticKind::range || check.statistic == syntax::StatisticKind::standard_deviation;
  value.low.unit = spread ? check.unit : check.value_unit;
  value.high.unit = value.low.unit;
  if (values_.size() > 1) {
    Step& noted = measuring_.step(StepKind::combined, static_cast<std::uint32_t>(check.statistic));
    noted.amount = value.low;
    noted.other = static_cast<std::uint32_t>(values_.size());
  }
  return value;
}

Judged Evaluator::reported(const plan::Check& check, std::uint32_t index, const Result& result) {
  const Measured value = measuring_.reported(result);
  if (!value.good()) {
    return {Verdict::not_shown, value.reason};
  }
  const bool spread =
      check.statistic == syntax::StatisticKind::range || check.statistic == syntax::StatisticKind::standard_deviation;
  const bool of_specimens = check.statistic == syntax::StatisticKind::each ||
                            check.statistic == syntax::StatisticKind::least ||
                            check.statistic == syntax::StatisticKind::greatest;
  const Amount amount = spread ? value.amount : convert(check, value);
  if (spread || (of_specimens && result.replicates != 1)) {
    return {Verdict::not_shown, Reason::specimens_needed};
  }
  if (check.specimens > 1 && result.replicates == 0) {
    return {Verdict::not_shown, Reason::replicates_not_stated};
  }
  if (check.specimens > std::max(result.replicates, 1U)) {
    return {Verdict::not_shown, Reason::too_few_specimens};
  }
  return compare(check, index, amount, value.span);
}

Judged Evaluator::word(const plan::Check& check, std::uint32_t index, const Measured& value) {
  if (!value.good()) {
    return {Verdict::not_shown, value.reason};
  }
  const Verdict verdict = (check.words >> value.word & 1U) != 0 ? Verdict::complies : Verdict::fails;
  Step& noted = measuring_.step(StepKind::compared, index);
  noted.outcome = verdict;
  noted.other = value.word;
  noted.span = value.span;
  return {verdict, Reason::none};
}

Judged Evaluator::words(const plan::Check& check, std::uint32_t index, const Result& result) {
  Judged out;
  if (result.specimens.empty()) {
    also(out, word(check, index, measuring_.reported(result)));
    if (check.specimens > std::max(result.replicates, 1U)) {
      also(out, {Verdict::not_shown, Reason::too_few_specimens});
    }
    return out;
  }
  for (std::uint32_t at = 0; at < result.specimens.size(); ++at) {
    also(out, word(check, index, measuring_.specimen(result, at)));
  }
  if (result.specimens.size() < check.specimens) {
    also(out, {Verdict::not_shown, Reason::too_few_specimens});
  }
  return out;
}

Judged Evaluator::result(const plan::Check& check, std::uint32_t index, const Result& result) {
  if (check.words != 0) {
    return words(check, index, result);
  }
  if (result.specimens.empty()) {
    return reported(check, index, result);
  }
  const Reason reason = collect(check, result);
  Judged open;
  if (reason != Reason::none) {
    open = {Verdict::not_shown, reason};
  } else if (values_.size() < check.specimens) {
    open = {Verdict::not_shown, Reason::too_few_specimens};
  }
  if (check.statistic == syntax::StatisticKind::each) {
    // One that fails settles it, whatever the others lack.
    Judged out = each(check, index);
    also(out, open);
    return out;
  }
  if (open.verdict != Verdict::complies) {
    return open;
  }
  return compare(check, index, statistic(check), result.span);
}

// One value for a result, where the statistic is taken over results: the mean of its specimens, or as reported.
Measured Evaluator::result_value(const plan::Check& check, const Result& result) {
  Measured out;
  out.span = result.span;
  if (result.specimens.empty()) {
    out = measuring_.reported(result);
    out.amount = out.good() ? convert(check, out) : out.amount;
    return out;
  }
  const std::vector<Amount> kept = values_;
  const std::vector<Span> kept_places = places_;
  out.reason = collect(check, result);
  if (out.good()) {
    out.amount = combine(syntax::StatisticKind::mean, values_).low;
    out.amount.unit = check.value_unit;
  }
  values_ = kept;
  places_ = kept_places;
  return out;
}

Judged Evaluator::over_results(const plan::Check& check, std::uint32_t index, std::uint32_t lot) {
  sample_ = lot;  // each lot is a sample of its own
  values_.clear();
  places_.clear();
  Reason missing = Reason::none;
  for (const std::uint32_t at : matched_) {
    const Result& one = evidence_.results[at];
    if (lot != check::none && one.lot != lot) {
      continue;
    }
    measuring_.step(StepKind::result, at).span = one.span;
    const Measured value = result_value(check, one);
    if (!value.good()) {
      missing = missing == Reason::none ? value.reason : missing;
      continue;
    }
    values_.push_back(value.amount);
    places_.push_back(value.span.known() ? value.span : one.span);
  }
  Judged open;
  if (missing != Reason::none) {
    open = {Verdict::not_shown, missing};
  } else if (values_.size() < check.specimens) {
    open = {Verdict::not_shown, Reason::too_few_specimens};
  }
  if (check.statistic == syntax::StatisticKind::each) {
    Judged out = each(check, index);
    also(out, open);
    return out;
  }
  return open.verdict == Verdict::complies ? compare(check, index, statistic(check), places_.front()) : open;
}

// Words are judged one by one; only their number is a matter of results.
Judged Evaluator::words_over_results(const plan::Check& check, std::uint32_t index) {
  Judged out;
  std::map<std::uint32_t, std::size_t> lots;
  const bool by_lot = check.over == syntax::Over::results_of_lot;
  plan::Check single = check;
  single.specimens = 1;
  for (const std::uint32_t at : matched_) {
    const Result& one = evidence_.results[at];
    measuring_.step(StepKind::result, at).span = one.span;
    also(out, words(single, index, one));
    if (by_lot && one.lot == 0) {
      also(out, {Verdict::not_shown, Reason::lot_not_stated});
    }
    ++lots[by_lot ? one.lot : 0];
  }
  for (const auto& [lot, count] : lots) {
    if (count < check.specimens) {
      also(out, {Verdict::not_shown, Reason::too_few_specimens});
    }
  }
  return out;
}

Judged Evaluator::over_results(const plan::Check& check, std::uint32_t index) {
  if (check.words != 0) {
    return words_over_results(check, index);
  }
  if (check.over == syntax::Over::results) {
    return over_results(check, index, check::none);
  }
  Judged out;
  std::vector<std::uint32_t> lots;
  for (const std::uint32_t at : matched_) {
    const std::uint32_t lot = evidence_.results[at].lot;
    if (lot == 0) {
      also(out, {Verdict::not_shown, Reason::lot_not_stated});
    } else if (std::find(lots.begin(), lots.end(), lot) == lots.end()) {
      lots.push_back(lot);
      also(out, over_results(check, index, lot));
    }
  }
  return out;
}

}  // namespace plumbrule::evaluate
