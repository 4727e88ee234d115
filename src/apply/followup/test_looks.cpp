#include "apply/followup/test_looks.hpp"

#include <algorithm>

#include "base/diagnose/quote.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::followup {
namespace {

using diagnose::quoted;

bool gives_something(const Specimen& one) {
  return one.direct.usable() ||
         std::any_of(one.readings.begin(), one.readings.end(), [](const Value& value) { return value.usable(); });
}

}  // namespace

void TestLooks::look(const Pair& pair, const Differences& found) {
  if (pair.moved) {
    moved(pair);
  }
  altered(pair, found);
  too_coarse(pair, found);
  readings_gone(pair, found);
  reported_alone(pair, found);
  specimen_gone(pair, found);
  specimen_added(pair, found);
}

void TestLooks::altered(const Pair& pair, const Differences& found) {
  if (both_.earlier(pair).declared || both_.retested(pair)) {
    return;
  }
  const std::vector<std::size_t> all = newly_met(found);
  if (all.empty()) {
    return;
  }
  const ValueChange change = both_.out.values[all.front()];
  const std::size_t others = all.size() - 1;
  both_.look(LookKind::reading_altered,
             change.subject + ": " + change.what + " was " + quoted(change.before) + " and is " +
                 (change.after == not_stated ? change.after : quoted(change.after)) +
                 (others > 0 ? " (and " + std::to_string(others) + " more)" : "") + ", and " + both_.dates(pair),
             "compare both with the worksheet; a repeated test has a date of its own", change.before_place,
             change.after_place);
}

std::vector<std::size_t> TestLooks::newly_met(const Differences& found) {
  std::vector<std::size_t> out;
  const auto position = [](const Span& span) { return Position(span.file, span.begin); };
  for (const std::vector<std::size_t>* list : {&found.altered, &found.noted}) {
    for (const std::size_t at : *list) {
      const ValueChange& one = both_.out.values[at];
      if (met_.emplace(position(one.before_place), position(one.after_place)).second) {
        out.push_back(at);
      }
    }
  }
  return out;
}

// Digits that were left away may be those by which a clause failed.
void TestLooks::too_coarse(const Pair& pair, const Differences& found) {
  if (found.converted.empty() || !found.altered.empty() || !both_.cured(pair) || both_.retested(pair)) {
    return;
  }
  const ValueChange change = both_.out.values[found.converted.front()];
  both_.look(LookKind::reading_altered,
             change.subject + ": " + change.what + " was " + quoted(change.before) + " and is " + quoted(change.after) +
                 ", the same as far as its digits go; it failed a clause before and does not now, and " +
                 both_.dates(pair),
             "compare both with the worksheet, with all digits", change.before_place, change.after_place);
}

void TestLooks::readings_gone(const Pair& pair, const Differences& found) {
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
  const bool gave = std::any_of(from.specimens.begin(), from.specimens.end(), gives_something);
  const bool all = to.specimens.empty() && to.reported.usable() && gave;
  if (found.restyled || (!all && found.bare == 0)) {
    return;
  }
  const std::size_t count = found.bare + found.removed.size();
  const Span& value = all ? to.reported.span : to.span;
  both_.look(LookKind::readings_gone,
             subject(both_.after, to) + ": " + std::to_string(count) +
                 (count == 1 ? " specimen was" : " specimens were") +
                 " submitted with what was read before; now it is " +
                 (all ? "the reported value " + quoted(written(both_.after, value)) + " alone" : "a value alone"),
             "ask for the readings; without them the value cannot be worked out again", from.span, value);
}

void TestLooks::reported_alone(const Pair& pair, const Differences& found) {
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
  const bool same_readings =
      found.compared > 0 && found.unchanged == found.compared && from.specimens.size() == to.specimens.size();
  if (found.reported && same_readings && from.reported.usable() && to.reported.usable()) {
    both_.look(LookKind::reported_alone,
               subject(both_.after, to) + ": the reported value was " +
                   quoted(written(both_.before, from.reported.span)) + " and is " +
                   quoted(written(both_.after, to.reported.span)) + ", its readings are those of before",
               "compare the value with what the readings give", from.reported.span, to.reported.span);
  }
}

void TestLooks::specimen_gone(const Pair& pair, const Differences& found) {
  const bool exchanged =
      found.unchanged == 0 && found.bare == 0 && !both_.retested(pair) && !both_.later(pair).specimens.empty();
  if (found.removed.empty() || (found.unchanged == 0 && !exchanged)) {
    return;
  }
  const Result& from = both_.earlier(pair);
  const std::size_t count = found.removed.size();
  both_.look(LookKind::specimen_gone,
             subject(both_.after, both_.later(pair)) + ": " + std::to_string(count) + " of " +
                 std::to_string(from.specimens.size()) + " specimens " + (count == 1 ? "is" : "are") +
                 " not submitted any more, " +
                 (exchanged ? "none is that of before, and " + both_.dates(pair) : "others are those of before"),
             "ask why; a specimen is discarded for a stated cause", from.specimens[found.removed.front()].span,
             both_.later(pair).span);
}

void TestLooks::specimen_added(const Pair& pair, const Differences& found) {
  if (found.added.empty() || both_.earlier(pair).specimens.empty() || !both_.failed(pair) || both_.retested(pair)) {
    return;
  }
  const Result& to = both_.later(pair);
  const std::size_t count = found.added.size();
  both_.look(LookKind::specimen_added,
             subject(both_.after, to) + ": " + std::to_string(count) +
                 (count == 1 ? " specimen was" : " specimens were") + " added to a set that failed a clause, " +
                 (found.unchanged > 0 ? "others are those of before, and " : "none is that of before, and ") +
                 both_.dates(pair),
             "ask when it was tested, and why it was added", both_.earlier(pair).span,
             to.specimens[found.added.front()].span);
}

void TestLooks::moved(const Pair& pair) {
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
  const bool other_measure = from.measure != to.measure;
  const std::string then = other_measure ? subject(both_.before, from) : placing(both_.before, from);
  const std::string now = other_measure ? subject(both_.after, to) : placing(both_.after, to);
  const auto stood = [&](const std::string& text, const Result& one, const Result& other) {
    return text.empty() ? both_.unplaced(one, other) : quoted(text);
  };
  const std::string places =
      then == now ? "stand for another job mix than before"
                  : "stood for " + stood(then, from, to) + " before and stand for " + stood(now, to, from) + " now";
  both_.look(LookKind::moved,
             both_.measure(from).title + ": the same values " + places +
                 (both_.failed(pair) ? "; there they failed a clause" : ""),
             "compare with the worksheet what was tested", from.span, to.span);
}

void look_at_gone(Comparison& both) {
  for (const std::uint32_t at : both.matching.removed) {
    if (both.failed_before.count(at) > 0) {
      const Result& one = both.before.evidence.results[at];
      both.look(LookKind::failing_gone,
                subject(both.before, one) + ": a result that failed a clause is not submitted any more",
                "ask what became of it; a repeated test does not undo the first", one.span, {});
    }
  }
}

}  // namespace plumbrule::followup
