#include <algorithm>

#include "apply/sweep/program.hpp"
#include "judge/explain/headroom.hpp"

namespace plumbrule::sweep {
namespace {

int rank(Verdict verdict) { return verdict == Verdict::fails ? 2 : verdict == Verdict::not_shown ? 1 : 0; }

}  // namespace

inline std::int64_t Program::Divisor::into(std::int64_t number) const {
  if (number >= 0 && number <= UINT32_MAX &&
      value <= UINT32_MAX) {  // nearly always, and a division of 32 bits is cheap
    return static_cast<std::uint32_t>(number) / static_cast<std::uint32_t>(value);
  }
  auto guess = static_cast<std::int64_t>(static_cast<double>(number) * inverse);
  while (guess * value > number) {
    --guess;
  }
  while ((guess + 1) * value <= number) {
    ++guess;
  }
  return guess;
}

// To a multiple of the place: numbers have at most sixteen digits here.
inline std::int64_t Program::rounded(std::int64_t value, const Divisor& place, quantity::Ties ties) {
  const std::int64_t size = value < 0 ? -value : value;
  const std::int64_t whole = place.into(size);
  const std::int64_t twice = 2 * (size - whole * place.value);
  const bool tie_goes_up = ties == quantity::Ties::up || (whole & 1) != 0;
  const bool up = twice > place.value || (twice == place.value && tie_goes_up);
  const std::int64_t out = (whole + (up ? 1 : 0)) * place.value;
  return value < 0 ? -out : out;
}

inline std::int32_t Program::thousandths(std::int64_t distance, const Divisor& size) {
  if (distance >= 2 * size.value) {
    return size.value == 0 ? no_margin : widest_margin;
  }
  return distance <= -2 * size.value ? (size.value == 0 ? no_margin : -widest_margin)
                                     : static_cast<std::int32_t>(size.into(distance * 1000));
}

std::int32_t Program::margin(const Comparison& comparison, const ShortNumber& number) {
  if (!comparison.has_margin) {
    return no_margin;
  }
  const Scaled& at = comparison.scaled[number.decimals];
  const std::int64_t value = number.digits * at.factor;
  const auto by = [&](const Divisor& place, quantity::Ties ties) {
    return place.value == 0 ? value : rounded(value, place, ties);
  };
  const std::int64_t above_low = comparison.has_low ? by(at.low_place, comparison.low_ties) - at.low : 0;
  const std::int64_t below_high = comparison.has_high ? at.high - by(at.high_place, comparison.high_ties) : 0;
  // As explain::room: outside of the end that is not met, inside the smaller share.
  if (comparison.has_low && (above_low < 0 || !comparison.has_high)) {
    return thousandths(above_low, at.low_size);
  }
  const std::int32_t high = thousandths(below_high, at.high_size);
  const std::int32_t low = comparison.has_low && below_high >= 0 ? thousandths(above_low, at.low_size) : no_margin;
  return low == no_margin || high == no_margin ? std::max(low, high) : std::min(low, high);
}

inline Verdict Program::verdict(const Comparison& comparison, const Cell& cell) {
  const Edges& at = comparison.edges[cell.number.decimals];
  const std::int64_t value = cell.number.digits;
  if (cell.kind != CellKind::number || value < at.refused_below || value > at.refused_above) {
    return Verdict::not_shown;
  }
  return value >= at.least && value <= at.most ? Verdict::complies : Verdict::fails;
}

Program::Judged Program::run(const Comparison& comparison, const Cell& cell) {
  const Verdict out = verdict(comparison, cell);
  return {out, out == Verdict::not_shown ? no_margin : margin(comparison, cell.number)};
}

// As language.md, sections 10.2 and 10.3: all comparisons of a group, one of the groups.
Program::Judged Program::run(const Clause& clause, std::span<const Cell> cells) const {
  Judged out{Verdict::fails, no_margin};
  std::int32_t margins[2] = {INT32_MAX, INT32_MAX};  // of the comparisons that comply, and that fail
  bool open = false;
  bool complies = false;
  for (std::uint32_t at = clause.begin; at < clause.end; ++at) {
    Verdict whole = Verdict::complies;
    for (std::uint32_t one = groups_[at].begin; one < groups_[at].end; ++one) {
      const Comparison& comparison = comparisons_[one];
      const Judged judged = comparison.column == check::none ? Judged{comparison.fixed, no_margin}
                                                             : run(comparison, cells[comparison.column]);
      whole = rank(judged.verdict) > rank(whole) ? judged.verdict : whole;
      if (judged.margin != no_margin) {
        std::int32_t& least = margins[judged.verdict == Verdict::complies ? 0 : 1];
        least = std::min(least, judged.margin);
      }
    }
    complies = complies || whole == Verdict::complies;
    open = open || whole == Verdict::not_shown;
  }
  out.verdict = complies ? Verdict::complies : open ? Verdict::not_shown : Verdict::fails;
  if (out.verdict != Verdict::not_shown) {
    const std::int32_t least = margins[complies ? 0 : 1];
    out.margin = least == INT32_MAX ? no_margin : least;
  }
  return out;
}

// No result without its number: a measure that no clause is about takes its place.
void Program::put_in(std::span<const Cell> cells) {
  for (std::size_t at = 0; at < slots_.size(); ++at) {
    const Cell& cell = cells[slots_[at].column];
    evidence::Result& result = evidence_.results[slots_[at].result];
    const bool there = cell.kind == CellKind::number;
    result.measure = there ? measures_[at] : check::none;
    if (there) {
      result.reported.amount.value = exact(cell.number);
    }
  }
}

Program::Judged Program::evaluate(std::uint32_t requirement) const {
  const evaluate::Review review = evaluate::evaluate_one(*against_.plan, evidence_, requirement);
  const evaluate::Finding& finding = review.findings.front();
  return {finding.verdict, margin_of(explain::least_headroom(*against_.rules, *against_.plan, review, finding))};
}

void Program::run(std::span<const Cell> cells, Judgement& out) {
  out.verdicts.resize(clauses_.size());
  out.margins.resize(clauses_.size());
  if (!evaluated_.empty()) {
    put_in(cells);
  }
  for (std::size_t at = 0; at < clauses_.size(); ++at) {
    const Clause& clause = clauses_[at];
    Judged judged{clause.fixed, no_margin};
    const Comparison* const only =
        clause.kind == ClauseKind::compared ? &comparisons_[groups_[clause.begin].begin] : nullptr;
    if (only != nullptr && only->counts != nullptr) {
      const Cell& cell = cells[only->column];
      judged.verdict = verdict(*only, cell);
      if (judged.verdict != Verdict::not_shown && !only->counts->add(cell.number)) {
        judged.margin = margin(*only, cell.number);
      }
    } else if (only != nullptr) {
      judged = run(clause, cells);
    } else if (clause.kind == ClauseKind::evaluated) {
      judged = evaluate(static_cast<std::uint32_t>(at));
    }
    out.verdicts[at] = judged.verdict;
    out.margins[at] = judged.margin;
  }
  conclude(against_, false, out);
}

}  // namespace plumbrule::sweep
