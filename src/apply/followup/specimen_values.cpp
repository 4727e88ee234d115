#include "apply/followup/specimen_values.hpp"

#include <algorithm>

#include "judge/explain/wording.hpp"

namespace plumbrule::followup {
namespace {

template <typename Wanted>
std::size_t own_count(const Specimen& specimen, const Wanted& wanted) {
  const auto counts = [&](const Value& value) { return wanted(value) && own(specimen, value); };
  return static_cast<std::size_t>(std::count_if(specimen.readings.begin(), specimen.readings.end(), counts)) +
         (counts(specimen.direct) ? 1U : 0U);
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

}  // namespace

bool has_readings(const Specimen& specimen) {
  return std::any_of(specimen.readings.begin(), specimen.readings.end(),
                     [&](const Value& value) { return value.usable() && own(specimen, value); });
}

void SpecimenComparer::compare(const Pair& pair, Differences& out) {
  const std::string of = subject(both_.after, both_.later(pair));
  for (const SpecimenPair& one :
       match_specimens(both_.before, both_.earlier(pair), both_.after, both_.later(pair), both_.retested(pair))) {
    if (one.before != check::none && one.after != check::none) {
      compare_pair(pair, one, out);
      continue;
    }
    const bool removed = one.after == check::none;
    const auto& all = removed ? both_.earlier(pair).specimens : both_.later(pair).specimens;
    const std::uint32_t index = removed ? one.before : one.after;
    const std::string name = specimen_name(all[index], index, 2);
    const std::string given =
        given_text(removed ? both_.before : both_.after, both_.measure(both_.later(pair)), all[index]);
    both_.out.values.push_back({of, name, removed ? given : "not there", removed ? "not there" : given, "",
                                removed ? all[index].span : Span{}, removed ? Span{} : all[index].span});
    (removed ? out.removed : out.added).push_back(index);
  }
}

// The name of a specimen that stands in both, and that it has another label.
std::string SpecimenComparer::compare_labels(const Pair& pair, const SpecimenPair& specimen) {
  const Specimen& from = both_.earlier(pair).specimens[specimen.before];
  const Specimen& to = both_.later(pair).specimens[specimen.after];
  std::string name = specimen_name(to, specimen.after, both_.later(pair).specimens.size());
  if (from.label == to.label) {
    return name;
  }
  const auto stated = [](const std::string& text) { return text.empty() ? not_stated : text; };
  const std::string what = (name.empty() ? specimen_name(from, specimen.before, 2) : name) + ", label";
  both_.out.values.push_back({subject(both_.after, both_.later(pair)), what, stated(from.label), stated(to.label), "",
                              from.label_span, to.label_span});
  return name + (from.label.empty() ? "" : " (before: " + from.label + ")");
}

SpecimenComparer::Readings SpecimenComparer::compare_readings(const Pair& pair, const SpecimenPair& specimen,
                                                              const std::string& name) {
  const Specimen& from = both_.earlier(pair).specimens[specimen.before];
  const Specimen& to = both_.later(pair).specimens[specimen.after];
  const check::Measure& of = both_.measure(both_.later(pair));
  Readings out;
  const auto compare = [&](const std::string& what, const Value& left, const Value& right, const check::Type& type) {
    const bool its = own(to, right) || own(from, left);
    const std::string full = its && !name.empty() ? name + ", " + what : what;
    const std::string of_what =
        its ? subject(both_.after, both_.later(pair)) : shared_subject(both_.after, both_.later(pair));
    const Difference change = values_.value(of_what, full, left, right, type);
    out.unchanged = out.unchanged && change != Difference::other;
    if (change == Difference::converted) {
      out.converted.push_back(both_.out.values.size() - 1);
    } else if (change == Difference::other && left.usable()) {
      out.altered.push_back(both_.out.values.size() - 1);
    }
  };
  for (std::size_t at = 0; at < to.readings.size(); ++at) {
    compare(explain::spaced(of.readings[at].name), from.readings[at], to.readings[at], of.readings[at].type);
  }
  compare("value", from.direct, to.direct, of.type);
  return out;
}

void SpecimenComparer::compare_pair(const Pair& pair, const SpecimenPair& specimen, Differences& out) {
  const Specimen& from = both_.earlier(pair).specimens[specimen.before];
  const Specimen& to = both_.later(pair).specimens[specimen.after];
  const std::string name = compare_labels(pair, specimen);
  const Readings found = compare_readings(pair, specimen, name);
  out.converted.insert(out.converted.end(), found.converted.begin(), found.converted.end());
  if (has_readings(from) && !has_readings(to) && to.direct.usable()) {
    ++out.bare;
  } else {
    out.altered.insert(out.altered.end(), found.altered.begin(), found.altered.end());
  }
  if (!found.converted.empty() && found.unchanged) {
    worked_out(pair, specimen, name);
  }
  noted_.circumstances(pair, subject(both_.after, both_.later(pair)), name.empty() ? name : name + ", ",
                       from.circumstances, to.circumstances, out);
  ++out.compared;
  if (found.unchanged && own_count(to, [](const Value& one) { return one.usable(); }) > 0) {
    const std::size_t numbers = own_count(to, [](const Value& one) { return one.kind == Value::Kind::quantity; });
    ++out.unchanged;
    out.numbers += numbers;
    out.most = std::max(out.most, numbers);
  }
}

// What is the same as far as its digits go may give another result.
void SpecimenComparer::worked_out(const Pair& pair, const SpecimenPair& specimen, const std::string& name) {
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
  const check::Type& type = both_.measure(to).type;
  const auto left = evaluate::specimen_value(both_.before.plan, both_.before.evidence, from, specimen.before);
  const auto right = evaluate::specimen_value(both_.after.plan, both_.after.evidence, to, specimen.after);
  if (!both_.measure(to).computed || type.is_word() || !left.good() || !right.good()) {
    return;
  }
  const auto number = [](const quantity::Amount& amount) {
    return Value{Value::Kind::quantity, amount, check::none, {}};
  };
  const Value then = number(left.amount);
  const Value now = number(right.amount);
  if (value_key(both_.before, then, type) == value_key(both_.after, now, type)) {
    return;
  }
  both_.out.values.push_back({subject(both_.after, to), (name.empty() ? "" : name + ", ") + "result worked out",
                              explain::show(left.amount, both_.before.evidence.units),
                              explain::show(right.amount, both_.after.evidence.units), values_.apart(then, now, type),
                              from.specimens[specimen.before].span, to.specimens[specimen.after].span});
}

}  // namespace plumbrule::followup
