// Which trials a demand is about (language.md, section 9.2).

#include <algorithm>
#include <array>
#include <chrono>

#include "trial_judge.hpp"

namespace plumbrule::oracle {
namespace {

// Not known whether the trial is about the demand: then the demand cannot be shown to hold by the others.
bool unplaced(Why why) {
  return why == Why::condition_not_stated || why == Why::unusable_value || why == Why::design_not_stated ||
         why == Why::date_not_stated;
}

int telling(Why why) {
  constexpr std::array order{Why::other_conditions, Why::other_design,         Why::too_old,
                             Why::date_not_stated,  Why::condition_not_stated, Why::design_not_stated,
                             Why::unusable_value};
  const auto* const at = std::find(order.begin(), order.end(), why);
  return at == order.end() ? 0 : static_cast<int>(at - order.begin()) + 1;
}

}  // namespace

Why TrialJudge::conditions(const Demand& demand, const Conditions& stated) {
  Why out = Why::none;
  for (const WantedCondition& wanted : demand.conditions) {
    const auto at = stated.find(wanted.name);
    if (at == stated.end() || !at->second.usable()) {
      out = at == stated.end() ? Why::condition_not_stated : Why::unusable_value;
      continue;
    }
    bool meets = at->second.word == wanted.word;
    if (wanted.word.empty()) {
      const Decimal& value = at->second.amount.value();
      const bool low_enough = value <= wanted.value + wanted.within;
      const bool high_enough = value >= wanted.value - wanted.within;
      meets = (wanted.end == syntax::ConditionEnd::at_least || low_enough) &&
              (wanted.end == syntax::ConditionEnd::at_most || high_enough);
    }
    if (!meets) {
      return Why::other_conditions;
    }
  }
  return out;
}

// Counted by the calendar: a month after 31 January is the last day of February.
Why TrialJudge::age(const Trial& trial, const std::optional<syntax::Validity>& validity) const {
  if (!validity) {
    return Why::none;
  }
  if (!trial.tested || !record_.date || *record_.date < *trial.tested) {
    return Why::date_not_stated;
  }
  using namespace std::chrono;
  const sys_days day{days(*trial.tested)};
  if (validity->days) {
    return day + days(validity->count) < sys_days(days(*record_.date)) ? Why::too_old : Why::none;
  }
  const year_month_day from{day};
  const year_month then = year_month(from.year(), from.month()) + months(validity->count);
  const std::chrono::day last = year_month_day_last(then.year(), month_day_last(then.month())).day();
  const sys_days end = sys_days(then / std::min(from.day(), last));
  return end < sys_days(days(*record_.date)) ? Why::too_old : Why::none;
}

Why TrialJudge::apart(const Demand& demand, const Trial& trial, const std::optional<syntax::Validity>& validity) {
  if (trial.declared && (demand.tolerance || demand.statistic.over != syntax::Over::specimens)) {
    return Why::no_result;  // what the job mix says is no test, and is not judged by its own tolerance
  }
  // What differs settles it, whatever else the trial does not state.
  const Why why = conditions(demand, trial.conditions);
  if (why == Why::other_conditions) {
    return why;
  }
  if (trial.standing == Standing::elsewhere) {
    return Why::other_design;
  }
  if (why != Why::none) {
    return why;
  }
  return trial.standing == Standing::unknown ? Why::design_not_stated : age(trial, validity);
}

Judged TrialJudge::demand(const Demand& demand, const std::optional<syntax::Validity>& validity) {
  compared_.clear();
  std::vector<const Trial*> about;
  Why none = Why::no_result;
  for (const Trial& one : record_.trials) {
    if (one.measure != demand.measure->name.value) {
      continue;
    }
    const Why why = apart(demand, one, validity);
    if (why == Why::none) {
      about.push_back(&one);
    } else {
      none = telling(why) > telling(none) ? why : none;
    }
  }
  single_ = about.size() < 2;
  if (about.empty()) {
    return {Verdict::not_shown, none};
  }
  const Why open = unplaced(none) ? none : Why::none;
  single_ = single_ && open == Why::none && demand.statistic.kind != syntax::StatisticKind::each;
  Judged out;
  if (demand.statistic.over == syntax::Over::specimens) {
    for (const Trial* one : about) {
      also(out, trial(demand, *one));
    }
  } else {
    sample_ = "all";
    out = demand.statistic.over == syntax::Over::results ? trials(demand, about) : lots(demand, about);
  }
  also(out, open == Why::none ? Judged{} : Judged{Verdict::not_shown, open});
  return out;
}

}  // namespace plumbrule::oracle
