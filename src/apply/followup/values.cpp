// Which values differ, and where.

#include <algorithm>

#include "judge/explain/wording.hpp"
#include "apply/followup/comparer.hpp"

namespace plumbrule::followup {
namespace {

using quantity::Bound;
using quantity::Decimal;

std::string worded(const Context& context, const Value& value) {
  const std::string text = written(context, value.span);
  return text.empty() ? not_stated : text;
}

bool exact(const Value& value) { return value.kind == Value::Kind::quantity && value.amount.bound == Bound::exact; }

template <typename Wanted>
std::size_t own_count(const Specimen& specimen, const Wanted& wanted) {
  const auto counts = [&](const Value& value) { return wanted(value) && own(specimen, value); };
  return static_cast<std::size_t>(std::count_if(specimen.readings.begin(), specimen.readings.end(), counts)) +
         (counts(specimen.direct) ? 1U : 0U);
}

bool has_readings(const Specimen& specimen) {
  return std::any_of(specimen.readings.begin(), specimen.readings.end(),
                     [&](const Value& value) { return value.usable() && own(specimen, value); });
}

// The only value, as reported or as that of a single specimen.
const Value* only_value(const Result& result) {
  if (result.specimens.empty()) {
    return result.reported.kind == Value::Kind::missing || result.replicates > 1 ? nullptr : &result.reported;
  }
  const Specimen& one = result.specimens.front();
  const bool only = result.specimens.size() == 1 && result.reported.kind == Value::Kind::missing && !has_readings(one);
  return only && one.direct.kind != Value::Kind::missing ? &one.direct : nullptr;
}

std::string specimen_name(const Specimen& specimen, std::uint32_t index, std::size_t count) {
  return !specimen.label.empty() ? "specimen " + specimen.label
         : count > 1             ? "specimen " + std::to_string(index + 1)
                                 : "";
}

// "before 801.4 g, after 788.0 g", "14 kg-cm".
std::string given_text(const Context& context, const check::Measure& measure, const Specimen& specimen) {
  std::string out;
  const auto add = [&](const std::string& name, const Value& value) {
    if (value.kind != Value::Kind::missing && own(specimen, value)) {
      out += (out.empty() ? "" : ", ") + name + written(context, value.span);
    }
  };
  for (std::size_t at = 0; at < specimen.readings.size(); ++at) {
    add(explain::spaced(measure.readings[at].name) + " ", specimen.readings[at]);
  }
  add("", specimen.direct);
  return out.empty() ? "submitted" : out;
}

std::string value_text(const Context& context, const Result& result) {
  const std::size_t count = result.specimens.size();
  if (result.reported.kind != Value::Kind::missing) {
    return written(context, result.reported.span);
  }
  if (count == 1 && result.specimens.front().direct.kind != Value::Kind::missing) {
    return written(context, result.specimens.front().direct.span);
  }
  return std::to_string(count) + (count == 1 ? " specimen" : " specimens");
}

}  // namespace

// In the unit of both if they are written in one, else in the declared one.
std::string Comparer::difference(const Value& from, const Value& to, const check::Type& type) const {
  if (!exact(from) || !exact(to)) {
    return {};
  }
  const quantity::UnitTable& earlier = before_.evidence.units;
  const quantity::UnitTable& later = after_.evidence.units;
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

Comparer::Change Comparer::value(const std::string& of, const std::string& what, const Value& from, const Value& to,
                                 const check::Type& type) {
  if (same(before_, from, after_, to, type)) {
    return Change::none;
  }
  const bool other_unit = converted(before_, from, after_, to);
  out_.values.push_back({of, what, worded(before_, from), worded(after_, to),
                         other_unit ? "the same as far as its digits go" : difference(from, to, type), from.span,
                         to.span});
  return other_unit ? Change::converted : Change::other;
}

void Comparer::readings(const Pair& pair, const SpecimenPair& specimen, Differences& out) {
  const Specimen& from = earlier(pair).specimens[specimen.before];
  const Specimen& to = later(pair).specimens[specimen.after];
  const check::Measure& of = measure(later(pair));
  std::string name = specimen_name(to, specimen.after, later(pair).specimens.size());
  if (from.label != to.label) {
    const auto stated = [](const std::string& text) { return text.empty() ? not_stated : text; };
    const std::string what = (name.empty() ? specimen_name(from, specimen.before, 2) : name) + ", label";
    out_.values.push_back(
        {subject(after_, later(pair)), what, stated(from.label), stated(to.label), "", from.label_span, to.label_span});
    name += from.label.empty() ? "" : " (before: " + from.label + ")";
  }
  bool unchanged = true;
  bool coarser = false;
  std::vector<std::size_t> altered;
  const auto compare = [&](const std::string& what, const Value& left, const Value& right, const check::Type& type) {
    const bool its = own(to, right) || own(from, left);
    const std::string full = its && !name.empty() ? name + ", " + what : what;
    const std::string of_what = its ? subject(after_, later(pair)) : shared_subject(after_, later(pair));
    const Change change = value(of_what, full, left, right, type);
    coarser = coarser || change == Change::converted;
    unchanged = unchanged && change != Change::other;
    if (change == Change::converted) {
      out.converted.push_back(out_.values.size() - 1);
    } else if (change == Change::other && left.usable()) {
      altered.push_back(out_.values.size() - 1);
    }
  };
  for (std::size_t at = 0; at < to.readings.size(); ++at) {
    compare(explain::spaced(of.readings[at].name), from.readings[at], to.readings[at], of.readings[at].type);
  }
  compare("value", from.direct, to.direct, of.type);
  if (has_readings(from) && !has_readings(to) && to.direct.usable()) {
    ++out.bare;
  } else {
    out.altered.insert(out.altered.end(), altered.begin(), altered.end());
  }
  if (coarser && unchanged) {
    worked_out(pair, specimen, name);
  }
  circumstances(pair, subject(after_, later(pair)), name.empty() ? name : name + ", ", from.circumstances,
                to.circumstances, out);
  ++out.compared;
  if (unchanged && own_count(to, [](const Value& one) { return one.usable(); }) > 0) {
    const std::size_t numbers = own_count(to, [](const Value& one) { return one.kind == Value::Kind::quantity; });
    ++out.unchanged;
    out.numbers += numbers;
    out.most = std::max(out.most, numbers);
  }
}

// What is the same as far as its digits go may give another result.
void Comparer::worked_out(const Pair& pair, const SpecimenPair& specimen, const std::string& name) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  const check::Type& type = measure(to).type;
  const auto left = evaluate::specimen_value(before_.plan, before_.evidence, from, specimen.before);
  const auto right = evaluate::specimen_value(after_.plan, after_.evidence, to, specimen.after);
  if (!measure(to).computed || type.is_word() || !left.good() || !right.good()) {
    return;
  }
  const auto number = [](const quantity::Amount& amount) {
    return Value{Value::Kind::quantity, amount, check::none, {}};
  };
  const Value then = number(left.amount);
  const Value now = number(right.amount);
  if (value_key(before_, then, type) == value_key(after_, now, type)) {
    return;
  }
  out_.values.push_back({subject(after_, to), (name.empty() ? "" : name + ", ") + "result worked out",
                         explain::show(left.amount, before_.evidence.units),
                         explain::show(right.amount, after_.evidence.units), difference(then, now, type),
                         from.specimens[specimen.before].span, to.specimens[specimen.after].span});
}

void Comparer::specimens(const Pair& pair, Differences& out) {
  const std::string of = subject(after_, later(pair));
  for (const SpecimenPair& one : match_specimens(before_, earlier(pair), after_, later(pair), retested(pair))) {
    if (one.before != check::none && one.after != check::none) {
      readings(pair, one, out);
      continue;
    }
    const bool removed = one.after == check::none;
    const auto& all = removed ? earlier(pair).specimens : later(pair).specimens;
    const std::uint32_t index = removed ? one.before : one.after;
    const std::string name = specimen_name(all[index], index, 2);
    const std::string given = given_text(removed ? before_ : after_, measure(later(pair)), all[index]);
    out_.values.push_back({of, name, removed ? given : "not there", removed ? "not there" : given, "",
                           removed ? all[index].span : Span{}, removed ? Span{} : all[index].span});
    (removed ? out.removed : out.added).push_back(index);
  }
}

// A value that readings stand behind is judged by them. Where they are new, it is left to them unless it is written
// anew or the result fails no more.
void Comparer::reported(const Pair& pair, Differences& out) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  const Change change = value(subject(after_, to), from.declared ? "declared value" : "reported value", from.reported,
                              to.reported, measure(to).type);
  out.reported = change == Change::other;
  if (change == Change::converted) {
    out.converted.push_back(out_.values.size() - 1);
  }
  const bool stands = to.specimens.empty() || to.reported.usable() || cured(pair);
  if (out.reported && from.specimens.empty() && from.reported.usable() && stands) {
    out.altered.push_back(out_.values.size() - 1);
  }
}

