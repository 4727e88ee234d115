// What is worth a look. Wording: what differs, and what to compare; never whose fault it may be.

#include <algorithm>

#include "explain/wording.hpp"
#include "followup/comparer.hpp"

namespace plumbrule::followup {
namespace {

using evaluate::StepKind;
using evaluate::Verdict;

std::string quoted(const std::string& text) { return "`" + text + "`"; }

std::string day_text(const Context& context, const Result& result) {
  if (result.tested == evidence::no_date) {
    return "no date";
  }
  return result.record.tested.span.known() ? written(context, result.record.tested.span) : "the date of its row";
}

std::uint32_t chosen_case(const Context& context, std::uint32_t requirement) {
  for (const evaluate::Step& step : plan::part(context.review.trace, context.review.findings[requirement].steps)) {
    if (step.kind == StepKind::case_chosen) {
      return step.index;
    }
  }
  return check::none;
}

std::string class_text(const Context& context, const Value& value) {
  return value.kind == Value::Kind::missing ? "not stated" : quoted(written(context, value.span));
}

}  // namespace

// Results that a failing clause counts, without those of them that comply.
std::set<std::uint32_t> Comparer::failing() const {
  std::set<std::uint32_t> out;
  for (const evaluate::Finding& finding : before_.review.findings) {
    if (finding.verdict != Verdict::fails) {
      continue;
    }
    std::set<std::uint32_t> met;
    for (const evaluate::Step& step : plan::part(before_.review.trace, finding.steps)) {
      if (step.kind == StepKind::check) {
        met.clear();
      } else if (step.kind == StepKind::result) {
        met.insert(step.index);
      } else if (step.kind == StepKind::result_verdict && step.outcome != Verdict::fails) {
        met.erase(step.index);
      } else if (step.kind == StepKind::check_verdict && step.outcome == Verdict::fails) {
        out.insert(met.begin(), met.end());
      }
    }
  }
  return out;
}

// A later date than before; where none was stated, one after the earlier submittal.
bool Comparer::retested(const Pair& pair) const {
  const std::int32_t then = earlier(pair).tested;
  const std::int32_t now = later(pair).tested;
  return now != evidence::no_date && now > (then == evidence::no_date ? before_.evidence.reviewed.day : then);
}

void Comparer::altered(const Pair& pair, const Differences& found) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  const bool only_reported = from.specimens.empty() && to.specimens.empty() && found.reported;
  const bool usable = !found.altered.empty() || (only_reported && from.reported.usable());
  if (!usable || from.declared || retested(pair)) {
    return;
  }
  const ValueChange change = found.altered.empty() ? ValueChange{subject(after_, to),
                                                                 "reported value",
                                                                 written(before_, from.reported.span),
                                                                 written(after_, to.reported.span),
                                                                 "",
                                                                 from.reported.span,
                                                                 to.reported.span}
                                                   : out_.values[found.altered.front()];
  const std::string more =
      found.altered.size() > 1 ? " (and " + std::to_string(found.altered.size() - 1) + " more)" : "";
  const bool same_day = from.tested == to.tested;
  const std::string dates =
      same_day
          ? "and the test has " +
                (to.tested == evidence::no_date ? "no date" : "the date of before, " + day_text(after_, to))
          : "and the test is not dated later: " + day_text(before_, from) + " before, " + day_text(after_, to) + " now";
  look(LookKind::reading_altered,
       change.subject + ": " + change.what + " was " + quoted(change.before) + " and is " + quoted(change.after) +
           more + ", " + dates,
       "compare both with the worksheet; a repeated test has a date of its own", change.before_place,
       change.after_place);
}

void Comparer::reported_alone(const Pair& pair, const Differences& found) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  const bool same_readings =
      found.compared > 0 && found.unchanged == found.compared && from.specimens.size() == to.specimens.size();
  if (found.reported && same_readings && from.reported.usable() && to.reported.usable()) {
    look(LookKind::reported_alone,
         subject(after_, to) + ": the reported value was " + quoted(written(before_, from.reported.span)) + " and is " +
             quoted(written(after_, to.reported.span)) + ", its readings are those of before",
         "compare the value with what the readings give", from.reported.span, to.reported.span);
  }
}

