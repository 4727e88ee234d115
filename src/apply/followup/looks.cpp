// What is worth a look of one test. Wording: what differs, and what to compare; never whose fault it may be.

#include <algorithm>
#include <chrono>

#include "base/diagnose/quote.hpp"
#include "judge/explain/wording.hpp"
#include "apply/followup/comparer.hpp"

namespace plumbrule::followup {
namespace {

using diagnose::quoted;
using evaluate::StepKind;
using evaluate::Verdict;

// "2026-03-20", of a day since 1970-01-01.
std::string date_text(std::int32_t days) {
  const std::chrono::year_month_day day{std::chrono::sys_days{std::chrono::days{days}}};
  const auto two = [](unsigned number) { return (number < 10 ? "-0" : "-") + std::to_string(number); };
  const std::string year = std::to_string(static_cast<int>(day.year()));
  return std::string(year.size() < 4 ? 4 - year.size() : 0, '0') + year + two(static_cast<unsigned>(day.month())) +
         two(static_cast<unsigned>(day.day()));
}

std::string day_text(const Context& context, const Result& result) {
  const Span& place = result.record.tested.span;
  if (result.tested == evidence::no_date) {
    return place.known() ? "no readable date" : "no date";
  }
  return place.known() ? written(context, place) : date_text(result.tested);
}

std::size_t significant(const quantity::Decimal& number) {
  const std::string text = number.text();
  const std::size_t first = text.find_first_of("123456789");
  return first == std::string::npos
             ? 0
             : static_cast<std::size_t>(std::count_if(text.begin() + static_cast<std::ptrdiff_t>(first), text.end(),
                                                      [](char one) { return one >= '0' && one <= '9'; }));
}

bool gives_something(const Specimen& one) {
  return one.direct.usable() ||
         std::any_of(one.readings.begin(), one.readings.end(), [](const Value& value) { return value.usable(); });
}

bool has_numbers(const Result& result) {
  const auto number = [](const Value& value) { return value.kind == Value::Kind::quantity; };
  return std::any_of(result.specimens.begin(), result.specimens.end(), [&](const Specimen& one) {
    return number(one.direct) || std::any_of(one.readings.begin(), one.readings.end(), number);
  });
}

}  // namespace

// Results that a failing clause counts, without those of them that comply.
std::set<std::uint32_t> Comparer::failing(const Context& context) {
  std::set<std::uint32_t> out;
  for (const evaluate::Finding& finding : context.review.findings) {
    if (finding.verdict != Verdict::fails) {
      continue;
    }
    std::set<std::uint32_t> met;
    for (const evaluate::Step& step : plan::part(context.review.trace, finding.steps)) {
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

// A later date than before, and than the earlier submittal, which would have held a test of its own days.
bool Comparer::retested(const Pair& pair) const {
  const std::int32_t now = later(pair).tested;
  return now != evidence::no_date && now > earlier(pair).tested && now > before_.evidence.reviewed.day;
}

// Why the test is not taken for a repeated one.
std::string Comparer::dates(const Pair& pair) const {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  if (from.tested == to.tested) {
    return "the test has " +
           (to.tested == evidence::no_date ? "no date" : "the date of before, " + day_text(after_, to));
  }
  const std::string both = ": " + day_text(before_, from) + " before, " + day_text(after_, to) + " now";
  return to.tested > from.tested ? "the test is not dated after the submittal of before" + both + ", submitted " +
                                       written(before_, before_.evidence.reviewed.span)
                                 : "the test is not dated later" + both;
}

std::vector<std::size_t> Comparer::untold(const Differences& found) {
  std::vector<std::size_t> out;
  const auto position = [](const Span& span) { return Position(span.file, span.begin); };
  for (const std::vector<std::size_t>* list : {&found.altered, &found.noted}) {
    for (const std::size_t at : *list) {
      const ValueChange& one = out_.values[at];
      if (told_.emplace(position(one.before_place), position(one.after_place)).second) {
        out.push_back(at);
      }
    }
  }
  return out;
}

void Comparer::altered(const Pair& pair, const Differences& found) {
  if (earlier(pair).declared || retested(pair)) {
    return;
  }
  const std::vector<std::size_t> all = untold(found);
  if (all.empty()) {
    return;
  }
  const ValueChange change = out_.values[all.front()];
  const std::size_t others = all.size() - 1;
  look(LookKind::reading_altered,
       change.subject + ": " + change.what + " was " + quoted(change.before) + " and is " +
           (change.after == not_stated ? change.after : quoted(change.after)) +
           (others > 0 ? " (and " + std::to_string(others) + " more)" : "") + ", and " + dates(pair),
       "compare both with the worksheet; a repeated test has a date of its own", change.before_place,
       change.after_place);
}

// Digits that were left away may be those by which a clause failed.
void Comparer::too_coarse(const Pair& pair, const Differences& found) {
  if (found.converted.empty() || !found.altered.empty() || !cured(pair) || retested(pair)) {
    return;
  }
  const ValueChange change = out_.values[found.converted.front()];
  look(LookKind::reading_altered,
       change.subject + ": " + change.what + " was " + quoted(change.before) + " and is " + quoted(change.after) +
           ", the same as far as its digits go; it failed a clause before and does not now, and " + dates(pair),
       "compare both with the worksheet, with all digits", change.before_place, change.after_place);
}

void Comparer::readings_gone(const Pair& pair, const Differences& found) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  const bool gave = std::any_of(from.specimens.begin(), from.specimens.end(), gives_something);
  const bool all = to.specimens.empty() && to.reported.usable() && gave;
  if (found.restyled || (!all && found.bare == 0)) {
    return;
  }
  const std::size_t count = found.bare + found.removed.size();
  const Span& value = all ? to.reported.span : to.span;
  look(LookKind::readings_gone,
       subject(after_, to) + ": " + std::to_string(count) + (count == 1 ? " specimen was" : " specimens were") +
           " submitted with what was read before; now it is " +
           (all ? "the reported value " + quoted(written(after_, value)) + " alone" : "a value alone"),
       "ask for the readings; without them the value cannot be worked out again", from.span, value);
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
  const bool exchanged = found.unchanged == 0 && found.bare == 0 && !retested(pair) && !later(pair).specimens.empty();
  if (found.removed.empty() || (found.unchanged == 0 && !exchanged)) {
    return;
  }
  const Result& from = earlier(pair);
  const std::size_t count = found.removed.size();
  look(LookKind::specimen_gone,
       subject(after_, later(pair)) + ": " + std::to_string(count) + " of " + std::to_string(from.specimens.size()) +
           " specimens " + (count == 1 ? "is" : "are") + " not submitted any more, " +
           (exchanged ? "none is that of before, and " + dates(pair) : "others are those of before"),
       "ask why; a specimen is discarded for a stated cause", from.specimens[found.removed.front()].span,
       later(pair).span);
}

void Comparer::specimen_added(const Pair& pair, const Differences& found) {
  if (found.added.empty() || earlier(pair).specimens.empty() || !failed(pair) || retested(pair)) {
    return;
  }
  const Result& to = later(pair);
  const std::size_t count = found.added.size();
  look(LookKind::specimen_added,
       subject(after_, to) + ": " + std::to_string(count) + (count == 1 ? " specimen was" : " specimens were") +
           " added to a set that failed a clause, " +
           (found.unchanged > 0 ? "others are those of before, and " : "none is that of before, and ") + dates(pair),
       "ask when it was tested, and why it was added", earlier(pair).span, to.specimens[found.added.front()].span);
}

void Comparer::repeated(const Pair& pair, const Differences& found) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  if (from.tested == to.tested || from.tested == evidence::no_date || to.tested == evidence::no_date) {
    return;
  }
  if (to.series != check::none) {
    if (!has_numbers(to)) {
      return;  // words agree by chance
    }
    Rows& rows = series_.try_emplace(to.series, Rows{0, 0, pair}).first->second;
    ++rows.count;
    rows.same += found.unchanged > 0 ? 1U : 0U;
    return;
  }
  constexpr std::size_t by_chance = 2;  // so many single numbers may agree
  if (found.most < 2 && found.numbers <= by_chance) {
    input_repeated(pair, found);
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

// All specimens have the same of it, to the last digit, whichever is which.
bool Comparer::same_input(const Pair& pair, std::size_t reading) const {
  constexpr std::size_t enough = 4;  // digits: fewer agree by chance
  const auto keys = [&](const Context& context, const Result& result) {
    std::multiset<std::string> out;
    for (const Specimen& one : result.specimens) {
      const Value& input = one.readings[reading];
      const bool counts =
          input.kind == Value::Kind::quantity && own(one, input) && significant(input.amount.value) >= enough;
      out.insert(counts ? value_key(context, input, measure(result).readings[reading].type) : "");
    }
    return out;
  };
  const auto from = keys(before_, earlier(pair));
  const auto to = keys(after_, later(pair));
  return from == to && from.count("") == 0 && !from.empty() && *from.begin() != *from.rbegin();
}

// Of a test that was repeated; the readings of another are compared one by one.
void Comparer::input_repeated(const Pair& pair, const Differences& found) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  const std::vector<check::Reading>& readings = measure(to).readings;
  const bool counts = from.measure == to.measure && !found.restyled && retested(pair);
  for (std::size_t at = 0; counts && at < readings.size(); ++at) {
    if (same_input(pair, at)) {
      look(LookKind::readings_repeated,
           subject(after_, to) + ": " + quoted(explain::spaced(readings[at].name)) + " of all " +
               std::to_string(to.specimens.size()) +
               " specimens is that of before to the last digit, under another date of the test: " +
               day_text(before_, from) + " before, " + day_text(after_, to) + " now",
           "ask whether other specimens were tested; a repeated test has readings of its own", from.span, to.span);
      return;
    }
  }
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

void Comparer::moved(const Pair& pair) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  const bool other_measure = from.measure != to.measure;
  const std::string then = other_measure ? subject(before_, from) : placing(before_, from);
  const std::string now = other_measure ? subject(after_, to) : placing(after_, to);
  const auto stood = [&](const std::string& text, const Result& one, const Result& other) {
    return text.empty() ? unplaced(one, other) : quoted(text);
  };
  const std::string places =
      then == now ? "stand for another job mix than before"
                  : "stood for " + stood(then, from, to) + " before and stand for " + stood(now, to, from) + " now";
  look(LookKind::moved,
       measure(from).title + ": the same values " + places + (failed(pair) ? "; there they failed a clause" : ""),
       "compare with the worksheet what was tested", from.span, to.span);
}

void Comparer::gone() {
  for (const std::uint32_t at : matching_.removed) {
    if (failed_.count(at) > 0) {
      const Result& one = before_.evidence.results[at];
      look(LookKind::failing_gone, subject(before_, one) + ": a result that failed a clause is not submitted any more",
           "ask what became of it; a repeated test does not undo the first", one.span, {});
    }
  }
}

void Comparer::looks(const Pair& pair, const Differences& found) {
  if (pair.moved) {
    moved(pair);
  }
  altered(pair, found);
  too_coarse(pair, found);
  readings_gone(pair, found);
  reported_alone(pair, found);
  specimen_gone(pair, found);
  specimen_added(pair, found);
  repeated(pair, found);
}

}  // namespace plumbrule::followup