// What is said of a result that states neither condition nor design value nor lot.
std::string Comparer::unplaced(const Result& result, const Result& other) const {
  const bool conditions = !measure(result).conditions.empty() && result.conditions.empty();
  return conditions                                     ? "no stated condition"
         : other.at.empty() && other.record.lot.given() ? "no stated lot"
                                                        : "the job mix";
}

// A single value that was reported is given as that of a specimen, or the other way round: nothing is lost.
bool Comparer::restyled(const Pair& pair, Differences& out) {
  const Value* from = only_value(earlier(pair));
  const Value* to = only_value(later(pair));
  if (from == nullptr || to == nullptr || earlier(pair).specimens.empty() == later(pair).specimens.empty()) {
    return false;
  }
  const Change change = value(subject(after_, later(pair)), "value", *from, *to, measure(later(pair)).type);
  if (change == Change::converted) {
    out.converted.push_back(out_.values.size() - 1);
  } else if (change == Change::other && from->usable()) {
    out.altered.push_back(out_.values.size() - 1);
  }
  out.restyled = true;
  ++out.compared;
  if (change != Change::other && to->kind == Value::Kind::quantity) {
    out.unchanged = out.numbers = out.most = 1;
  }
  return true;
}

Comparer::Differences Comparer::differences(const Pair& pair) {
  Differences out;
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  const bool other_measure = from.measure != to.measure;
  const std::string left = other_measure ? subject(before_, from) : placing(before_, from);
  const std::string right = other_measure ? subject(after_, to) : placing(after_, to);
  if (pair.moved && left != right) {
    out_.values.push_back({measure(to).title, "stands for", left.empty() ? unplaced(from, to) : left,
                           right.empty() ? unplaced(to, from) : right, "", from.span, to.span});
  }
  if (other_measure) {
    return out;  // its readings have other names
  }
  if (!restyled(pair, out)) {
    specimens(pair, out);
    reported(pair, out);
  }
  beside(pair, out);
  return out;
}

