#include "vocabulary_writer.hpp"

namespace plumbrule::property {
namespace {

using quantity::Decimal;

class VocabularyWriter {
 public:
  VocabularyWriter(Random& random, Catalog& catalog) : random_(random), catalog_(catalog) {}

  std::string run() {
    out_ = "plumbrule 1\nvocabulary mix \"Generated words\"\n";
    categories();
    conditions();
    out_ += "basis dry_aggregate \"mass of dry aggregate\"\nbasis total_mix \"mass of the mix\"\n";
    out_ += "table head_factor \"factor\" by head in 1/m2 C-100: 32.9 A-120: 2 N-50: 0.5\n";
    out_ += "table head_mass \"mass\" by head in g C-100: 5 A-120: 0 N-50: 2.5\n";
    grades();
    passing();
    const std::size_t count = 4 + random_.below(4);
    for (std::size_t at = 0; at < count; ++at) {
      measure("m" + std::to_string(at + 1));
    }
    words();
    return out_;
  }

 private:
  Random& random_;
  Catalog& catalog_;
  std::string out_;

  void categories() {
    catalog_.categories = {{"course", {"levelling", "surface", "rut_fill"}},
                           {"traffic", {"light", "medium", "heavy"}},
                           {"climate", {"wet", "dry"}},
                           {"mode", {"normal", "spin", "solid-spin"}},
                           {"head", {"C-100", "A-120", "N-50"}},
                           {"variant", {"A", "B"}}};
    for (const Category& category : catalog_.categories) {
      out_ += "category " + category.name + " \"" + category.name + "\": ";
      for (const std::string& word : category.words) {
        out_ += (&word == category.words.data() ? "" : ", ") + word;
      }
      out_ += "\n";
    }
  }

  void conditions() {
    const std::string soak_within = random_.chance(30) ? " within 5 min" : "";
    const std::string heat_within = random_.chance(60) ? " within 1 Cdeg" : "";
    out_ += "condition soak \"soak\" in min" + soak_within + "\n";
    out_ += "condition heat \"temperature\" in degC" + heat_within + "\n";
    out_ += "condition sieve \"sieve\" as sieve designation\n";
    out_ += "condition kind \"variant\" among variant\n";
    catalog_.conditions = {{"soak", "time", "", {{"30", "min"}, {"1", "h"}, {"65", "min"}, {"90", "min"}}},
                           {"heat", "temperature", "", {{"25", "degC"}, {"77", "degF"}, {"30", "degC"}}},
                           {"sieve", "", "", {{"No. 4", ""}, {"2.36 mm", ""}, {"No. 16", ""}, {"600 um", ""}}},
                           {"kind", "", "variant", {{"A", ""}, {"B", ""}}}};
  }

  // Tables by value, with edges of both ways and both kinds, total or not.
  void grades() {
    for (const char* of : {"mass", "length", "percent", "temperature"}) {
      const std::string unit = random_.pick(family(of).units);
      const bool rising = random_.chance(50);
      std::vector<Decimal> edges;
      for (std::size_t count = 1 + random_.below(3); edges.size() < count;) {
        const Decimal step = Decimal::of(random_.pick(Texts{"0.5", "1", "2.5", "10"}));
        const Decimal first = edges.empty() ? Decimal::of(random_.pick(Texts{"0", "5", "10"})) : edges.back();
        edges.push_back(rising ? first + step : first - step);
      }
      out_ += "table " + std::string(of) + "_grade by value in " + unit + " in number";
      bool alone = false;  // the row before left its edge out, and this one may take it
      for (std::size_t at = 0; at < edges.size(); at += alone ? 0 : 1) {
        const bool takes = alone || random_.chance(50);
        out_ += std::string(rising ? (takes ? " at most " : " below ") : (takes ? " at least " : " above ")) +
                phrase({edges[at].text(), unit}, "") + ": " + std::to_string(random_.below(4));
        alone = !takes && random_.chance(30);
      }
      out_ += random_.chance(60) ? " otherwise: 1\n" : "\n";
    }
  }

  void graded(Measure& measure, const std::string& other) {
    const std::string of = random_.pick(Texts{"mass", "length", "percent", "temperature"});
    reading(measure, "first", measure.family, other);
    reading(measure, "second", of, random_.pick(family(of).units));
    measure.shape = Shape::free;
    out_ += random_.pick(Texts{" computed as first * " + of + "_grade(second)",
                               " computed as " + of + "_grade(second) * first + first",
                               " computed as larger(first, first * " + of + "_grade(second))"});
    if (random_.chance(30)) {
      out_ += " refused when " + of + "_grade(second) " + random_.pick(Texts{">", "<", "="}) +
              " 1 because \"of that grade\"";
    }
  }

  std::string under(Measure& measure) {
    for (const char* name : {"soak", "heat", "kind"}) {
      if (random_.chance(25)) {
        measure.conditions.emplace_back(name);
      }
    }
    std::string text;
    for (const std::string& name : measure.conditions) {
      text += (text.empty() ? " under " : " and ") + name;
    }
    return text;
  }

  std::string place() { return random_.pick(Texts{"1", "0.1", "0.5", "5", "0.01"}); }

