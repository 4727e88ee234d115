#include "made_record.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

#include "judge/evidence/evidence.hpp"
#include "judge/explain/wording.hpp"
#include "language/check/shelf.hpp"

namespace plumbrule::followup::made {

// The context points into it: it stays where it was made.
struct Reviewed {
  Reviewed(Shipped& shipped, const Record& record, bool readable)
      : evidence(bind(shipped, record, readable)),
        review(evaluate::evaluate(shipped.plan, evidence)),
        context{shipped.sources, shipped.rules, shipped.plan, evidence, review},
        inspection(audit::inspect(context)) {}
  Reviewed(const Reviewed&) = delete;
  Reviewed& operator=(const Reviewed&) = delete;
  Reviewed(Reviewed&&) = delete;
  Reviewed& operator=(Reviewed&&) = delete;
  ~Reviewed() = default;

  static evidence::Evidence bind(Shipped& shipped, const Record& record, bool readable) {
    const std::string text = made::yaml(record);
    diagnose::Diagnostics diagnostics;
    const auto tree = evidence::read_yaml(shipped.sources, shipped.sources.add("record", text), diagnostics);
    INFO(text);
    REQUIRE(tree);
    auto out = evidence::bind(*tree, shipped.rules, {}, diagnostics);
    for (const diagnose::Diagnostic& one : diagnostics.all()) {
      INFO(one.message);
      REQUIRE_FALSE((readable && one.severity == diagnose::Severity::error));
    }
    REQUIRE(out);
    return std::move(*out);
  }

