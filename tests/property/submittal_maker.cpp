#include "submittal_maker.hpp"

#include <algorithm>

namespace plumbrule::property {
namespace {

const Texts& sieves() {
  static const Texts all{"No. 4", "No. 8", "1.18 mm", "No. 30", "0.075 mm"};
  return all;
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
    const bool aimed = std::find(catalog_.targets.begin(), catalog_.targets.end(), measure.name) !=
                       catalog_.targets.end();
    if (!random.chance(aimed ? 85 : 10)) {
      continue;
    }
    if (measure.conditions.size() == 1 && random.chance(85)) {
      Node rows = map();
      const Condition& condition = catalog_.condition(measure.conditions.front());
      if (condition.name == "sieve") {
        for (const std::string& sieve : sieves()) {
          if (!random.chance(faults_.missing)) {
            put(rows, sieve, scalar(values.of(measure)));
          }
        }
      } else {
        put(rows, values.condition(condition), scalar(values.of(measure)));
      }
      put(stated, measure.name, std::move(rows));
    } else {
      put(stated, measure.name, scalar(values.of(measure)));
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

void SubmittalMaker::conditions(Random& random, ValueMaker& values, const Measure& measure, std::string_view except,
                                Node& out) const {
  Node under = map();
  for (const std::string& name : measure.conditions) {
    if (name == except || random.chance(faults_.missing / 2)) {
      continue;
    }
    put(under, name, scalar(name == "sieve" ? random.pick(sieves()) : values.condition(catalog_.condition(name))));
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
      put(at, design.name, scalar(values.of(design)));
      put(out, "at", std::move(at));
    }
  }
}

Node SubmittalMaker::specimen(Random& random, ValueMaker& values, const Measure& measure) const {
  if (measure.readings.empty() || random.chance(15)) {
    Node value = scalar(values.of(measure));
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

void SubmittalMaker::series(Random& random, ValueMaker& values, const Measure& measure, const std::string& along,
                            Node& out) const {
  Node rows = list();
  Texts places = sieves();
  if (along != "sieve") {
    places = {values.condition(catalog_.condition(along))};
    const std::string second = values.condition(catalog_.condition(along));
    if (second != places.front()) {
      places.push_back(second);
    }
  }
  for (const std::string& place : places) {
    if (places.size() > 2 && random.chance(faults_.missing)) {
      continue;
    }
    Node row = map();
    put(row, along, scalar(random.chance(faults_.unreadable / 2) ? "No. 7x" : place));
    Node value = specimen(random, values, measure);
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
        put(row, beside.name, scalar(values.of(beside)));
      }
    }
    rows.items.push_back(std::move(row));
  }
  put(out, "series", std::move(rows));
}

Node SubmittalMaker::result(Random& random) const {
  ValueMaker values(random, catalog_, faults_);
  const Measure& measure = random.chance(15) ? catalog_.measures.front() : random.pick(catalog_.measures);
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
    conditions(random, values, measure, along, out);
    series(random, values, measure, along, out);
    return out;
  }
  conditions(random, values, measure, "", out);
  const std::size_t form = random.below(10);
  if (form < 4) {
    put(out, "reported", scalar(values.of(measure)));
    if (random.chance(50)) {
      put(out, "replicates", scalar(random.chance(faults_.unreadable) ? "two" : std::to_string(1 + random.below(3))));
    }
    return out;
  }
  if (!measure.readings.empty() && random.chance(15)) {
    Node shared = map();
    auto all = values.readings(measure);
    if (!all.empty()) {
      put(shared, all.back().first, scalar(all.back().second));
    }
    put(out, "shared", std::move(shared));
  }
  Node specimens = list();
  const std::size_t count = 1 + random.below(3);
  for (std::size_t at = 0; at < count; ++at) {
    specimens.items.push_back(specimen(random, values, measure));
  }
  put(out, "specimens", random.chance(faults_.unreadable / 2) ? scalar("5 g") : std::move(specimens));
  if (form == 9) {
    put(out, "reported", scalar(values.of(measure)));
  }
  return out;
}

Node SubmittalMaker::make(Random& random) const {
  Node out = head(random);
  Node results = list();
  const std::size_t count = 2 + random.below(9);
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
