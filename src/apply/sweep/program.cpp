#include "apply/sweep/program.hpp"

#include <algorithm>

#include "judge/explain/headroom.hpp"

namespace plumbrule::sweep {
namespace {

using evaluate::StepKind;

constexpr std::int64_t unreachable = 2 * digits_end;

ByDecimals all_of(std::int64_t value) {
  ByDecimals out{};
  out.fill(value);
  return out;
}

// The case of the requirement that the classes choose, and nothing if they leave none to judge.
std::optional<plan::Case> chosen_case(const plan::Plan& plan, const evaluate::Review& review) {
  for (const evaluate::Step& step : review.trace) {
    if (step.kind == StepKind::case_chosen && plan.cases[step.index].groups.size() > 0) {
      return plan.cases[step.index];
    }
  }
  return std::nullopt;
}

int decimals_of(const Decimal& value) {
  const Decimal stripped = value.stripped();
  const std::string text = stripped.last_place().text();
  const std::size_t point = text.find('.');
  return point == std::string::npos ? 0 : static_cast<int>(text.size() - point - 1);
}

// The decimals of an end and of the place that it is rounded to; 0 without one.
int finest_of(const std::optional<check::End>& end) {
  const int place = end && end->rounding.place ? decimals_of(*end->rounding.place) : 0;
  return end ? std::max(decimals_of(end->value), place) : 0;
}

// What a program that only pushes numbers and converts them leaves; nothing for any other.
std::optional<Decimal> constant_of(const plan::Plan& plan, const plan::Program& program) {
  std::optional<Decimal> out;
  for (const plan::Op& op : plan::part(plan.ops, program.ops)) {
    if (op.code == plan::OpCode::number && !out) {
      out = plan.numbers[op.index];
    } else if (op.code == plan::OpCode::convert && out) {
      out = quantity::convert(*out, plan.units.at(op.from), plan.units.at(op.to));
    } else {
      return std::nullopt;
    }
  }
  return out;
}

bool is_result_itself(const plan::Plan& plan, const plan::Program& program) {
  return program.ops.size() == 1 && plan.ops[program.ops.begin].code == plan::OpCode::result;
}

// Whether no value can decide it: the statistic or the number of specimens is not what the result states.
bool stays_open(const plan::Check& check, const evidence::Result& result) {
  const bool spread =
      check.statistic == syntax::StatisticKind::range || check.statistic == syntax::StatisticKind::standard_deviation;
  const bool of_specimens = check.statistic == syntax::StatisticKind::each ||
                            check.statistic == syntax::StatisticKind::least ||
                            check.statistic == syntax::StatisticKind::greatest;
  return spread || (of_specimens && result.replicates != 1) || (check.specimens > 1 && result.replicates == 0) ||
         check.specimens > std::max(result.replicates, 1U);
}

}  // namespace

Program::Program(Against against, evidence::Evidence evidence, std::vector<Slot> slots)
    : against_(std::move(against)), evidence_(std::move(evidence)), slots_(std::move(slots)) {
  for (const Slot& slot : slots_) {
    measures_.push_back(evidence_.results[slot.result].measure);
  }
  for (std::uint32_t at = 0; at < against_.plan->requirements.size(); ++at) {
    clauses_.push_back(clause(at));
  }
  probe();
  for (std::uint32_t at = 0; at < clauses_.size(); ++at) {
    if (clauses_[at].kind == ClauseKind::evaluated) {
      evaluated_.push_back(at);
    } else {
      ++compiled_;
    }
  }
}

const Slot* Program::slot_of(std::uint32_t result) const {
  const auto at = std::find_if(slots_.begin(), slots_.end(), [&](const Slot& slot) { return slot.result == result; });
  return at == slots_.end() ? nullptr : &*at;
}

Program::Clause Program::clause(std::uint32_t requirement) {
  const plan::Plan& plan = *against_.plan;
  const evaluate::Review review = evaluate::evaluate_one(plan, evidence_, requirement);
  const auto chosen = chosen_case(plan, review);
  if (!chosen) {
    return {ClauseKind::fixed, review.findings.front().verdict, 0, 0};
  }
  const std::size_t groups = groups_.size();
  const std::size_t comparisons = comparisons_.size();
  for (std::uint32_t group = chosen->groups.begin; group < chosen->groups.end; ++group) {
    const plan::Group& of = plan.groups[group];
    bool ready = !of.has_ends && of.checks.size() > 0;
    groups_.push_back({static_cast<std::uint32_t>(comparisons_.size()), 0});
    for (std::uint32_t check = of.checks.begin; ready && check < of.checks.end; ++check) {
      ready = compare(requirement, check, comparisons_.emplace_back());
    }
    groups_.back().end = static_cast<std::uint32_t>(comparisons_.size());
    if (!ready) {
      groups_.resize(groups);
      comparisons_.resize(comparisons);
      return {};
    }
  }
  return {ClauseKind::compared, Verdict::not_shown, static_cast<std::uint32_t>(groups),
          static_cast<std::uint32_t>(groups_.size())};
}

// False: only the evaluator can judge it.
bool Program::compare(std::uint32_t requirement, std::uint32_t check, Comparison& out) const {
  const plan::Check& of = against_.plan->checks[check];
  if (of.over != syntax::Over::specimens || of.has_tolerance || of.is_staged) {
    return false;
  }
  const evaluate::Placed placed = evaluate::placed(*against_.plan, evidence_, requirement, check);
  if (placed.open || placed.results.size() > 1) {
    return false;
  }
  if (placed.results.empty()) {
    out.fixed = Verdict::not_shown;
    return true;
  }
  const Slot* const slot = slot_of(placed.results.front());
  if (slot != nullptr) {
    return compare_number(requirement, check, *slot, out);
  }
  if (of.words == 0) {
    return false;
  }
  const evaluate::Review review = evaluate::evaluate_one(*against_.plan, evidence_, requirement);
  for (const evaluate::Step& step : review.trace) {
    if (step.kind == StepKind::check_verdict && step.index == check) {
      out.fixed = step.outcome;
      return true;
    }
  }
  return false;
}

bool Program::compare_number(std::uint32_t requirement, std::uint32_t check, const Slot& slot, Comparison& out) const {
  const plan::Check& of = against_.plan->checks[check];
  const evidence::Result& result = evidence_.results[slot.result];
  const quantity::UnitId unit = against_.plan->measures[of.measure].type.unit;
  if (of.words != 0 || result.reported.amount.unit != unit || of.value_unit != unit || of.unit != unit) {
    return false;
  }
  if (stays_open(of, result)) {
    out.fixed = Verdict::not_shown;
    return true;
  }
  out.column = slot.column;
  out.check = check;
  const ByDecimals least = of.has_low ? smallest_not_below(of.low.value, of.low.inclusive) : all_of(-unreachable);
  const ByDecimals most = of.has_high ? largest_not_above(of.high.value, of.high.inclusive) : all_of(unreachable);
  for (std::size_t at = 0; at < out.edges.size(); ++at) {
    out.edges.at(at) = {-unreachable, unreachable, least.at(at), most.at(at)};
  }
  return refusals(of.measure, out) &&
         scale(explain::assertion_of(*against_.rules, *against_.plan, requirement, check), out);
}

// A refused number is no value. Only refusals of the value itself by a fixed bound; those that need readings are not
// asked of a reported value.
bool Program::refusals(check::MeasureId measure, Comparison& out) const {
  const plan::Plan& plan = *against_.plan;
  for (const plan::Refusal& one : plan::part(plan.refusals, plan.measures[measure].refusals)) {
    if (one.needs_readings) {
      continue;
    }
    const auto bound = constant_of(plan, one.right);
    if (!bound || !is_result_itself(plan, one.left)) {
      return false;
    }
    const bool above =
        one.comparison == syntax::Comparison::greater || one.comparison == syntax::Comparison::greater_or_equal;
    const bool below =
        one.comparison == syntax::Comparison::less || one.comparison == syntax::Comparison::less_or_equal;
    const bool keeps_bound =
        one.comparison == syntax::Comparison::greater || one.comparison == syntax::Comparison::less;
    if (!above && !below) {
      return false;
    }
    const ByDecimals edge = above ? largest_not_above(*bound, keeps_bound) : smallest_not_below(*bound, keeps_bound);
    for (std::size_t at = 0; at < edge.size(); ++at) {
      std::int64_t& end = above ? out.edges.at(at).refused_above : out.edges.at(at).refused_below;
      end = above ? std::min(end, edge.at(at)) : std::max(end, edge.at(at));
    }
  }
  return true;
}

// False: the printed limit or its place has too many digits.
bool Program::scale(const check::Assertion& assertion, Comparison& out) const {
  const check::Limit& limit = assertion.limit;
  out.has_low = limit.low.has_value();
  out.has_high = limit.high.has_value();
  out.has_margin = explain::is_relative(*against_.rules, assertion);
  out.low_ties = limit.low ? limit.low->rounding.ties : quantity::Ties{};
  out.high_ties = limit.high ? limit.high->rounding.ties : quantity::Ties{};
  const int finest = std::max(finest_of(limit.low), finest_of(limit.high));
  for (int decimals = 0; decimals <= most_decimals && finest <= most_decimals; ++decimals) {
    const auto at = scaled_to(limit, decimals, std::max(decimals, finest));
    if (!at) {
      return false;
    }
    out.scaled.at(static_cast<std::size_t>(decimals)) = *at;
  }
  return finest <= most_decimals;
}

std::optional<Program::Scaled> Program::scaled_to(const check::Limit& limit, int decimals, int common) {
  const auto size = [](std::int64_t end) { return Divisor(end < 0 ? -end : end); };
  const auto factor = whole_at(Decimal{1}, common - decimals);
  const auto low = limit.low ? whole_at(limit.low->value, common) : std::optional<std::int64_t>(0);
  const auto high = limit.high ? whole_at(limit.high->value, common) : std::optional<std::int64_t>(0);
  const auto low_place = place_at(limit.low, decimals, common);
  const auto high_place = place_at(limit.high, decimals, common);
  if (!factor || !low || !high || !low_place || !high_place) {
    return std::nullopt;
  }
  return Scaled{*factor, *low, *high, Divisor(*low_place), Divisor(*high_place), size(*low), size(*high)};
}

// 0: there is none, or every number with so many decimals is a multiple of it.
std::optional<std::int64_t> Program::place_at(const std::optional<check::End>& end, int decimals, int common) {
  if (!end || !end->rounding.place) {
    return 0;
  }
  const auto one = whole_at(Decimal{1}.shifted(-decimals), common);
  const auto place = whole_at(*end->rounding.place, common);
  return one && place && *one % *place == 0 ? std::optional<std::int64_t>(0) : place;
}

std::vector<Cell> Program::own_cells() const {
  std::vector<Cell> out;
  for (const Slot& slot : slots_) {
    out.resize(std::max<std::size_t>(out.size(), slot.column + 1));
    out[slot.column] = {CellKind::number, {1, 0}, {}};
  }
  return out;
}

// The one comparison of a clause that has no other; nullptr if there are several or its verdict is fixed.
Program::Comparison* Program::only_comparison(const Clause& clause) {
  if (clause.kind != ClauseKind::compared || clause.end != clause.begin + 1) {
    return nullptr;
  }
  const Group& group = groups_[clause.begin];
  return group.end == group.begin + 1 && comparisons_[group.begin].column != check::none ? &comparisons_[group.begin]
                                                                                         : nullptr;
}

void Program::defer(Deferred& all) {
  for (const Clause& clause : clauses_) {
    if (Comparison* const only = only_comparison(clause)) {
      only->counts = &all[(std::uint64_t{only->check} << 32U) | only->column];
    }
  }
}

void Program::settle(SpecificationTally& tally) {
  for (std::size_t at = 0; at < clauses_.size(); ++at) {
    const Comparison* const only = only_comparison(clauses_[at]);
    if (only == nullptr || only->counts == nullptr) {
      continue;
    }
    only->counts->take([&](const ShortNumber& number, std::uint64_t times) {
      if (const std::int32_t one = margin(*only, number); one != no_margin) {
        tally.clauses[at].margins.add(one, times);
      }
    });
  }
}

// At the limits, and just beside them, the evaluator is asked too; a clause that it judges otherwise is left to it.
void Program::probe() {
  for (std::uint32_t at = 0; at < clauses_.size(); ++at) {
    if (clauses_[at].kind == ClauseKind::compared && !agrees(at)) {
      clauses_[at] = {};
      ++mistrusted_;
    }
  }
}

bool Program::agrees(std::uint32_t requirement) {
  std::vector<Cell> cells = own_cells();
  for (std::uint32_t group = clauses_[requirement].begin; group < clauses_[requirement].end; ++group) {
    for (std::uint32_t at = groups_[group].begin; at < groups_[group].end; ++at) {
      if (comparisons_[at].column != check::none && !agrees_at(requirement, cells, comparisons_[at])) {
        return false;
      }
    }
  }
  return true;
}

bool Program::agrees_at(std::uint32_t requirement, std::vector<Cell>& cells, const Comparison& comparison) {
  for (const std::size_t decimals : {std::size_t{0}, std::size_t{1}, std::size_t{3}}) {
    const Edges& edges = comparison.edges.at(decimals);
    for (const std::int64_t edge : {edges.least, edges.most, edges.refused_below, edges.refused_above}) {
      if (!agrees_beside(requirement, cells, comparison.column, edge, static_cast<std::uint8_t>(decimals))) {
        return false;
      }
    }
  }
  cells[comparison.column].kind = CellKind::absent;
  put_in(cells);
  const bool same = run(clauses_[requirement], cells).verdict == evaluate(requirement).verdict;
  cells[comparison.column] = {CellKind::number, {1, 0}, {}};
  put_in(cells);
  return same;
}

bool Program::agrees_beside(std::uint32_t requirement, std::vector<Cell>& cells, std::uint32_t column,
                            std::int64_t edge, std::uint8_t decimals) {
  for (const std::int64_t digits : {edge - 1, edge, edge + 1}) {
    if (digits <= -digits_end || digits >= digits_end) {
      continue;
    }
    cells[column].number = {static_cast<std::int32_t>(digits), decimals};
    put_in(cells);
    const Judged ours = run(clauses_[requirement], cells);
    const Judged theirs = evaluate(requirement);
    if (ours.verdict != theirs.verdict || ours.margin != theirs.margin) {
      return false;
    }
  }
  return true;
}

}  // namespace plumbrule::sweep
