// What is worth a look of the submittals as a whole: whose they are, the job mix, the classes.

#include <algorithm>

#include "base/diagnose/quote.hpp"
#include "judge/explain/wording.hpp"
#include "apply/followup/comparer.hpp"

namespace plumbrule::followup {
namespace {

using diagnose::quoted;
using evaluate::Reason;
using evaluate::StepKind;
using evaluate::Verdict;

std::uint32_t chosen_case(const Context& context, std::uint32_t requirement) {
  for (const evaluate::Step& step : plan::part(context.review.trace, context.review.findings[requirement].steps)) {
    if (step.kind == StepKind::case_chosen) {
      return step.index;
    }
  }
  return check::none;
}

std::string class_text(const Context& context, const Value& value) {
  return value.kind == Value::Kind::missing ? not_stated : quoted(written(context, value.span));
}

bool as_before(const Result& from, const Result& to, bool restyled, std::size_t changes) {
  return changes == 0 && from.tested == to.tested && (restyled || from.specimens.size() == to.specimens.size());
}

}  // namespace

void Comparer::whose() {
  const auto other = [&](const std::string& what, const std::string& from, const std::string& to, const Span& before,
                         const Span& after) {
    if (!from.empty() && !to.empty() && plain(from) != plain(to)) {
      look(LookKind::other_submittal, what + " was " + quoted(from) + " and is " + quoted(to),
           "ask whether both files are of one mix", before, after);
    }
  };
  const evidence::Identity& from = before_.evidence.identity;
  const evidence::Identity& to = after_.evidence.identity;
  other("project", from.project, to.project, from.project_place, to.project_place);
  other("mix", from.mix, to.mix, from.mix_place, to.mix_place);
  const evidence::Day& first = before_.evidence.reviewed;
  const evidence::Day& second = after_.evidence.reviewed;
  if (second.day != evidence::no_date && first.day > second.day) {
    look(LookKind::dates_reversed,
         "the submittal of before is dated " + written(before_, first.span) + ", the one of now " +
             written(after_, second.span),
         "ask whether the files were exchanged", first.span, second.span);
  }
}

// It stood at the job mix, which went elsewhere, and nothing of its kind was tested there.
bool Comparer::left_behind(const Result& result) const {
  const std::vector<Result>& all = after_.evidence.results;
  return result.design != evidence::Design::job_mix && std::none_of(all.begin(), all.end(), [&](const Result& one) {
           return !one.declared && one.measure == result.measure && one.design == evidence::Design::job_mix &&
                  same_conditions(after_, one, result);
         });
}

// Values that the job mix declares anew, and the tests at the job mix, a series as one.
void Comparer::count_kept(const Pair& pair, const Differences& found) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  if (from.declared) {
    if (!found.altered.empty() && to.reported.usable()) {
      redeclared_.emplace_back(to.measure, out_.values[found.altered.front()]);
    }
    return;
  }
  const bool stays = to.design == evidence::Design::job_mix;
  if (pair.moved || from.design != evidence::Design::job_mix || (!stays && !left_behind(to))) {
    return;
  }
  const bool series = to.series != check::none;
  Test& test = tests_.try_emplace({series, series ? to.series : pair.after}).first->second;
  test.measure = to.measure;
  test.kept =
      test.kept && as_before(from, to, found.restyled, found.altered.size() + found.bare + (found.reported ? 1U : 0U));
}

std::size_t Comparer::kept() const {
  return static_cast<std::size_t>(
      std::count_if(tests_.begin(), tests_.end(), [](const auto& entry) { return entry.second.kept; }));
}

std::string Comparer::kept_text() const {
  return "; tests at the job mix that are those of before, with their dates: " + std::to_string(kept()) + " of " +
         std::to_string(tests_.size());
}

