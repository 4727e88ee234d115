#include "shrink.hpp"

#include <fstream>

#include "yaml_writer.hpp"

namespace plumbrule::property {
namespace {

using evidence::Node;

std::vector<oracle::Difference> disagree(const RuleTexts& rules, const Node& submittal) {
  const auto made = make_rules(rules);
  return made->rules == nullptr ? std::vector<oracle::Difference>{}
                                : oracle::compare(*made->rules, submittal, {}, std::nullopt).differences;
}

bool same(const RuleTexts& rules, const Node& submittal) { return !disagree(rules, submittal).empty(); }

void shrink_rules(RuleTexts& rules, const Node& submittal) {
  RuleTexts fewer = rules;
  fewer.amendment.clear();
  if (same(fewer, submittal)) {
    rules = fewer;
  }
  for (std::size_t at = rules.clauses.size(); at-- > 0;) {
    fewer = rules;
    fewer.clauses.erase(fewer.clauses.begin() + static_cast<std::ptrdiff_t>(at));
    if (same(fewer, submittal)) {
      rules = fewer;
    }
  }
}

// Lines of a rule file that nothing needs; where the checks then find an error, the disagreement is gone.
void shrink_lines(std::string& text, const RuleTexts& rules, const Node& submittal) {
  std::size_t end = text.size();
  while (end > 0) {
    const std::size_t begin = end == 1 ? 0 : text.rfind('\n', end - 2) + 1;
    const std::string kept = text;
    text.erase(begin, end - begin);
    if (!same(rules, submittal)) {
      text = kept;
    }
    end = begin;
  }
}

// Leaves out what is not needed, the whole before its parts.
void shrink_node(Node& node, Node& root, const RuleTexts& rules) {
  for (std::size_t at = node.items.size(); at-- > 0;) {
    const Node kept = node;
    node.items.erase(node.items.begin() + static_cast<std::ptrdiff_t>(at));
    if (!same(rules, root)) {
      node = kept;
      shrink_node(node.items[at], root, rules);
    }
  }
  for (std::size_t at = node.entries.size(); at-- > 0;) {
    const Node kept = node;
    node.entries.erase(node.entries.begin() + static_cast<std::ptrdiff_t>(at));
    if (!same(rules, root)) {
      node = kept;
      shrink_node(node.entries[at].value, root, rules);
    }
  }
}

}  // namespace

Disagreement shrink(const RuleTexts& rules, const Node& submittal) {
  Disagreement out{rules, submittal, {}};
  shrink_rules(out.rules, out.submittal);
  shrink_node(out.submittal, out.submittal, out.rules);
  shrink_lines(out.rules.head, out.rules, out.submittal);
  shrink_lines(out.rules.vocabulary, out.rules, out.submittal);
  out.differences = disagree(out.rules, out.submittal);
  return out;
}

void write_reproduction(const Disagreement& found, const std::filesystem::path& folder) {
  std::filesystem::create_directories(folder);
  std::ofstream(folder / "mix.plumb") << found.rules.vocabulary;
  std::ofstream(folder / "spec.plumb") << found.rules.specification();
  if (!found.rules.amendment.empty()) {
    std::ofstream(folder / "amend.plumb") << found.rules.amendment;
  }
  std::ofstream(folder / "trial.yaml") << write_yaml(found.submittal);
  std::ofstream notes(folder / "disagreement.txt");
  for (const oracle::Difference& one : found.differences) {
    notes << "clause " << one.clause << ": engine " << one.engine << ", oracle " << one.judge << "\n";
  }
}

}  // namespace plumbrule::property