void Comparer::classes() {
  for (std::size_t at = 0; at < after_.evidence.classes.size(); ++at) {
    const Value& from = before_.evidence.classes[at];
    const Value& to = after_.evidence.classes[at];
    if (from.kind != to.kind || from.word != to.word) {
      out_.values.push_back({"class", explain::spaced(after_.rules.categories[at].name), worded(before_, from),
                             worded(after_, to), "", from.span, to.span});
    }
  }
}

void Comparer::identity() {
  const evidence::Identity& from = before_.evidence.identity;
  const evidence::Identity& to = after_.evidence.identity;
  const auto compare = [&](const std::string& what, const std::string& left, const std::string& right,
                           const Span& before, const Span& after) {
    if (left != right) {
      const auto stated = [](const std::string& text) { return text.empty() ? not_stated : explain::one_line(text); };
      out_.values.push_back({"submittal", what, stated(left), stated(right), "", before, after});
    }
  };
  compare("project", from.project, to.project, from.project_place, to.project_place);
  compare("mix", from.mix, to.mix, from.mix_place, to.mix_place);
  compare("laboratory", from.laboratory, to.laboratory, from.laboratory_place, to.laboratory_place);
  compare("prepared by", from.prepared_by, to.prepared_by, from.prepared_by_place, to.prepared_by_place);
  compare("note", from.note, to.note, from.note_place, to.note_place);
}

void Comparer::results() {
  for (const std::uint32_t at : matching_.removed) {
    const Result& one = before_.evidence.results[at];
    out_.results.push_back({false, subject(before_, one), value_text(before_, one), one.span});
  }
  for (const std::uint32_t at : matching_.added) {
    const Result& one = after_.evidence.results[at];
    out_.results.push_back({true, subject(after_, one), value_text(after_, one), one.span});
  }
}

}  // namespace plumbrule::followup
