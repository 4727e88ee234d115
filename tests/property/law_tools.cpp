#include "law_tools.hpp"

#include "yaml_writer.hpp"

namespace plumbrule::property {
namespace {

using evidence::Node;

void collect(Node& node, const std::string& key, std::vector<Scalar>& scalars, std::vector<Slot>& slots) {
  if (node.kind == Node::Kind::scalar) {
    scalars.push_back({key, &node});
  }
  for (Node& item : node.items) {
    collect(item, key, scalars, slots);
  }
  for (std::size_t at = 0; at < node.entries.size(); ++at) {
    slots.push_back({&node, at, key});
    collect(node.entries[at].value, node.entries[at].key, scalars, slots);
  }
}

}  // namespace

rc::Gen<std::vector<std::uint64_t>> seeds(int most) {
  const auto one = rc::gen::resize(100, rc::gen::noShrink(rc::gen::arbitrary<std::uint64_t>()));
  return rc::gen::resize(most, rc::gen::container<std::vector<std::uint64_t>>(one));
}

Scene draw_scene(const Faults& faults) {
  const auto vocabulary = *rc::gen::resize(100, rc::gen::noShrink(rc::gen::arbitrary<std::uint64_t>()));
  const auto clauses = *seeds(8);
  const auto head = *rc::gen::resize(100, rc::gen::noShrink(rc::gen::arbitrary<std::uint64_t>()));
  const auto results = *seeds(12);
  Scene out;
  out.made = make_rules(write_rules(vocabulary, clauses));
  RC_PRE(out.made->rules != nullptr);
  out.submittal = SubmittalMaker(out.made->texts.catalog, faults).make(head, results);
  RC_LOG() << "\n";
  show_scene(out, RC_LOG());
  return out;
}

Verdicts verdicts(const MadeRules& made, const Node& submittal) {
  const oracle::Answers answers = oracle::ask_engine(*made.rules, submittal, {}, std::nullopt);
  Verdicts out;
  for (const evaluate::Finding& finding : answers.review.findings) {
    out.emplace(made.rules->rules.requirements[finding.requirement].number, finding.verdict);
  }
  return out;
}

std::vector<Scalar> scalars(Node& submittal) {
  std::vector<Scalar> out;
  std::vector<Slot> ignored;
  collect(submittal, "", out, ignored);
  return out;
}

std::vector<Slot> slots(Node& submittal) {
  std::vector<Scalar> ignored;
  std::vector<Slot> out;
  collect(submittal, "", ignored, out);
  return out;
}

void show_scene(const Scene& scene, std::ostream& out) {
  out << "--- mix.plumb\n" << scene.made->texts.vocabulary << "--- spec.plumb\n" << scene.made->texts.specification();
  if (!scene.made->texts.amendment.empty()) {
    out << "--- amend.plumb\n" << scene.made->texts.amendment;
  }
  out << "--- trial.yaml\n" << write_yaml(scene.submittal) << "---\n";
}

}  // namespace plumbrule::property
