#include "apply/followup/repeated.hpp"

#include <algorithm>
#include <set>

#include "base/diagnose/quote.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::followup {
namespace {

using diagnose::quoted;

std::size_t significant(const quantity::Decimal& number) {
  const std::string text = number.text();
  const std::size_t first = text.find_first_of("123456789");
  return first == std::string::npos
             ? 0
             : static_cast<std::size_t>(std::count_if(text.begin() + static_cast<std::ptrdiff_t>(first), text.end(),
                                                      [](char one) { return one >= '0' && one <= '9'; }));
}

bool has_numbers(const Result& result) {
  const auto number = [](const Value& value) { return value.kind == Value::Kind::quantity; };
  return std::any_of(result.specimens.begin(), result.specimens.end(), [&](const Specimen& one) {
    return number(one.direct) || std::any_of(one.readings.begin(), one.readings.end(), number);
  });
}

}  // namespace

void RepeatedReadings::look(const Pair& pair, const Differences& found) {
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
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
  both_.look(LookKind::readings_repeated,
             subject(both_.after, to) + ": " + share +
                 " those of before, under another date of the test: " + both_.both_dates(from, to),
             "ask which date is right; a repeated test has readings of its own", from.span, to.span);
}

// All specimens have the same of it, to the last digit, whichever is which.
bool RepeatedReadings::same_input(const Pair& pair, std::size_t reading) const {
  constexpr std::size_t enough = 4;  // digits: fewer agree by chance
  const auto keys = [&](const Context& context, const Result& result) {
    std::multiset<std::string> out;
    for (const Specimen& one : result.specimens) {
      const Value& input = one.readings[reading];
      const bool counts =
          input.kind == Value::Kind::quantity && own(one, input) && significant(input.amount.value) >= enough;
      out.insert(counts ? value_key(context, input, both_.measure(result).readings[reading].type) : "");
    }
    return out;
  };
  const auto from = keys(both_.before, both_.earlier(pair));
  const auto to = keys(both_.after, both_.later(pair));
  return from == to && from.count("") == 0 && !from.empty() && *from.begin() != *from.rbegin();
}

// Of a test that was repeated; the readings of another are compared one by one.
void RepeatedReadings::input_repeated(const Pair& pair, const Differences& found) {
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
  const std::vector<check::Reading>& readings = both_.measure(to).readings;
  const bool counts = from.measure == to.measure && !found.restyled && both_.retested(pair);
  for (std::size_t at = 0; counts && at < readings.size(); ++at) {
    if (same_input(pair, at)) {
      both_.look(LookKind::readings_repeated,
                 subject(both_.after, to) + ": " + quoted(explain::spaced(readings[at].name)) + " of all " +
                     std::to_string(to.specimens.size()) +
                     " specimens is that of before to the last digit, under another date of the test: " +
                     both_.both_dates(from, to),
                 "ask whether other specimens were tested; a repeated test has readings of its own", from.span,
                 to.span);
      return;
    }
  }
}

void RepeatedReadings::look_at_series() {
  constexpr std::size_t enough = 3;
  for (const auto& [series, rows] : series_) {
    if (rows.count >= enough && rows.same == rows.count) {
      const Result& to = both_.later(rows.first);
      both_.look(LookKind::readings_repeated,
                 both_.measure(to).title + ", series of " + std::to_string(rows.count) +
                     " rows: the readings are those of before, under another date of the test: " +
                     both_.both_dates(both_.earlier(rows.first), to),
                 "ask which date is right; a repeated test has readings of its own", both_.earlier(rows.first).span,
                 to.span);
    }
  }
}

}  // namespace plumbrule::followup
