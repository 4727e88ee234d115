#include <algorithm>

#include "base/diagnose/quote.hpp"
#include "base/diagnose/suggest.hpp"
#include "judge/evidence/binder.hpp"

namespace plumbrule::evidence {

bool Binder::version(const Node& document) {
  const Node* version = document.find("submittal");
  if (version == nullptr) {
    error(diagnose::Code::submittal_missing_key, document.span, "found no `submittal: 1` line",
          "begin the file with `submittal: 1`, the version of this layout");
    return false;
  }
  if (version->text != "1") {
    error(diagnose::Code::submittal_value, version->span,
          "found submittal version " + diagnose::quoted(version->text) + ", expected `1`", "write `submittal: 1`");
    return false;
  }
  return true;
}

std::int32_t Binder::date(const Node* node) {
  if (node == nullptr) {
    return no_date;
  }
  const auto day = read_date(node->text);
  if (!day) {
    error(diagnose::Code::submittal_value, node->span, "found " + diagnose::quoted(node->text) + ", no date",
          "write year, month and day: `2026-03-20`");
  }
  return day.value_or(no_date);
}

void Binder::identity(const Node& document) {
  const auto text = [&](std::string_view key) -> std::string {
    const Node* node = document.find(key);
    if (node == nullptr) {
      return {};
    }
    if (node->kind != Node::Kind::scalar) {
      error(diagnose::Code::submittal_shape, node->span, "found no plain text for `" + std::string(key) + "`",
            "write one line of text");
      return {};
    }
    return node->text;
  };
  const auto place = [&](std::string_view key) {
    const Node* node = document.find(key);
    return node == nullptr ? Span{} : node->span;
  };
  out_.identity = {text("project"),     text("mix"),          text("laboratory"), text("prepared_by"),
                   text("date"),        text("note"),         place("project"),   place("mix"),
                   place("laboratory"), place("prepared_by"), place("note")};
  out_.date = date(document.find("date"));
  out_.reviewed = {out_.date, place("date")};
}

void Binder::classes(const Node& node) {
  if (!is_map(node, "`classes`")) {
    return;
  }
  for (const Entry& entry : node.entries) {
    const auto at = std::find_if(rules_.categories.begin(), rules_.categories.end(),
                                 [&](const check::Category& category) { return category.name == entry.key; });
    if (at != rules_.categories.end()) {
      const auto index = static_cast<std::uint32_t>(at - rules_.categories.begin());
      out_.classes[index] = word(entry.value, index, "class `" + entry.key + "`");
    } else if (std::find(others_.categories.begin(), others_.categories.end(), entry.key) == others_.categories.end()) {
      unknown_class(entry);
    }
  }
}

void Binder::add_declared(check::MeasureId measure, std::vector<ConditionStated> conditions, const Value& stated) {
  Result result;
  result.measure = measure;
  result.span = stated.span;
  result.reported = stated;
  result.replicates = 1;
  result.declared = true;
  result.tested = out_.date;
  result.conditions = conditions;
  out_.targets.push_back({measure, std::move(conditions), stated});
  add(std::move(result));
}

// `passing: {No. 4: 82 %, ...}`: a target for each value of the measure's one condition.
void Binder::declared_row(const Entry& entry, check::MeasureId measure) {
  const auto& conditions = rules_.measures[measure].conditions;
  Node key;
  key.kind = Node::Kind::scalar;
  key.text = entry.key;
  key.span = entry.key_span;
  const ConditionStated at = condition(key, conditions.front());
  for (const Target& other : out_.targets) {
    const bool same = other.measure == measure && other.conditions.size() == 1 && at.value.usable() &&
                      other.conditions.front().value.word == at.value.word &&
                      other.conditions.front().value.amount.value == at.value.amount.value;
    if (same) {
      error(diagnose::Code::submittal_duplicate_key, entry.key_span,
            "found " + diagnose::quoted(entry.key) + " a second time", "keep one of them")
          .secondary.push_back({other.value.span, "the first one"});
    }
  }
  add_declared(measure, {at}, value(entry.value, rules_.measures[measure].type, "`" + entry.key + "`"));
}

void Binder::declared(const Entry& entry, check::MeasureId measure) {
  const check::Measure& of = rules_.measures[measure];
  if (entry.value.kind == Node::Kind::map && of.conditions.size() == 1) {
    for (const Entry& row : entry.value.entries) {
      declared_row(row, measure);
    }
    return;
  }
  const Value stated = value(entry.value, of.type, "`" + entry.key + "`");
  job_mix_.emplace_back(measure, stated);
  add_declared(measure, {}, stated);
}

// A submittal may state classes for specifications that are not part of this review. One that looks like a known class
// is taken for a slip of the pen: an error.
void Binder::unknown_class(const Entry& entry) {
  std::vector<std::string_view> known;
  for (const check::Requirement& requirement : rules_.requirements) {
    for (const check::Test& test : requirement.where) {
      const std::string& name = rules_.categories[test.category].name;
      if (std::find(known.begin(), known.end(), name) == known.end()) {
        known.emplace_back(name);
      }
    }
  }
  if (diagnose::nearest(entry.key, known)) {
    return unknown_key(entry, known, "no class that is known");
  }
  diagnostics_.warning(diagnose::Code::submittal_unknown_key, entry.key_span,
                       "found " + diagnose::quoted(entry.key) + ", a class that no clause of this review asks for",
                       "leave it if another specification needs it");
}

// The job mix declares values of its own: they are results, targets, and they say at which content the trials count.
void Binder::job_mix(const Node& node) {
  if (!is_map(node, "`job_mix`")) {
    return;
  }
  for (const Entry& entry : node.entries) {
    const check::MeasureId id = find_measure(entry.key);
    if (id != none) {
      declared(entry, id);
    } else if (std::find(others_.measures.begin(), others_.measures.end(), entry.key) == others_.measures.end()) {
      std::vector<std::string_view> known(others_.measures.begin(), others_.measures.end());
      for (const check::Measure& measure : rules_.measures) {
        known.emplace_back(measure.name);
      }
      unknown_key(entry, known, "no measure of that name");
    }
  }
}

std::optional<Evidence> Binder::run(const Node& document) {
  if (!is_map(document, "the submittal") || !version(document)) {
    return std::nullopt;
  }
  known_keys(document,
             {"submittal", "project", "mix", "laboratory", "prepared_by", "date", "note", "classes", "materials",
              "job_mix", "results"},
             "a submittal");
  identity(document);
  if (const Node* node = document.find("classes")) {
    classes(*node);
  }
  if (const Node* node = document.find("materials")) {
    materials(*node);
  }
  if (const Node* node = document.find("job_mix")) {
    job_mix(*node);
  }
  if (const Node* node = document.find("results")) {
    results(*node);
  }
  return std::move(out_);
}

std::optional<Evidence> bind(const Node& document, const check::Rules& rules, const KnownNames& others,
                             diagnose::Diagnostics& diagnostics) {
  return Binder(rules, others, diagnostics).run(document);
}

}  // namespace plumbrule::evidence