// Tests of the aggregate alone do not depend on the job mix; most tests do, and so does one that measures what it
// declares.
void Comparer::job_mix_changed() {
  const bool own = std::any_of(tests_.begin(), tests_.end(), [&](const auto& entry) {
    return entry.second.kept && std::any_of(redeclared_.begin(), redeclared_.end(),
                                            [&](const auto& one) { return one.first == entry.second.measure; });
  });
  if (redeclared_.empty() || (!own && 2 * kept() <= tests_.size())) {
    return;
  }
  const ValueChange& change = redeclared_.front().second;
  const std::size_t others = redeclared_.size() - 1;
  look(LookKind::job_mix_changed,
       change.subject + " was " + quoted(change.before) + " and is " + quoted(change.after) +
           (others > 0 ? " (and " + std::to_string(others) + " more)" : "") + kept_text(),
       "ask which mix the tests are of", change.before_place, change.after_place);
}

// Of the list, if most tests stay as with the job mix; and of the tests that say what they were made of.
void Comparer::materials_changed() {
  const auto more = [](std::size_t count) {
    return count > 1 ? " (and " + std::to_string(count - 1) + " more)" : std::string();
  };
  const auto shown = [](const std::string& text) {
    return text == not_stated || text == "not there" ? text : quoted(text);
  };
  if (!materials_.empty() && 2 * kept() > tests_.size()) {
    const ValueChange& change = materials_.front();
    look(LookKind::materials_changed,
         change.subject + ": " + change.what + " was " + shown(change.before) + " and is " + shown(change.after) +
             more(materials_.size()) + kept_text(),
         "ask which materials the tests were made of", change.before_place, change.after_place);
  }
  if (!used_.empty()) {
    const ValueChange& change = used_.front().change;
    look(LookKind::materials_changed,
         change.subject + ": " + change.what + " was " + shown(change.before) + " and is " + shown(change.after) +
             more(used_.size()) + ", and " + dates(used_.front().pair),
         "ask which materials the test was made of", change.before_place, change.after_place);
  }
}

std::set<check::CategoryId> Comparer::tested_classes(std::uint32_t requirement) const {
  std::set<check::CategoryId> out;
  const check::Requirement& rule = after_.rules.requirements[requirement];
  for (const check::Test& test : rule.where) {
    out.insert(test.category);
  }
  for (const check::Case& one : rule.cases) {
    for (const check::Test& test : one.where) {
      out.insert(test.category);
    }
  }
  return out;
}

// What became by the classes of a clause that was open; empty if it asks for what it did.
std::string Comparer::by_class(const ClauseProgress& clause) const {
  const evaluate::Finding& from = before_.review.findings[clause.requirement];
  const evaluate::Finding& to = after_.review.findings[clause.requirement];
  const std::string name = "clause " + after_.rules.requirements[clause.requirement].number;
  if (clause.progress == Progress::fresh) {
    return {};
  }
  if (to.verdict == Verdict::does_not_apply) {
    return name + " no longer applies";
  }
  if (to.reason == Reason::class_not_stated) {
    return from.reason == Reason::class_not_stated ? "" : "what " + name + " asks for is not known any more";
  }
  const bool other = chosen_case(before_, clause.requirement) != chosen_case(after_, clause.requirement);
  const bool less =
      clause.progress == Progress::closed || (from.verdict == Verdict::fails && to.verdict != Verdict::fails);
  return other && less ? name + " now asks for something else" : "";
}

void Comparer::class_changed(const ClauseProgress& clause) {
  const std::string became = by_class(clause);
  for (const check::CategoryId category : tested_classes(clause.requirement)) {
    const Value& from = before_.evidence.classes[category];
    const Value& to = after_.evidence.classes[category];
    if (became.empty() || (from.kind == to.kind && from.word == to.word) || !from.usable()) {
      continue;
    }
    look(LookKind::class_changed,
         "class " + quoted(explain::spaced(after_.rules.categories[category].name)) + " was " +
             class_text(before_, from) + " and is " + class_text(after_, to) + ": " + became,
         "compare the class with the contract", from.span, to.span);
  }
}

}  // namespace plumbrule::followup