  evidence::Evidence evidence;
  evaluate::Review review;
  explain::Context context;
  audit::Inspection inspection;
};

namespace {

using check::Rules;
using quantity::Decimal;

constexpr std::size_t values_of_each = 6;

std::string flow(const Words& words) {
  std::string out;
  for (const auto& [name, value] : words) {
    out += (out.empty() ? "" : ", ") + name + ": \"" + value + "\"";
  }
  return "{" + out + "}";
}

// A specimen with readings is a map already.
std::string specimen(const std::string& text) { return text.front() == '{' ? text : "\"" + text + "\""; }

std::string yaml(const Trial& trial) {
  std::string out = "  - measure: " + trial.measure + "\n    under: " + flow(trial.under) + "\n";
  out += trial.at.empty() ? "" : "    at: " + flow(trial.at) + "\n";
  out += trial.lot.empty() ? "" : "    lot: \"" + trial.lot + "\"\n";
  out += trial.tested.empty() ? "" : "    tested: " + trial.tested + "\n";
  std::string list;
  for (const std::string& one : trial.specimens) {
    list += (list.empty() ? "" : ", ") + specimen(one);
  }
  out += list.empty() ? "" : "    specimens: [" + list + "]\n";
  return out + (trial.reported.empty() ? "" : "    reported: \"" + trial.reported + "\"\n");
}

bool any_fails(const Reviewed& reviewed) {
  const auto& all = reviewed.review.findings;
  return std::any_of(all.begin(), all.end(),
                     [](const evaluate::Finding& one) { return one.verdict == evaluate::Verdict::fails; });
}

template <typename Visit>
void each_assertion(const Rules& rules, const Visit& visit) {
  for (const check::Requirement& requirement : rules.requirements) {
    for (const check::Case& one : requirement.cases) {
      for (const check::Alternative& alternative : one.alternatives) {
        std::for_each(alternative.assertions.begin(), alternative.assertions.end(), visit);
      }
    }
  }
}

Words under(const Rules& rules, const check::Assertion& assertion) {
  Words out;
  for (const check::ConditionValue& one : assertion.conditions) {
    const check::Condition& condition = rules.conditions[one.condition];
    const bool number = condition.scale == check::Scale::unit;
    out.emplace(condition.name, number ? one.value.text() + " " + rules.units.at(condition.unit).text : one.written);
  }
  return out;
}

Texts numbers_from(const Decimal& first) {
  Texts out;
  for (std::size_t at = 0; at < values_of_each; ++at) {
    out.push_back((first + Decimal{static_cast<std::int64_t>(at)} * Decimal::of("0.001")).text());
  }
  return out;
}

Texts in_unit(const Rules& rules, const check::Type& type, const Texts& numbers) {
  Texts out;
  for (const std::string& one : numbers) {
    out.push_back(written_value(rules, type, one));
  }
  return out;
}

// Around each end of the limit, and far from it.
std::vector<Texts> candidates(const Rules& rules, const check::Assertion& assertion) {
  std::vector<Texts> out;
  check::Type type = rules.measures[assertion.measure].type;
  if (type.category != check::none) {
    for (const std::string& word : rules.categories[type.category].words) {
      out.push_back(Texts(values_of_each, word));
    }
    return out;
  }
  type.unit = assertion.limit.unit;
  for (const auto& end : {assertion.limit.low, assertion.limit.high}) {
    for (const char* factor : {"0.5", "0.9", "1.1", "1.5"}) {
      if (end) {
        out.push_back(in_unit(rules, type, numbers_from((end->value * Decimal::of(factor)).stripped())));
      }
    }
  }
  out.push_back(in_unit(rules, type, numbers_from(Decimal{50})));
  return out;
}

// Whether they fail is tried with as many as a trial has.
void try_values(Shipped& shipped, const Words& classes, const Texts& values, Subject& out) {
  Record record;
  record.classes = classes;
  record.trials.push_back(out.trial);
  record.trials.front().specimens = first(values, specimens);
  Texts& place = any_fails(Reviewed(shipped, record, true)) ? out.failing : out.passing;
  place = place.empty() ? values : place;
}

std::string name_of(const Subject& subject) {
  std::string out = subject.trial.measure;
  for (const auto& [name, value] : subject.trial.under) {
    out += " " + name + "=" + value;
  }
  return out;
}

}  // namespace

std::unique_ptr<Shipped> read(const std::string& path) {
  auto out = std::make_unique<Shipped>();
  out->path = path;
  diagnose::Diagnostics diagnostics;
  const source::Disk disk;
  check::Shelf shelf(out->sources, disk);
  check::Loaded loaded = check::load(shelf, {path, {}, {"specs"}}, diagnostics);
  check::amend(loaded, "", diagnostics, diagnostics);
  auto rules = check::check(out->sources, loaded.files, diagnostics);
  INFO(path);
  REQUIRE(rules);
  out->rules = std::move(*rules);
  out->plan = plan::compile(out->rules);
  return out;
}

Texts shipped_files() {
  Texts out;
  for (const auto& entry : std::filesystem::directory_iterator("specs")) {
    if (entry.path().extension() == ".plumb") {
      out.push_back(entry.path().string());
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

Texts first(const Texts& values, std::size_t count) {
  return {values.begin(), values.begin() + static_cast<std::ptrdiff_t>(count)};
}

std::string yaml(const Record& record) {
  std::string out = "submittal: 1\nproject: \"" + record.project + "\"\nmix: \"" + record.mix + "\"\n";
  out += record.date.empty() ? "" : "date: " + record.date + "\n";
  out += "classes: " + flow(record.classes) + "\njob_mix: " + flow(record.job_mix) +
         "\nresults:" + (record.trials.empty() ? " []\n" : "\n");
  for (const Trial& one : record.trials) {
    out += yaml(one);
  }
  return out;
}

std::string written_value(const Rules& rules, const check::Type& type, const std::string& number) {
  const std::string unit = rules.units.at(type.unit).text;
  const std::string basis = type.basis == check::none ? "" : " of " + rules.bases[type.basis].name;
  return number + (unit.empty() ? "" : " " + unit) + basis;
}

std::vector<Subject> subjects(Shipped& shipped, const Words& classes) {
  std::map<std::string, Subject> found;
  each_assertion(shipped.rules, [&](const check::Assertion& assertion) {
    const check::Measure& measure = shipped.rules.measures[assertion.measure];
    if (measure.type.text) {
      return;
    }
    Subject one;
    one.measure = assertion.measure;
    one.trial.measure = measure.name;
    one.trial.under = under(shipped.rules, assertion);
    Subject& subject = found.try_emplace(name_of(one), one).first->second;
    for (const Texts& values : candidates(shipped.rules, assertion)) {
      if (subject.failing.empty() || subject.passing.empty()) {
        try_values(shipped, classes, values, subject);
      }
    }
  });
  std::vector<Subject> out;
  for (auto& [name, one] : found) {
    if (!one.passing.empty()) {
      out.push_back(std::move(one));
    }
  }
  return out;
}

Words classes_of(const Shipped& shipped, std::size_t number) {
  Words out;
  const auto add = [&](const std::vector<check::Test>& tests) {
    for (const check::Test& test : tests) {
      const check::Category& category = shipped.rules.categories[test.category];
      out[category.name] = category.words[std::min(number, category.words.size() - 1)];
    }
  };
  for (const check::Requirement& requirement : shipped.rules.requirements) {
    add(requirement.where);
    for (const check::Case& one : requirement.cases) {
      add(one.where);
    }
  }
  return out;
}

FollowUp follow(Shipped& shipped, const Record& before, const Record& after, bool readable) {
  std::string text = yaml(before);
  if (shipped.earlier == nullptr || shipped.earlier_text != text) {
    shipped.earlier = std::make_shared<const Reviewed>(shipped, before, true);
    shipped.earlier_text = std::move(text);
  }
  const Reviewed later(shipped, after, readable);
  return compare({shipped.earlier->context, shipped.earlier->inspection.findings},
                 {later.context, later.inspection.findings});
}

std::set<std::size_t> failing(Shipped& shipped, const Record& record) {
  std::set<std::size_t> out;
  for (std::size_t at = 0; at < record.trials.size(); ++at) {
    Record alone = record;
    alone.trials = {record.trials[at]};
    if (any_fails(Reviewed(shipped, alone, true))) {
      out.insert(at);
    }
  }
  return out;
}

std::string codes(const FollowUp& followup) {
  std::string out;
  for (const Look& one : followup.looks) {
    out += (out.empty() ? "" : " ") + std::string(look_code(one.kind));
  }
  return out;
}

}  // namespace plumbrule::followup::made
