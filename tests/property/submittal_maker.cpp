#include "submittal_maker.hpp"

#include <algorithm>

namespace plumbrule::property {
namespace {

const Texts& sieves() {
  static const Texts all{"No. 4", "No. 8", "1.18 mm", "No. 30", "0.075 mm"};
  return all;
}

const Written* asked(const Use& use, std::string_view condition) {
  for (const auto& [name, value] : use.conditions) {
    if (name == condition) {
      return &value;
    }
  }
  return nullptr;
}

}  // namespace

Node scalar(std::string text) {
  Node out;
  out.kind = Node::Kind::scalar;
  out.text = std::move(text);
  return out;
}

Node list() {
  Node out;
  out.kind = Node::Kind::list;
  return out;
}

Node map() {
  Node out;
  out.kind = Node::Kind::map;
  return out;
}

void put(Node& map, std::string key, Node value) { map.entries.push_back({std::move(key), {}, std::move(value)}); }

void SubmittalMaker::job_mix(Random& random, ValueMaker& values, Node& out) const {
  Node stated = map();
  for (const Measure& measure : catalog_.measures) {
    const bool aimed =
        std::find(catalog_.targets.begin(), catalog_.targets.end(), measure.name) != catalog_.targets.end();
    if (!random.chance(aimed ? 85 : 10)) {
      continue;
    }
    if (measure.conditions.size() == 1 && random.chance(85)) {
      Node rows = map();
      const Condition& condition = catalog_.condition(measure.conditions.front());
      if (condition.name == "sieve") {
        for (std::size_t at = 0; at < sieves().size(); ++at) {
          if (!random.chance(faults_.missing)) {
            put(rows, sieves()[at], scalar(values.of(measure, sieve_key(at))));
          }
        }
      } else {
        put(rows, values.condition(condition, nullptr), scalar(values.of(measure, measure.name)));
      }
      put(stated, measure.name, std::move(rows));
    } else {
      put(stated, measure.name, scalar(values.of(measure, measure.name)));
    }
  }
  if (!stated.entries.empty()) {
    put(out, "job_mix", std::move(stated));
  }
}

Node SubmittalMaker::head(Random& random) const {
  ValueMaker values(random, catalog_, faults_);
  Node out = map();
  put(out, "submittal", scalar("1"));
  if (!random.chance(faults_.missing)) {
    put(out, "date", scalar(random.chance(80) ? ValueMaker::day(0) : values.test_day()));
  }
  Node classes = map();
  for (const char* name : {"course", "traffic", "climate"}) {
    if (!random.chance(faults_.missing * 3)) {
      put(classes, name, scalar(values.word(catalog_.category(name))));
    }
  }
  put(out, "classes", std::move(classes));
  job_mix(random, values, out);
  return out;
}

void SubmittalMaker::conditions(Random& random, ValueMaker& values, const Measure& measure, const Use& use,
                                std::string_view except, bool kind_in_rows, Node& out) const {
  Node under = map();
  for (const std::string& name : measure.conditions) {
    if (name == except || (name == "kind" && kind_in_rows) || random.chance(faults_.missing / 2)) {
      continue;
    }
    put(under, name, scalar(values.condition(catalog_.condition(name), asked(use, name))));
  }
  if (!under.entries.empty()) {
    put(out, "under", std::move(under));
  }
}

void SubmittalMaker::common(Random& random, ValueMaker& values, const Measure& measure, Node& out) const {
  put(out, "measure", scalar(measure.name));
  if (random.chance(60)) {
    put(out, "lot", scalar(random.pick(Texts{"A", "B"})));
  }
  if (catalog_.dated ? !random.chance(faults_.missing) : random.chance(10)) {
    put(out, "tested", scalar(values.test_day()));
  }
  if (random.chance(4)) {
    const Measure& design = random.pick(catalog_.measures);
    if (!design.is_word()) {
      Node at = map();
      put(at, design.name, scalar(values.of(design, design.name)));
      put(out, "at", std::move(at));
    }
  }
}

Node SubmittalMaker::specimen(Random& random, ValueMaker& values, const Measure& measure,
                              const std::string& near) const {
  if (measure.readings.empty() || random.chance(15)) {
    Node value = scalar(values.of(measure, near));
    if (random.chance(70)) {
      return value;
    }
    Node out = map();
    put(out, "value", std::move(value));
    return out;
  }
  Node out = map();
  for (auto& [name, text] : values.readings(measure)) {
    put(out, name, scalar(text));
  }
  return out;
}

void SubmittalMaker::series(Random& random, ValueMaker& values, const Measure& measure, const Use& use,
                            const std::string& along, bool kind_in_rows, Node& out) const {
  Node rows = list();
  Texts places = sieves();
  if (along != "sieve") {
    places = {values.condition(catalog_.condition(along), asked(use, along))};
    const std::string second = values.condition(catalog_.condition(along), nullptr);
    if (second != places.front()) {
      places.push_back(second);
    }
  }
  for (std::size_t at = 0; at < places.size(); ++at) {
    const std::string& place = places[at];
    if (places.size() > 2 && random.chance(faults_.missing)) {
      continue;
    }
    Node row = map();
    if (kind_in_rows) {
      put(row, "kind", scalar(values.condition(catalog_.condition("kind"), asked(use, "kind"))));
    }
    put(row, along, scalar(random.chance(faults_.unreadable / 2) ? "No. 7x" : place));
    Node value =
        specimen(random, values, measure, along == "sieve" && random.chance(80) ? sieve_key(at) : measure.name);
    if (value.kind == Node::Kind::map) {
      row.entries.insert(row.entries.end(), value.entries.begin(), value.entries.end());
    } else {
      put(row, "value", std::move(value));
    }
    if (random.chance(20)) {
      const Measure& beside = random.pick(catalog_.measures);
      const bool clash = std::any_of(row.entries.begin(), row.entries.end(),
                                     [&](const evidence::Entry& entry) { return entry.key == beside.name; });
      if (!clash && beside.name != measure.name) {
        put(row, beside.name, scalar(values.of(beside, beside.name)));
      }
    }
    rows.items.push_back(std::move(row));
  }
  put(out, "series", std::move(rows));
}

Use SubmittalMaker::use(Random& random) const {
  if (!catalog_.uses.empty() && random.chance(85)) {
    return random.pick(catalog_.uses);
  }
  return {random.pick(catalog_.measures).name, {}, 1 + random.below(3)};
}

void SubmittalMaker::specimens(Random& random, ValueMaker& values, const Measure& measure, const Use& use,
                               Node& out) const {
  if (!measure.readings.empty() && random.chance(15)) {
    Node shared = map();
    auto all = values.readings(measure);
    if (!all.empty()) {
      put(shared, all.back().first, scalar(all.back().second));
    }
    put(out, "shared", std::move(shared));
  }
  Node all = list();
  const std::size_t count = random.chance(80) ? use.specimens + random.below(2) : 1 + random.below(3);
  for (std::size_t at = 0; at < count; ++at) {
    all.items.push_back(specimen(random, values, measure, measure.name));
  }
  put(out, "specimens", random.chance(faults_.unreadable / 2) ? scalar("5 g") : std::move(all));
  if (random.chance(10)) {
    put(out, "reported", scalar(values.of(measure, measure.name)));
  }
}

Node SubmittalMaker::result(Random& random) const {
  ValueMaker values(random, catalog_, faults_);
  const Use wanted = use(random);
  const Measure& measure = *std::find_if(catalog_.measures.begin(), catalog_.measures.end(),
                                         [&](const Measure& one) { return one.name == wanted.measure; });
  Node out = map();
  common(random, values, measure, out);
  Texts runs;
  for (const std::string& name : measure.conditions) {
    if (name != "kind") {
      runs.push_back(name);
    }
  }
  if (!runs.empty() && random.chance(measure.sieved() ? 85 : 30)) {
    const std::string along = random.pick(runs);
    const bool has_kind = runs.size() < measure.conditions.size();
    const bool kind_in_rows = has_kind && random.chance(40);
    conditions(random, values, measure, wanted, along, kind_in_rows, out);
    series(random, values, measure, wanted, along, kind_in_rows, out);
    return out;
  }
  conditions(random, values, measure, wanted, "", false, out);
  if (random.chance(60)) {
    specimens(random, values, measure, wanted, out);
    return out;
  }
  put(out, "reported", scalar(values.of(measure, measure.name)));
  if (random.chance(50)) {
    put(out, "replicates", scalar(random.chance(faults_.unreadable) ? "two" : std::to_string(1 + random.below(3))));
  }
  return out;
}

Node SubmittalMaker::make(Random& random) const {
  Node out = head(random);
  Node results = list();
  const std::size_t count = 2 + random.below(13);
  for (std::size_t at = 0; at < count; ++at) {
    results.items.push_back(result(random));
  }
  put(out, "results", std::move(results));
  return out;
}

Node SubmittalMaker::make(std::uint64_t head_seed, std::span<const std::uint64_t> result_seeds) const {
  Random random(head_seed);
  Node out = head(random);
  Node results = list();
  for (const std::uint64_t seed : result_seeds) {
    Random own(seed);
    results.items.push_back(result(own));
  }
  put(out, "results", std::move(results));
  return out;
}

}  // namespace plumbrule::property