void Comparer::specimen_gone(const Pair& pair, const Differences& found) {
  if (found.removed.empty() || found.unchanged == 0) {
    return;
  }
  const Result& from = earlier(pair);
  const std::size_t count = found.removed.size();
  look(LookKind::specimen_gone,
       subject(after_, later(pair)) + ": " + std::to_string(count) + " of " + std::to_string(from.specimens.size()) +
           " specimens " + (count == 1 ? "is" : "are") + " not submitted any more, others are those of before",
       "ask why; a specimen is discarded for a stated cause", from.specimens[found.removed.front()].span,
       later(pair).span);
}

void Comparer::repeated(const Pair& pair, const Differences& found) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  if (from.tested == to.tested || from.tested == evidence::no_date || to.tested == evidence::no_date) {
    return;
  }
  if (to.series != check::none) {
    Rows& rows = series_.try_emplace(to.series, Rows{0, 0, pair}).first->second;
    ++rows.count;
    rows.same += found.unchanged > 0 ? 1U : 0U;
    return;
  }
  constexpr std::size_t by_chance = 2;  // so many single numbers may agree
  if (found.most < 2 && found.numbers <= by_chance) {
    return;
  }
  const std::string share = found.unchanged == to.specimens.size()
                                ? "the readings are"
                                : "the readings of " + std::to_string(found.unchanged) + " of " +
                                      std::to_string(to.specimens.size()) + " specimens are";
  look(LookKind::readings_repeated,
       subject(after_, to) + ": " + share + " those of before, under another date of the test: " +
           day_text(before_, from) + " before, " + day_text(after_, to) + " now",
       "ask which date is right; a repeated test has readings of its own", from.span, to.span);
}

void Comparer::repeated_series() {
  constexpr std::size_t enough = 3;
  for (const auto& [series, rows] : series_) {
    if (rows.count >= enough && rows.same == rows.count) {
      const Result& to = later(rows.first);
      look(LookKind::readings_repeated,
           measure(to).title + ", series of " + std::to_string(rows.count) +
               " rows: the readings are those of before, under another date of the test: " +
               day_text(before_, earlier(rows.first)) + " before, " + day_text(after_, to) + " now",
           "ask which date is right; a repeated test has readings of its own", earlier(rows.first).span, to.span);
    }
  }
}

void Comparer::moved(const Pair& pair, bool failed) {
  const std::string then = placing(before_, earlier(pair));
  const std::string now = placing(after_, later(pair));
  const auto stood = [](const std::string& text) { return text.empty() ? "the job mix" : quoted(text); };
  const std::string places = then == now ? "stand for another job mix than before"
                                         : "stood for " + stood(then) + " before and stand for " + stood(now) + " now";
  look(LookKind::moved,
       measure(later(pair)).title + ": the same values " + places + (failed ? "; there they failed a clause" : ""),
       "compare with the worksheet what was tested", earlier(pair).span, later(pair).span);
}

void Comparer::gone(const std::set<std::uint32_t>& failed) {
  for (const std::uint32_t at : matching_.removed) {
    if (failed.count(at) > 0) {
      const Result& one = before_.evidence.results[at];
      look(LookKind::failing_gone, subject(before_, one) + ": a result that failed a clause is not submitted any more",
           "ask what became of it; a repeated test does not undo the first", one.span, {});
    }
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

void Comparer::class_changed(const ClauseProgress& clause) {
  const bool applies = after_.review.findings[clause.requirement].verdict != Verdict::does_not_apply;
  const bool less = clause.progress == Progress::closed &&
                    chosen_case(before_, clause.requirement) != chosen_case(after_, clause.requirement);
  if (clause.progress != Progress::withdrawn && !less) {
    return;
  }
  for (const check::CategoryId category : tested_classes(clause.requirement)) {
    const Value& from = before_.evidence.classes[category];
    const Value& to = after_.evidence.classes[category];
    if ((from.kind == to.kind && from.word == to.word) || (applies && !less) || !from.usable()) {
      continue;
    }
    look(LookKind::class_changed,
         "class " + quoted(explain::spaced(after_.rules.categories[category].name)) + " was " +
             class_text(before_, from) + " and is " + class_text(after_, to) + ": clause " +
             after_.rules.requirements[clause.requirement].number +
             (applies ? " now asks for something else" : " no longer applies"),
         "compare the class with the contract", from.span, to.span);
  }
}

void Comparer::looks(const Pair& pair, const Differences& found, const std::set<std::uint32_t>& failed) {
  if (pair.moved) {
    moved(pair, failed.count(pair.before) > 0);
  }
  altered(pair, found);
  reported_alone(pair, found);
  specimen_gone(pair, found);
  repeated(pair, found);
}

}  // namespace plumbrule::followup
