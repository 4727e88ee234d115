#include <charconv>

#include "base/diagnose/quote.hpp"
#include "base/diagnose/suggest.hpp"
#include "judge/evidence/binder.hpp"

namespace plumbrule::evidence {

check::MeasureId Binder::find_measure(std::string_view name) const {
  for (std::uint32_t at = 0; at < rules_.measures.size(); ++at) {
    if (rules_.measures[at].name == name) {
      return at;
    }
  }
  return none;
}

std::optional<check::MeasureId> Binder::measure(const Node& entry) {
  const Node* name = entry.find("measure");
  if (name == nullptr || name->kind != Node::Kind::scalar) {
    error(diagnose::Code::submittal_missing_key, entry.span, "found a result without `measure`",
          "say what was measured, such as `measure: abrasion_loss`");
    return std::nullopt;
  }
  const check::MeasureId id = find_measure(name->text);
  const auto& others = others_.measures;
  if (id == none && std::find(others.begin(), others.end(), name->text) == others.end()) {
    std::vector<std::string_view> known(others.begin(), others.end());
    for (const check::Measure& measure : rules_.measures) {
      known.emplace_back(measure.name);
    }
    error(diagnose::Code::submittal_unknown_key, name->span,
          "found " + diagnose::quoted(name->text) + ", no measure of that name",
          diagnose::suggestion(name->text, known));
  }
  return id == none ? std::nullopt : std::optional(id);
}

void Binder::conditions(const Node& under, check::MeasureId measure_id, Result& out) {
  const check::Measure& measure = rules_.measures[measure_id];
  if (!is_map(under, "`under`")) {
    return;
  }
  for (const Entry& entry : under.entries) {
    const auto at = std::find_if(measure.conditions.begin(), measure.conditions.end(),
                                 [&](check::ConditionId id) { return rules_.conditions[id].name == entry.key; });
    if (at != measure.conditions.end()) {
      out.conditions.push_back(condition(entry.value, *at));
      continue;
    }
    std::vector<std::string_view> known;
    for (const check::ConditionId id : measure.conditions) {
      known.emplace_back(rules_.conditions[id].name);
    }
    unknown_key(entry, known, "no condition of `" + measure.name + "`");
    out.misnamed = true;
  }
}

// A result at another value of a design variable (binder content) than the job mix belongs to a trial series.
void Binder::design(const Node& at, Result& out) {
  if (!is_map(at, "`at`")) {
    out.design = Design::unknown;
    out.at.push_back({none, unusable(at.span)});
    return;
  }
  for (const Entry& entry : at.entries) {
    const check::MeasureId id = find_measure(entry.key);
    if (id == none) {
      const auto& others = others_.measures;
      if (std::find(others.begin(), others.end(), entry.key) == others.end()) {
        std::vector<std::string_view> known;
        for (const check::Measure& measure : rules_.measures) {
          known.emplace_back(measure.name);
        }
        unknown_key(entry, known, "no measure of that name");
      }
      out.design = out.design == Design::other ? Design::other : Design::unknown;
      out.at.push_back({none, unusable(entry.value.span)});
      continue;
    }
    const Value here = value(entry.value, rules_.measures[id].type, "`" + entry.key + "`");
    out.at.push_back({id, here});
    const auto target =
        std::find_if(job_mix_.begin(), job_mix_.end(), [&](const auto& one) { return one.first == id; });
    const auto exact = [](const Value& one) {
      return one.kind == Value::Kind::quantity && one.amount.bound == quantity::Bound::exact;
    };
    if (!exact(here) || target == job_mix_.end() || !exact(target->second)) {
      out.design = out.design == Design::other ? Design::other : Design::unknown;
      continue;
    }
    const auto converted = quantity::convert(here.amount.value, out_.units.at(here.amount.unit),
                                             out_.units.at(target->second.amount.unit));
    if (!(converted == target->second.amount.value)) {
      out.design = Design::other;
    }
  }
}

void Binder::readings(const Node& map, check::MeasureId measure_id, Specimen& out) {
  const check::Measure& measure = rules_.measures[measure_id];
  for (const Entry& entry : map.entries) {
    const auto at = std::find_if(measure.readings.begin(), measure.readings.end(),
                                 [&](const check::Reading& reading) { return reading.name == entry.key; });
    if (at != measure.readings.end()) {
      out.readings[static_cast<std::size_t>(at - measure.readings.begin())] =
          value(entry.value, at->type, "reading `" + entry.key + "`");
    } else if (entry.key == "value") {
      out.direct = value(entry.value, measure.type, "`" + measure.name + "`");
    } else if (entry.key == "label") {
      const Note label = note(&entry.value, "`label`");
      out.label = label.text;
      out.label_span = label.span;
    } else if (entry.key == "held" || entry.key == "clock") {
      circumstances(entry, measure_id, out.circumstances);
    } else {
      std::vector<std::string_view> known{"value", "label", "held", "clock"};
      for (const check::Reading& reading : measure.readings) {
        known.emplace_back(reading.name);
      }
      unknown_key(entry, known, "no reading of `" + measure.name + "`");
    }
  }
}

Specimen Binder::specimen(const Node& node, const Node* shared, check::MeasureId measure_id) {
  const check::Measure& measure = rules_.measures[measure_id];
  Specimen out;
  out.span = node.span;
  out.readings.resize(measure.readings.size());
  if (node.kind == Node::Kind::map) {
    if (shared != nullptr && shared->kind == Node::Kind::map) {
      readings(*shared, measure_id, out);
    }
    readings(node, measure_id, out);
  } else {
    out.direct = value(node, measure.type, "`" + measure.name + "`");
  }
  return out;
}

void Binder::specimens(const Node& list, const Node* shared, Result& out) {
  if (!is_list(list, "`specimens`")) {
    out.reported = unusable(list.span);
    return;
  }
  if (list.items.empty()) {
    error(diagnose::Code::submittal_value, list.span, "found an empty list of specimens",
          "leave it out, or fill it in");
    out.reported = unusable(list.span);
  }
  for (const Node& item : list.items) {
    out.specimens.push_back(specimen(item, shared, out.measure));
  }
}

void Binder::common(const Node& node, Result& out) {
  if (const Node* under = node.find("under")) {
    conditions(*under, out.measure, out);
  }
  if (const Node* at = node.find("at")) {
    design(*at, out);
  }
  out.tested = date(node.find("tested"));
  record(node, out);
  const Node* lot = node.find("lot");
  if (lot != nullptr && (lot->kind != Node::Kind::scalar || lot->text.find_first_not_of(' ') == std::string::npos)) {
    error(diagnose::Code::submittal_value, lot->span, "found no name for the lot",
          "give the number or name of the lot");
  } else if (lot != nullptr) {
    out.record.lot = {lot->text, lot->span};
    const auto known = std::find(lots_.begin(), lots_.end(), lot->text);
    out.lot = static_cast<std::uint32_t>(known - lots_.begin()) + 1;
    if (known == lots_.end()) {
      lots_.push_back(lot->text);
    }
  }
  if (const Node* count = node.find("replicates")) {
    const char* const begin = count->text.data();
    const auto read = std::from_chars(begin, begin + count->text.size(), out.replicates);
    if (count->kind != Node::Kind::scalar || read.ec != std::errc() || read.ptr != begin + count->text.size() ||
        out.replicates == 0) {
      out.replicates = 0;
      error(diagnose::Code::submittal_value, count->span,
            "found " + diagnose::quoted(count->text) + " for `replicates`, expected a whole number from 1 up",
            "say how many specimens the reported value is the mean of");
    }
  }
}

void Binder::missing_conditions(const Result& result) {
  const check::Measure& measure = rules_.measures[result.measure];
  for (const check::ConditionId id : measure.conditions) {
    const bool stated = std::any_of(result.conditions.begin(), result.conditions.end(),
                                    [&](const ConditionStated& one) { return one.condition == id; });
    if (!stated && !result.misnamed) {
      const std::string& name = rules_.conditions[id].name;
      error(diagnose::Code::submittal_missing_key, result.span,
            "found a result for `" + measure.name + "` that does not say its `" + name + "`",
            "add `under: {" + name + ": ...}`");
    }
  }
}

void Binder::add(Result result) {
  missing_conditions(result);
  out_.results.push_back(std::move(result));
}

// A further measure seen in the same row: the rupture mode beside the torque.
void Binder::companion(const Entry& entry, check::MeasureId measure_id, const Result& row) {
  Result out;
  out.measure = measure_id;
  out.design = row.design;
  out.at = row.at;
  out.tested = row.tested;
  out.lot = row.lot;
  out.record.lot = row.record.lot;
  out.span = entry.value.span;
  for (const ConditionStated& stated : row.conditions) {
    const auto& wanted = rules_.measures[measure_id].conditions;
    if (std::find(wanted.begin(), wanted.end(), stated.condition) != wanted.end()) {
      out.conditions.push_back(stated);
    }
  }
  out.reported = value(entry.value, rules_.measures[measure_id].type, "`" + entry.key + "`");
  out.replicates = 1;
  add(std::move(out));
}

// A second row for the same sieve or minute would be summed twice. The first of a series is reported.
void Binder::repeated_row(const Result& row) {
  std::string key;
  for (const ConditionStated& one : row.conditions) {
    if (!one.value.usable()) {
      return;
    }
    key += std::to_string(one.condition) + "=" + one.value.amount.value.stripped().text() + "/" +
           std::to_string(one.value.word) + " ";
  }
  const auto [first, fresh] = rows_.try_emplace(key, row.span);
  if (!fresh && !row.conditions.empty() && !rows_repeated_) {
    rows_repeated_ = true;
    error(diagnose::Code::submittal_duplicate_key, row.span, "found a second row for the same conditions in one series",
          "keep one of them; repeated tests are results of their own")
        .secondary.push_back({first->second, "the first one"});
  }
}

// One row of a series: conditions, readings and perhaps further measures side by side.
void Binder::row(const Node& node, const Node* shared, const Result& base) {
  if (!is_map(node, "a row of `series`")) {
    return;
  }
  const check::Measure& measure = rules_.measures[base.measure];
  Result out = base;
  out.span = node.span;
  Node rest;
  rest.kind = Node::Kind::map;
  rest.span = node.span;
  std::vector<std::pair<const Entry*, check::MeasureId>> companions;
  for (const Entry& entry : node.entries) {
    const auto at = std::find_if(measure.conditions.begin(), measure.conditions.end(),
                                 [&](check::ConditionId id) { return rules_.conditions[id].name == entry.key; });
    const auto reading = std::find_if(measure.readings.begin(), measure.readings.end(),
                                      [&](const check::Reading& one) { return one.name == entry.key; });
    const check::MeasureId other = find_measure(entry.key);
    if (at != measure.conditions.end()) {
      out.conditions.push_back(condition(entry.value, *at));
      // A series runs along what is measured: sieves or minutes, not words.
      const bool measured = rules_.conditions[*at].scale != check::Scale::category;
      const bool sieves = rules_.conditions[*at].scale == check::Scale::sieve;
      out.series_condition = sieves || (measured && out.series_condition == none) ? *at : out.series_condition;
    } else if (reading == measure.readings.end() && other != none && other != base.measure) {
      companions.emplace_back(&entry, other);
    } else {
      rest.entries.push_back(entry);
    }
  }
  repeated_row(out);
  if (!rest.entries.empty()) {
    out.specimens.push_back(specimen(rest, shared, base.measure));
    add(out);
  }
  for (const auto& [entry, other] : companions) {
    companion(*entry, other, out);
  }
}

void Binder::series(const Node& list, const Node* shared, const Result& base) {
  if (!is_list(list, "`series`")) {
    return;
  }
  Result numbered = base;
  numbered.series = out_.series++;
  rows_.clear();
  rows_repeated_ = false;
  for (const Node& item : list.items) {
    row(item, shared, numbered);
  }
}

void Binder::result(const Node& node) {
  if (!is_map(node, "a result")) {
    return;
  }
  const bool known =
      known_keys(node,
                 {"measure", "under", "at", "lot", "made", "tested", "laboratory", "accreditation", "materials", "held",
                  "clock", "shared", "specimens", "series", "reported", "also", "replicates", "note"},
                 "a result");
  const auto id = measure(node);
  if (!id) {
    return;
  }
  Result out;
  out.measure = *id;
  out.span = node.span;
  common(node, out);
  const Node* shared = node.find("shared");
  if (shared != nullptr) {
    is_map(*shared, "`shared`");
  }
  if (const Node* list = node.find("series")) {
    for (const std::string_view other : {"specimens", "reported"}) {
      if (const Node* beside = node.find(other)) {
        error(diagnose::Code::submittal_shape, beside->span,
              "found `" + std::string(other) + "` beside `series` in one result", "give it a result of its own");
      }
    }
    return series(*list, shared, out);
  }
  if (const Node* list = node.find("specimens")) {
    specimens(*list, shared, out);
  }
  if (const Node* reported = node.find("reported")) {
    const Value stated = value(*reported, rules_.measures[*id].type, "`" + rules_.measures[*id].name + "`");
    // Specimens that cannot be used are not replaced by what was reported.
    out.reported = out.reported.kind == Value::Kind::missing ? stated : out.reported;
  }
  if (known && out.specimens.empty() && out.reported.kind == Value::Kind::missing) {
    error(diagnose::Code::submittal_missing_key, node.span, "found a result without a value",
          "add `reported`, `specimens` or `series`");
  }
  add(std::move(out));
}

void Binder::results(const Node& node) {
  if (is_list(node, "`results`")) {
    for (const Node& item : node.items) {
      result(item);
    }
  }
}

}  // namespace plumbrule::evidence
