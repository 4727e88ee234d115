// Every shipped specification, every test that it asks for: an honest resubmittal draws no look, and each kind of
// tampering draws the look that is meant for it, and no other. All records are invented.

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <random>

#include "base/quantity/sieve.hpp"
#include "made_record.hpp"

namespace plumbrule::followup {
namespace {

using made::first;
using made::Record;
using made::Shipped;
using made::specimens;
using made::Subject;
using made::Texts;
using made::Trial;
using made::Words;

constexpr std::size_t assignments = 3;  // of classes

Texts last(const Texts& values, std::size_t count) {
  return {values.end() - static_cast<std::ptrdiff_t>(count), values.end()};
}

// What is asked for under some classes, each with the values that fail there if there are any.
struct Scene {
  Shipped& shipped;
  std::vector<Subject> subjects;
  Record before;
};

Scene scene(Shipped& shipped, std::size_t number) {
  Scene out{shipped, {}, {}};
  out.before.classes = made::classes_of(shipped, number);
  out.subjects = made::subjects(shipped, out.before.classes);
  for (const Subject& one : out.subjects) {
    Trial trial = one.trial;
    trial.specimens = first(one.failing.empty() ? one.passing : one.failing, specimens);
    out.before.trials.push_back(trial);
  }
  return out;
}

void each_scene(const std::function<void(Scene&)>& visit) {
  for (const std::string& path : made::shipped_files()) {
    const auto shipped = made::read(path);
    for (std::size_t number = 0; number < assignments; ++number) {
      Scene one = scene(*shipped, number);
      INFO(path << ", classes " << number);
      visit(one);
    }
  }
}

bool is_word(const Scene& scene, std::size_t at) {
  return scene.shipped.rules.measures[scene.subjects[at].measure].type.is_word();
}

// Changes a trial of the resubmittal; false if there is nothing of the kind to change.
using Change = std::function<bool(const Scene& scene, std::size_t at, Record& before, Record& after)>;

struct Kind {
  const char* code;
  Change change;
  bool readable = true;
};

bool another_value(const Scene& scene, std::size_t at, Trial& trial) {
  const Subject& subject = scene.subjects[at];
  const bool word = is_word(scene, at);
  if (word && subject.failing.empty()) {
    return false;
  }
  trial.specimens.front() = word ? subject.passing.front() : subject.passing.back();
  return true;
}

bool to_other_condition(const Scene& scene, std::size_t at, Trial& trial) {
  const check::Rules& rules = scene.shipped.rules;
  for (auto& [name, value] : trial.under) {
    const auto condition = std::find_if(rules.conditions.begin(), rules.conditions.end(),
                                        [&, &wanted = name](const auto& one) { return one.name == wanted; });
    const auto used = [&, &wanted = name](const std::string& text) {
      return std::any_of(scene.subjects.begin(), scene.subjects.end(), [&](const Subject& one) {
        const auto found = one.trial.under.find(wanted);
        return one.measure == scene.subjects[at].measure && found != one.trial.under.end() &&
               quantity::sieve_opening(found->second) == quantity::sieve_opening(text);
      });
    };
    if (condition->scale == check::Scale::unit) {
      value = "777.7 " + rules.units.at(condition->unit).text;
      return true;
    }
    for (const std::string& sieve : quantity::known_sieves()) {
      if (condition->scale == check::Scale::sieve && !used(sieve)) {
        value = sieve;
        return true;
      }
    }
  }
  return false;
}

// Of the same type and under the same conditions, and not asked for.
const check::Measure* other_measure(const Scene& scene, std::size_t at) {
  const std::vector<check::Measure>& all = scene.shipped.rules.measures;
  const check::Measure& own = all[scene.subjects[at].measure];
  const auto asked = [&](const check::Measure& measure) {
    return std::any_of(scene.subjects.begin(), scene.subjects.end(),
                       [&](const Subject& one) { return one.trial.measure == measure.name; });
  };
  const auto found = std::find_if(all.begin(), all.end(), [&](const check::Measure& one) {
    return !asked(one) && one.type.unit == own.type.unit && one.type.basis == own.type.basis &&
           one.type.category == own.type.category && !one.type.text && one.conditions == own.conditions;
  });
  return found == all.end() ? nullptr : &*found;
}

bool fails(const Scene& scene, std::size_t at) { return !scene.subjects[at].failing.empty(); }

const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all{
      {"reading_altered", [](const Scene& scene, std::size_t at, Record&,
                             Record& after) { return another_value(scene, at, after.trials[at]); }},
      {"reading_altered",  // dated later, and still before the earlier submittal
       [](const Scene& scene, std::size_t at, Record&, Record& after) {
         Trial& trial = after.trials[at];
         trial.tested = "2026-03-20";
         trial.specimens = last(scene.subjects[at].passing, specimens);
         return !is_word(scene, at);
       }},
      {"reading_altered",
       [](const Scene& scene, std::size_t at, Record& before, Record& after) {
         const Subject& subject = scene.subjects[at];
         for (Record* one : {&before, &after}) {
           one->trials[at].specimens.clear();
         }
         before.trials[at].reported = fails(scene, at) ? subject.failing.front() : subject.passing.front();
         after.trials[at].reported = subject.passing.back();
         return fails(scene, at) || !is_word(scene, at);
       }},
      {"reading_altered",
       [](const Scene&, std::size_t at, Record&, Record& after) {
         after.trials[at].specimens.front() = "illegible";
         return true;
       },
       false},
      {"reported_alone",
       [](const Scene& scene, std::size_t at, Record& before, Record& after) {
         before.trials[at].reported = scene.subjects[at].passing.front();
         after.trials[at].reported = scene.subjects[at].passing.back();
         return !is_word(scene, at);
       }},
      {"readings_gone",
       [](const Scene& scene, std::size_t at, Record&, Record& after) {
         after.trials[at].specimens.clear();
         after.trials[at].reported = scene.subjects[at].passing.front();
         return true;
       }},
      {"readings_gone",
       [](const Scene& scene, std::size_t at, Record& before, Record& after) {
         const check::Measure& measure = scene.shipped.rules.measures[scene.subjects[at].measure];
         std::string readings;
         for (const check::Reading& one : measure.readings) {
           const bool word = one.type.is_word();
           readings += (readings.empty() ? "" : ", ") + one.name + ": \"" +
                       (word ? scene.shipped.rules.categories[one.type.category].words.front()
                             : made::written_value(scene.shipped.rules, one.type, "7.31")) +
                       "\"";
         }
         before.trials[at].specimens = {"{" + readings + "}"};
         after.trials[at].specimens = {"{value: \"" + scene.subjects[at].passing.front() + "\"}"};
         return !readings.empty();
       }},
      {"specimen_gone",
       [](const Scene&, std::size_t at, Record&, Record& after) {
         after.trials[at].specimens.pop_back();
         return true;
       }},
      {"specimen_added",
       [](const Scene& scene, std::size_t at, Record&, Record& after) {
         after.trials[at].specimens.push_back(scene.subjects[at].passing.back());
         return fails(scene, at);
       }},
      {"failing_gone",
       [](const Scene& scene, std::size_t at, Record&, Record& after) {
         after.trials.erase(after.trials.begin() + static_cast<std::ptrdiff_t>(at));
         return fails(scene, at);
       }},
      {"moved",
       [](const Scene& scene, std::size_t at, Record& before, Record& after) {
         for (Record* one : {&before, &after}) {
           one->trials[at].specimens.resize(1);  // a single reading
         }
         return to_other_condition(scene, at, after.trials[at]);
       }},
      {"moved",
       [](const Scene& scene, std::size_t at, Record&, Record& after) {
         const check::Measure* other = other_measure(scene, at);
         after.trials[at].measure = other == nullptr ? "" : other->name;
         return other != nullptr;
       }},
      {"readings_repeated",
       [](const Scene& scene, std::size_t at, Record&, Record& after) {
         after.trials[at].tested = "2026-04-02";
         return !is_word(scene, at);
       }},
      {"other_submittal",
       [](const Scene&, std::size_t, Record&, Record& after) {
         after.mix = "MS-08-D";
         return true;
       }},
      {"dates_reversed",
       [](const Scene&, std::size_t, Record&, Record& after) {
         after.date = "2026-03-19";
         return true;
       }},
  };
  return all;
}

TEST_CASE("each kind of tampering with any test of a shipped specification draws its look alone", "[followup]") {
  std::map<std::string, std::size_t> drawn;
  each_scene([&](Scene& scene) {
    for (const Kind& kind : kinds()) {
      for (std::size_t at = 0; at < scene.subjects.size(); ++at) {
        Record before = scene.before;
        Record after = scene.before;
        after.date = "2026-04-10";
        if (!kind.change(scene, at, before, after)) {
          continue;
        }
        const FollowUp found = made::follow(scene.shipped, before, after, kind.readable);
        INFO(kind.code << " of " << made::yaml({{}, {}, {}, {}, {}, {before.trials[at]}}));
        REQUIRE(made::codes(found) == kind.code);
        ++drawn[kind.code];
      }
    }
  });
  for (const Kind& kind : kinds()) {
    INFO(kind.code);
    CHECK(drawn[kind.code] > 50);
  }
}

// Of the clauses that fail, those that ask for a class lose it.
TEST_CASE("a class that is not stated any more draws a look if a clause failed that asks for it", "[followup]") {
  std::size_t drawn = 0;
  each_scene([&](Scene& scene) {
    for (const auto& [name, word] : scene.before.classes) {
      Record after = scene.before;
      after.classes.erase(name);
      const FollowUp found = made::follow(scene.shipped, scene.before, after);
      const bool lost = std::any_of(found.clauses.begin(), found.clauses.end(), [&](const ClauseProgress& one) {
        const check::Requirement& rule = scene.shipped.rules.requirements[one.requirement];
        return one.progress != Progress::fresh && rule.cases.size() == 1 && rule.where.size() == 1 &&
               scene.shipped.rules.categories[rule.where.front().category].name == name;
      });
      INFO(name);
      REQUIRE((!lost || made::codes(found).find("class_changed") != std::string::npos));
      drawn += lost ? 1 : 0;
    }
  });
  CHECK(drawn > 10);
}

TEST_CASE("another value of the job mix draws a look if the tests are those of before", "[followup]") {
  std::size_t drawn = 0;
  each_scene([&](Scene& scene) {
    for (const Subject& subject : scene.subjects) {
      if (!subject.trial.under.empty() || scene.shipped.rules.measures[subject.measure].type.is_word()) {
        continue;
      }
      for (const bool at_value : {false, true}) {
        Record before = scene.before;
        before.job_mix[subject.trial.measure] = subject.passing.front();
        for (Trial& trial : before.trials) {
          trial.at = at_value ? before.job_mix : Words{};
        }
        Record after = before;
        after.job_mix[subject.trial.measure] = subject.passing.back();
        INFO(subject.trial.measure << (at_value ? ", which the tests state" : ""));
        REQUIRE(made::codes(made::follow(scene.shipped, before, after)) == "job_mix_changed");
        ++drawn;
      }
    }
  });
  CHECK(drawn > 50);
}

TEST_CASE("an honest resubmittal of any shipped specification draws no look", "[followup]") {
  std::mt19937 random(1);
  const auto one_of = [&](std::size_t count) { return static_cast<std::size_t>(random() % count); };
  std::size_t repeated = 0;
  each_scene([&](Scene& scene) {
    for (int run = 0; run < 6; ++run) {
      Record before = scene.before;
      for (std::size_t at = 0; at < before.trials.size(); ++at) {
        const Subject& subject = scene.subjects[at];
        const bool failing = !subject.failing.empty() && one_of(2) == 0;
        before.trials[at].specimens = first(failing ? subject.failing : subject.passing, 1 + one_of(specimens));
        before.trials[at].tested = "2026-03-" + std::to_string(10 + one_of(11));
      }
      Record after = before;
      after.date = "2026-04-10";
      for (const std::size_t at : made::failing(scene.shipped, before)) {
        Trial again = before.trials[at];
        again.tested = "2026-04-0" + std::to_string(1 + one_of(9));
        again.specimens = last(scene.subjects[at].passing, again.specimens.size());
        if (one_of(2) == 0) {
          after.trials[at] = again;
        } else {
          after.trials.push_back(again);
        }
        ++repeated;
      }
      std::shuffle(after.trials.begin(), after.trials.end(), random);
      INFO(made::yaml(before) << made::yaml(after));
      REQUIRE(made::codes(made::follow(scene.shipped, before, after)).empty());
    }
  });
  CHECK(repeated > 500);
}

}  // namespace
}  // namespace plumbrule::followup
