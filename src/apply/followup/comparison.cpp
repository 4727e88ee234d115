#include "apply/followup/comparison.hpp"

#include <algorithm>
#include <chrono>

#include "base/diagnose/quote.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::followup {
namespace {

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

// Results that a failing clause counts, without those of them that comply.
std::set<std::uint32_t> failing(const Context& context) {
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

std::string day_text(const Context& context, const Result& result) {
  const Span& place = result.record.tested.span;
  if (result.tested == evidence::no_date) {
    return place.known() ? "no readable date" : "no date";
  }
  return place.known() ? written(context, place) : date_text(result.tested);
}

}  // namespace

Comparison::Comparison(const Context& earlier, const Context& later)
    : before(earlier),
      after(later),
      matching(match(earlier, later)),
      failed_before(failing(earlier)),
      fails_now(failing(later)) {}

// A later date than before, and than the earlier submittal, which would have held a test of its own days.
bool Comparison::retested(const Pair& pair) const {
  const std::int32_t now = later(pair).tested;
  return now != evidence::no_date && now > earlier(pair).tested && now > before.evidence.reviewed.day;
}

// Why the test is not taken for a repeated one.
std::string Comparison::dates(const Pair& pair) const {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  if (from.tested == to.tested) {
    return "the test has " +
           (to.tested == evidence::no_date ? "no date" : "the date of before, " + day_text(after, to));
  }
  const std::string both = ": " + both_dates(from, to);
  return to.tested > from.tested ? "the test is not dated after the submittal of before" + both + ", submitted " +
                                       written(before, before.evidence.reviewed.span)
                                 : "the test is not dated later" + both;
}

// What is said of a result that states neither condition nor design value nor lot.
std::string Comparison::unplaced(const Result& result, const Result& other) const {
  const bool conditions = !measure(result).conditions.empty() && result.conditions.empty();
  return conditions                                     ? "no stated condition"
         : other.at.empty() && other.record.lot.given() ? "no stated lot"
                                                        : "the job mix";
}

std::string Comparison::both_dates(const Result& from, const Result& to) const {
  return day_text(before, from) + " before, " + day_text(after, to) + " now";
}

std::string worded(const evidence::Note& note) { return note.text.empty() ? not_stated : explain::one_line(note.text); }

std::string worded(const Context& context, const Value& value) {
  const std::string text = written(context, value.span);
  return text.empty() ? not_stated : text;
}

}  // namespace plumbrule::followup
