#include "rules_writer.hpp"

#include "clause_writer.hpp"
#include "vocabulary_writer.hpp"

namespace plumbrule::property {
namespace {

// The numbers at which a sieve's verdict turns: the band, and where its ends begin.
void note_band(Catalog& catalog, std::size_t sieve, int low, int high, const std::string& ends) {
  auto& near = catalog.near[sieve_key(sieve)];
  const quantity::Decimal part = quantity::Decimal{high - low} * quantity::Decimal::of(ends) / quantity::Decimal{100};
  for (const quantity::Decimal& number : {quantity::Decimal{low}, quantity::Decimal{high},
                                          quantity::Decimal{low} + part, quantity::Decimal{high} - part}) {
    near.push_back({number.text(), "%"});
  }
}

std::string grading(Random& random, Catalog& catalog, const std::string& name) {
  std::string text = "grading " + name + " \"grading " + name + "\"\n";
  const std::string ends = random.pick(Texts{"10", "20", "0", "25"});
  const Texts sieves{"No. 4", "2.36 mm", "No. 16", "600 um"};
  int high = 100;
  for (std::size_t at = 0; at < sieves.size(); ++at) {
    if (random.chance(10)) {
      continue;
    }
    const int low = high - static_cast<int>(5 + random.below(4) * 5);
    text += "  sieve " + sieves[at] + " ";
    if (random.chance(15)) {
      text += random.chance(50) ? "no limit\n" : "no limit stockpile within 5 % job mix within 5 %\n";
      continue;
    }
    note_band(catalog, at, low, high, ends);
    text +=
        random.chance(10) ? std::to_string(high) + " %" : std::to_string(low) + " % to " + std::to_string(high) + " %";
    text += random.chance(60) ? " stockpile within " + random.pick(Texts{"5", "2.5", "2"}) + " %" : "";
    text += random.chance(60) ? " job mix within " + random.pick(Texts{"5", "0.5", "3"}) + " %" : "";
    text += "\n";
    high = low - static_cast<int>(random.below(3) * 5);
  }
  note_band(catalog, sieves.size(), 5, 15, ends);
  text += "  sieve 0.075 mm 5 % to 15 % stockpile within 2 % job mix within 2 %\n";
  return text + (random.chance(60) ? "  ends of the band " + ends + " %\n" : "");
}

std::string general_rule(Random& random, House& house, const Catalog& catalog) {
  bool all_reported = true;
  for (const Measure& measure : catalog.measures) {
    all_reported = all_reported && (measure.is_word() || !measure.reported.empty());
  }
  const std::string ties = random.chance(50) ? "ties to even" : "ties up";
  switch (random.below(5)) {
    case 0:
      return "the absolute method";
    case 1:
      house.by_reporting_place = all_reported;
      return all_reported ? "the rounding method to reporting place, " + ties : "the rounding method, " + ties;
    default:
      return "the rounding method, " + ties;
  }
}

// A measure with a way of comparing of its own, which may bind the unit of its limits.
std::string measure_rule(Random& random, Catalog& catalog) {
  Measure& measure = catalog.measures[random.below(catalog.measures.size())];
  if (measure.is_word() || measure.sieved()) {
    return "";
  }
  std::string rule = "the absolute method";
  if (random.chance(70)) {
    measure.limit_unit = random.pick(family(measure.family).units);
    rule = "the rounding method to " + phrase({random.pick(Texts{"1", "0.1", "0.5", "5"}), measure.limit_unit}, "") +
           (random.chance(50) ? ", ties up" : ", ties to even");
  }
  return "  compare " + measure.name + " by " + rule + "\n";
}

std::string head(Random& random, Catalog& catalog, House& house) {
  std::string text = "plumbrule 1\nspecification spec \"Generated\"\n  edition 2026-01-01\n  uses mix\n";
  text += "  compare by " + general_rule(random, house, catalog) + "\n";
  if (!house.by_reporting_place && random.chance(40)) {
    text += measure_rule(random, catalog);
  }
  if (random.chance(30)) {
    text += "  round each specimen to " + random.pick(Texts{"reporting place", "1 g", "0.5 %", "1 degC", "0.1 mm"}) +
            (random.chance(50) ? ", ties up\n" : ", ties to even\n");
  }
  if (random.chance(15)) {
    text += "  tested within " + random.pick(Texts{"12 months", "60 days"}) + "\n";
    catalog.dated = true;
  }
  text += "term early means soak " + random.pick(Texts{"30 min", "at most 1 h", "1 h within 10 min"}) + "\n";
  // The first measure behind percent passing is m1: a term for its limit.
  const Measure& first = catalog.measures.at(1);
  const std::string unit = first.limit_unit.empty() ? first.unit : first.limit_unit;
  const Written floor{random.pick(Texts{"5", "7.5", "10"}), unit};
  catalog.near[first.name].push_back(floor);
  text += "term floor \"the floor\" means " + std::string(random.chance(50) ? "at least " : "at most ") +
          phrase(floor, first.basis) + "\n";
  text += grading(random, catalog, "fine") + grading(random, catalog, "coarse");
  catalog.gradings = {"fine", "coarse"};
  return text;
}

std::string amendment(Random& random, std::size_t clauses, const Texts& limits, ClauseWriter& writer) {
  std::string text =
      "plumbrule 1\namendment amend \"Generated amendment\"\n  amends spec edition 2026-01-01\n"
      "  effective 2026-05-15\n";
  for (std::size_t at = 0; at < clauses; ++at) {
    const std::string number = std::to_string(at + 1);
    if (!random.chance(25)) {
      continue;
    }
    const std::size_t kind = random.below(4);
    if (kind == 0 && clauses > 1) {
      text += "  withdraw " + number + " because \"no need\"\n";
    } else if (kind == 1) {
      text += "  replace " + writer.requirement(number);
    } else if (!limits[at].empty()) {
      text += "  replace " + number + " limit by " + limits[at] + "\n";
    } else {
      text += "  retitle " + number + " \"another title\"\n";
    }
  }
  return text + "  add " + writer.requirement("added");
}

}  // namespace

std::string RuleTexts::specification() const {
  std::string text = head;
  for (const std::string& clause : clauses) {
    text += clause;
  }
  return text;
}

RuleTexts write_rules(std::uint64_t seed, std::span<const std::uint64_t> clause_seeds) {
  RuleTexts out;
  Random random(seed);
  House house;
  out.vocabulary = write_vocabulary(random, out.catalog);
  out.head = head(random, out.catalog, house);
  Texts limits;
  for (const std::uint64_t clause_seed : clause_seeds) {
    Random own(clause_seed);
    ClauseWriter writer(own, out.catalog, house);
    out.clauses.push_back(writer.requirement(std::to_string(out.clauses.size() + 1)));
    limits.push_back(writer.new_limit());
  }
  if (random.chance(30)) {
    ClauseWriter writer(random, out.catalog, house);
    out.amendment = amendment(random, clause_seeds.size(), limits, writer);
  }
  return out;
}

}  // namespace plumbrule::property