  void passing() {
    Measure out;
    out.name = "passing";
    out.family = "percent";
    out.unit = "%";
    out.shape = random_.chance(40) ? Shape::passing : Shape::direct;
    out.conditions = {"sieve"};
    out.reported = "1";
    out_ += "measure passing \"percent passing\" in % reported to 1 % under sieve";
    if (random_.chance(30)) {
      out.conditions.emplace_back("kind");
      out_ += " and kind";
    }
    if (out.shape == Shape::passing) {
      out.readings = {{"retained", "mass", "g", ""}};
      out_ += " from retained in g computed as (total(retained) - cumulative(retained)) / total(retained)";
    }
    out_ += "\n";
    catalog_.measures.push_back(out);
  }

  void measure(const std::string& name) {
    Measure out;
    out.name = name;
    const Family& of = random_.pick(families());
    out.family = of.name;
    out.unit = random_.pick(of.units);
    out.basis = of.name == "percent" && random_.chance(50) ? "dry_aggregate" : "";
    out_ +=
        "measure " + name + " \"measure " + name + "\" in " + out.unit + (out.basis.empty() ? "" : " of " + out.basis);
    if (random_.chance(70)) {
      out.reported = place();
      const std::string shown = out.family == "temperature" || out.unit != "%" ? out.unit : "%";
      out_ += " reported to " + phrase({out.reported, shown}, "");
    }
    out_ += under(out);
    formula(out);
    if (random_.chance(20)) {
      out_ += " refused when " + name + " " + random_.pick(Texts{"<", ">=", ">", "="}) + " " +
              phrase({random_.pick(Texts{"0", "5", "100"}), out.unit}, out.basis) + " because \"it cannot be\"";
    }
    out_ += "\n";
    catalog_.measures.push_back(out);
  }

  void reading(Measure& measure, const std::string& name, const std::string& of, const std::string& unit) {
    out_ += (measure.readings.empty() ? " from " : ", ") + name;
    if (of == "head") {
      measure.readings.push_back({name, "", "", "head"});
      out_ += name == "head" ? "" : " among head";
      return;
    }
    measure.readings.push_back({name, of, unit, ""});
    out_ += " in " + unit;
  }

  void formula(Measure& measure) {
    const bool percent = measure.family == "percent" && measure.basis.empty();
    const std::string other = random_.pick(family(measure.family).units);
    const std::size_t kind = random_.below(8);
    if (kind < 3 || !measure.basis.empty()) {
      return;
    }
    if (!measure.family.starts_with("temperature") && random_.chance(25)) {
      return graded(measure, other);
    }
    if (percent) {
      return ratio(measure);
    }
    if (measure.family == "temperature") {
      reading(measure, "first", "temperature", other);
      measure.shape = Shape::each_alike;
      out_ += " computed as first + 0 Fdeg";
    } else if (measure.family == "temperature difference") {
      reading(measure, "first", "temperature", "degC");
      reading(measure, "second", "temperature", random_.pick(family("temperature").units));
      measure.shape = Shape::free;
      out_ += " computed as first - second";
    } else if (measure.family == "area mass") {
      loss(measure);
    } else if (kind < 5) {
      reading(measure, "first", measure.family, measure.unit);
      reading(measure, "second", measure.family, other);
      measure.shape = Shape::difference;
      out_ += " computed as first - second";
      if (random_.chance(50)) {
        out_ += " refused when second > first because \"no gain\"";
      }
    } else if (kind < 7) {
      reading(measure, "first", measure.family, measure.unit);
      reading(measure, "second", measure.family, other);
      measure.shape = Shape::each_alike;
      out_ += std::string(" computed as ") + (random_.chance(50) ? "larger" : "smaller") + "(first, second)";
    } else {
      scaled(measure, other);
    }
  }

  void ratio(Measure& measure) {
    reading(measure, "first", "length", "mm");
    reading(measure, "second", "length", random_.pick(Texts{"mm", "in"}));
    measure.shape = Shape::free;
    out_ += random_.pick(Texts{" computed as (first - second) / first", " computed as first / second",
                               " computed as 1 - second / first", " computed as 100 % * second / (first - second)",
                               " computed as 1 % / (first / second)"});
  }

  void loss(Measure& measure) {
    reading(measure, "before", "mass", "g");
    reading(measure, "after", "mass", random_.pick(Texts{"g", "kg"}));
    reading(measure, random_.chance(50) ? "head" : "machine", "head", "");
    measure.shape = Shape::free;
    out_ += " computed as (before - after) * head_factor(" + measure.readings.back().name + ")";
    if (random_.chance(60)) {
      out_ += " refused when after > before because \"no gain\"";
    }
  }

  void scaled(Measure& measure, const std::string& other) {
    reading(measure, "first", measure.family, other);
    reading(measure, "part", "percent", "%");
    measure.shape = Shape::free;
    out_ += random_.pick(Texts{" computed as first * fraction(part)", " computed as first * part",
                               " computed as first / fraction(part)", " computed as first - first * part",
                               " computed as 2 * (first - 0.5 * first) * fraction(part)"});
    if (measure.family == "mass" && random_.chance(40)) {
      out_ += " refused when first < 5 g because \"too little\"";
    }
  }

  void words() {
    Measure mode;
    mode.name = "rupture";
    mode.category = "mode";
    out_ += "measure rupture \"rupture mode\" among mode" + under(mode) + "\n";
    Measure certificate;
    certificate.name = "certificate";
    certificate.text = true;
    out_ += "measure certificate \"certificate\" as text\n";
    catalog_.measures.push_back(mode);
    catalog_.measures.push_back(certificate);
  }
};

}  // namespace

std::string write_vocabulary(Random& random, Catalog& catalog) { return VocabularyWriter(random, catalog).run(); }

}  // namespace plumbrule::property
