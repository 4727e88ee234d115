#include "apply/followup/values.hpp"

#include "judge/explain/wording.hpp"

namespace plumbrule::followup {
namespace {

using quantity::Bound;
using quantity::Decimal;

bool exact(const Value& value) { return value.kind == Value::Kind::quantity && value.amount.bound == Bound::exact; }

}  // namespace

// In the unit of both if they are written in one, else in the declared one.
std::string ValueComparer::apart(const Value& from, const Value& to, const check::Type& type) const {
  if (!exact(from) || !exact(to)) {
    return {};
  }
  const quantity::UnitTable& earlier = both_.before.evidence.units;
  const quantity::UnitTable& later = both_.after.evidence.units;
  const bool alike = earlier.at(from.amount.unit).text == later.at(to.amount.unit).text;
  const quantity::UnitId unit = alike ? to.amount.unit : type.unit;
  const auto in_unit = [&](const quantity::Amount& amount, const quantity::UnitTable& units) {
    return quantity::convert(amount.value, units.at(amount.unit), later.at(unit));
  };
  const Decimal apart = (in_unit(to.amount, later) - in_unit(from.amount, earlier)).stripped();
  const std::string sign = apart > Decimal{0} ? "+" : "";
  if (later.at(unit).text == "%") {
    return sign + explain::show(apart) + " percentage points";
  }
  return sign + explain::show({apart, later.difference(unit), Bound::exact}, later);
}

Difference ValueComparer::value(const std::string& of, const std::string& what, const Value& from, const Value& to,
                                const check::Type& type) {
  if (same(both_.before, from, both_.after, to, type)) {
    return Difference::none;
  }
  const bool other_unit = converted(both_.before, from, both_.after, to);
  both_.out.values.push_back({of, what, worded(both_.before, from), worded(both_.after, to),
                              other_unit ? "the same as far as its digits go" : apart(from, to, type), from.span,
                              to.span});
  return other_unit ? Difference::converted : Difference::other;
}

void ValueComparer::day(const Pair& pair, const std::string& what, const evidence::Day& from, const evidence::Day& to) {
  const auto text = [](const Context& context, const evidence::Day& one) {
    const bool readable = one.day != evidence::no_date;
    return !one.span.known() ? std::string(not_stated)
                             : written(context, one.span) + (readable ? "" : " (not readable)");
  };
  const bool unreadable = from.day == evidence::no_date && to.day == evidence::no_date;
  if (from.day != to.day || (unreadable && text(both_.before, from) != text(both_.after, to))) {
    both_.out.values.push_back({shared_subject(both_.after, both_.later(pair)), what, text(both_.before, from),
                                text(both_.after, to), "", from.span, to.span});
  }
}

void ValueComparer::note(const Pair& pair, const std::string& what, const evidence::Note& from,
                         const evidence::Note& to) {
  if (from.text != to.text) {
    both_.out.values.push_back(
        {shared_subject(both_.after, both_.later(pair)), what, worded(from), worded(to), "", from.span, to.span});
  }
}

}  // namespace plumbrule::followup
