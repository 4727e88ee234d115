// Laws of verdicts (language.md, sections 9.6 and 10.1), over random rules and submittals.

#include <algorithm>

#include "judge/explain/explanation.hpp"
#include "law_tools.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::property {
namespace {

using evaluate::Verdict;
using evidence::Node;

template <typename Element>
void shuffle(std::vector<Element>& all, Random& random) {
  for (std::size_t at = all.size(); at > 1; --at) {
    std::swap(all[at - 1], all[random.below(at)]);
  }
}

Random draw_random() { return Random(*rc::gen::resize(100, rc::gen::noShrink(rc::gen::arbitrary<std::uint64_t>()))); }

TEST_CASE("the order of clauses does not matter") {
  LAW("clauses", [] {
    const Scene scene = draw_scene({});
    RuleTexts texts = scene.made->texts;
    Random random = draw_random();
    shuffle(texts.clauses, random);
    const auto turned = make_rules(texts);
    RC_ASSERT(turned->rules != nullptr);
    RC_ASSERT(verdicts(*scene.made, scene.submittal) == verdicts(*turned, scene.submittal));
  });
}

void shuffle_lists(Node& node, Random& random) {
  shuffle(node.items, random);
  for (Node& item : node.items) {
    shuffle_lists(item, random);
  }
  for (evidence::Entry& entry : node.entries) {
    shuffle_lists(entry.value, random);
  }
}

TEST_CASE("the order of results, specimens and rows does not matter") {
  LAW("results", [] {
    const Scene scene = draw_scene({});
    Node turned = scene.submittal;
    Random random = draw_random();
    shuffle_lists(turned, random);
    RC_ASSERT(verdicts(*scene.made, scene.submittal) == verdicts(*scene.made, turned));
  });
}

// What may be missing and then supplied: not a whole result (nor a measure seen beside another), nor `at`, which says
// something by its absence.
bool can_be_supplied(const Node& root, const Slot& slot, const Catalog& catalog) {
  if (slot.map == &root) {
    return slot.key() == "date";
  }
  static const Texts structure{"measure", "specimens", "series", "reported", "at", "shared", "under"};
  // A row of a series without a value of its own is no result: there the value is the whole of it.
  const bool condition = std::any_of(catalog.conditions.begin(), catalog.conditions.end(),
                                     [&](const Condition& one) { return one.name == slot.key(); });
  if (slot.in == "series" && !condition) {
    return false;
  }
  const bool beside = std::any_of(catalog.measures.begin(), catalog.measures.end(),
                                  [&](const Measure& measure) { return measure.name == slot.key(); });
  return slot.in != "at" && !beside && std::find(structure.begin(), structure.end(), slot.key()) == structure.end();
}

// A declared value is a result of its own, and a shared reading stands in where a specimen has none.
void without_fallbacks(Node& submittal) {
  std::erase_if(submittal.entries, [](const evidence::Entry& entry) { return entry.key == "job_mix"; });
  for (evidence::Entry& entry : submittal.entries) {
    for (Node& result : entry.value.items) {
      std::erase_if(result.entries, [](const evidence::Entry& one) { return one.key == "shared"; });
    }
  }
}

TEST_CASE("supplying a value that was missing never turns complies into not shown") {
  LAW("supplying", [] {
    Scene scene = draw_scene({0, 0, 5});
    Node fewer = scene.submittal;
    without_fallbacks(fewer);
    const Node whole = fewer;
    std::vector<Slot> open = slots(fewer);
    std::erase_if(open, [&](const Slot& slot) { return !can_be_supplied(fewer, slot, scene.made->texts.catalog); });
    RC_PRE(!open.empty());
    const Slot slot = open[draw_random().below(open.size())];
    RC_LOG() << "left out: " << slot.key() << "\n";
    slot.map->entries.erase(slot.map->entries.begin() + static_cast<std::ptrdiff_t>(slot.at));
    const Verdicts before = verdicts(*scene.made, fewer);
    for (const auto& [number, after] : verdicts(*scene.made, whole)) {
      RC_ASSERT(!(before.at(number) == Verdict::complies && after == Verdict::not_shown));
    }
  });
}

// Keys whose texts are no values: anything can stand there, or it changes what the submittal speaks of.
bool no_value(const std::string& key) {
  static const Texts keys{"measure", "lot", "submittal", "certificate"};
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

// The certificate is a text: nothing written there is an error.
bool of_text(const Node& root, const Node* node) {
  const Node* const results = root.find("results");
  for (const Node& result : results->items) {
    Node copy = result;
    const Node* const name = result.find("measure");
    if (name == nullptr || name->text != "certificate") {
      continue;
    }
    std::vector<const Node*> open{&result};
    while (!open.empty()) {
      const Node* const at = open.back();
      open.pop_back();
      if (at == node) {
        return true;
      }
      for (const Node& item : at->items) {
        open.push_back(&item);
      }
      for (const evidence::Entry& entry : at->entries) {
        open.push_back(&entry.value);
      }
    }
  }
  return false;
}

TEST_CASE("an error in a value never becomes complies") {
  LAW("errors", [] {
    Scene scene = draw_scene({5, 1, 2});
    Node broken = scene.submittal;
    std::vector<Scalar> all = scalars(broken);
    std::erase_if(all, [&](const Scalar& one) { return no_value(one.key) || of_text(broken, one.node); });
    RC_PRE(!all.empty());
    const Scalar& one = all[draw_random().below(all.size())];
    RC_LOG() << "broken: " << one.key << ": " << one.node->text << "\n";
    one.node->text = "5,5 parsecs";
    const Verdicts before = verdicts(*scene.made, scene.submittal);
    for (const auto& [number, after] : verdicts(*scene.made, broken)) {
      RC_ASSERT(after != Verdict::complies || before.at(number) == Verdict::complies);
    }
  });
}

TEST_CASE("checked rules judge every submittal without raising an error of their own") {
  LAW("no errors", [] {
    const Scene scene = draw_scene({20, 20, 20});
    Verdicts found;
    try {
      found = verdicts(*scene.made, scene.submittal);
    } catch (const std::exception& error) {
      RC_LOG() << error.what() << "\n";
      RC_FAIL("an exception while judging");
    }
    RC_ASSERT(found.size() == scene.made->rules->rules.requirements.size());
  });
}

std::string report_of(const MadeRules& made, const Node& submittal) {
  diagnose::Diagnostics problems;
  const auto evidence = evidence::bind(submittal, made.rules->rules, {}, problems);
  const evaluate::Review review = evaluate::evaluate(made.rules->plan, *evidence);
  const explain::Context context{made.sources, made.rules->rules, made.rules->plan, *evidence, review};
  review::Found out;
  out.submittal = "trial.yaml";
  review::SpecificationReport part;
  part.outcome = evaluate::outcome(made.rules->plan, review.findings, false);
  for (const evaluate::Finding& finding : review.findings) {
    part.findings.push_back(explain::explain(context, finding));
  }
  std::string text;
  for (const explain::Explanation& one : part.findings) {
    text += report::explanation_text(one, false);
  }
  for (const diagnose::Diagnostic& one : problems.all()) {
    text += one.message + one.help;
  }
  out.specifications.push_back(std::move(part));
  const review::Report whole(std::move(out), {});
  return text + report::text(whole, false) + report::json(whole);
}

TEST_CASE("reports are the same byte for byte from run to run") {
  LAW("reports", [] {
    const Scene scene = draw_scene({});
    const auto again = make_rules(scene.made->texts);
    RC_ASSERT(report_of(*scene.made, scene.submittal) == report_of(*again, scene.submittal));
  });
}

}  // namespace
}  // namespace plumbrule::property
