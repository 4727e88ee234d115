// Tables: by a word, and by a value.

#include "judge/evaluate/bounds.hpp"
#include "judge/evaluate/measuring.hpp"

namespace plumbrule::evaluate {
namespace {

// Whether all values that the amount allows meet the edge (complies), none does (fails), or some do.
Verdict meets(const plan::Table& table, std::size_t edge, const Amount& amount) {
  return table.rising ? compare_high(amount, table.edges[edge]) : compare_low(amount, table.edges[edge]);
}

// The row that takes every value which the amount allows; none if several rows do, or if no row takes some of them.
std::uint32_t row_of(const plan::Table& table, const Amount& amount) {
  std::uint32_t row = 0;
  for (; row < table.edges.size(); ++row) {
    const Verdict met = meets(table, row, amount);
    if (met != Verdict::fails) {
      return met == Verdict::complies ? row : check::none;
    }
  }
  return table.total() ? row : check::none;
}

}  // namespace

Reason Measuring::look_up(const plan::Op& op, const Frame& frame) {
  if (frame.specimen == nullptr) {
    return Reason::missing_reading;
  }
  const Value& key = frame.specimen->readings[op.reading];
  if (key.kind != Value::Kind::word) {
    return key.kind == Value::Kind::missing ? Reason::missing_reading : Reason::unusable_value;
  }
  stack_.push_back({plan_.tables[op.index].values[key.word], 0, Bound::exact});
  Step& noted = step(StepKind::lookup, op.index);
  noted.amount = stack_.back();
  noted.other = key.word;
  return Reason::none;
}

// Of a bound that lies in several rows nothing is known; but where a value that it allows may have no row at all, there
// is no value either, since the value itself would have none.
Reason Measuring::grade(const plan::Op& op) {
  const plan::Table& table = plan_.tables[op.index];
  Amount& top = stack_.back();
  const std::uint32_t row = row_of(table, top);
  const bool certain = table.total() || meets(table, table.edges.size() - 1, top) == Verdict::complies;
  Step& noted = step(StepKind::graded, op.index);
  noted.amount = top;
  noted.other = row;
  if (row == check::none && !certain) {
    noted.outcome = Verdict::not_shown;
    noted.reason = Reason::beyond_table;
    return Reason::beyond_table;
  }
  // What is shown of an unknown value is that of the number beside the bound.
  const std::uint32_t shown = row == check::none ? row_of(table, {top.value, top.unit, Bound::exact}) : row;
  const Decimal value = shown == check::none ? Decimal{0} : table.values[shown];
  top = {value, table.unit, row == check::none ? Bound::undetermined : Bound::exact};
  return Reason::none;
}

}  // namespace plumbrule::evaluate
