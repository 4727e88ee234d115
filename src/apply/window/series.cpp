#include "apply/window/series.hpp"

#include <algorithm>

namespace plumbrule::window {
namespace {

using quantity::Threshold;

const Decimal& value_of(const Reading& reading, bool high) { return high ? reading.greatest : reading.least; }

Verdict verdict(bool passes) { return passes ? Verdict::complies : Verdict::fails; }

// Where the line from one reading to the next meets the threshold, ends included; a level line meets it nowhere.
std::optional<Decimal> meeting(const Reading& first, const Reading& second, const Threshold& threshold, bool high) {
  const Decimal from = value_of(first, high);
  const Decimal to = value_of(second, high);
  const Decimal& limit = threshold.value;
  const bool between = (from <= limit && limit <= to) || (to <= limit && limit <= from);
  if (from == to || !between) {
    return std::nullopt;
  }
  // At the ends exactly: no division is to move them.
  return limit == from ? first.at : limit == to ? second.at : on_line(limit, from, first.at, to, second.at);
}

// One end of the limit alone. `points` gets the first reading and, if there is one, the meeting inside the stretch.
void follow(const Reading& first, const Reading& second, const Threshold& threshold, bool high,
            std::vector<Profile::Point>& points) {
  points.push_back({first.at, first.verdict, Verdict::not_shown});
  if (!first.solid || !second.solid) {
    return;
  }
  const Decimal& from = value_of(first, high);
  const Decimal& to = value_of(second, high);
  const auto met = meeting(first, second, threshold, high);
  if (met && first.at < *met && *met < second.at) {
    points.back().after = verdict(passes(from, threshold, high));
    points.push_back({*met, verdict(threshold.inclusive), verdict(passes(to, threshold, high))});
    return;
  }
  // All of the open stretch lies on one side. If the line meets the threshold where it begins (or so near that no digit
  // is left), its other end tells.
  const Decimal& telling = met && !(first.at < *met) ? to : from;
  points.back().after = verdict(passes(telling, threshold, high));
}

Profile of_end(const Series& series, const std::optional<Threshold>& threshold, bool high) {
  std::vector<Profile::Point> points;
  for (std::size_t at = 0; at + 1 < series.readings.size() && threshold; ++at) {
    follow(series.readings[at], series.readings[at + 1], *threshold, high, points);
  }
  if (!threshold || series.readings.empty()) {
    for (const Reading& one : series.readings) {
      points.push_back({one.at, one.verdict, Verdict::not_shown});
    }
    return Profile(std::move(points));
  }
  points.push_back({series.readings.back().at, series.readings.back().verdict, Verdict::not_shown});
  return Profile(std::move(points));
}

}  // namespace

bool passes(const Decimal& value, const Threshold& threshold, bool high) {
  if (value == threshold.value) {
    return threshold.inclusive;
  }
  return high ? value < threshold.value : value > threshold.value;
}

Decimal on_line(const Decimal& at, const Decimal& first_at, const Decimal& first, const Decimal& second_at,
                const Decimal& second) {
  return first + (at - first_at) * (second - first) / (second_at - first_at);
}

std::optional<Decimal> value_at(const Series& series, const Decimal& at) {
  const bool high = series.limits.high && !series.limits.low;
  for (std::size_t next = 0; next < series.readings.size(); ++next) {
    const Reading& one = series.readings[next];
    if (one.at == at) {
      return one.solid ? std::optional(value_of(one, high)) : std::nullopt;
    }
    if (at < one.at) {
      const Reading* before = next == 0 ? nullptr : &series.readings[next - 1];
      const bool drawn = before != nullptr && before->solid && one.solid;
      return drawn ? std::optional(on_line(at, before->at, value_of(*before, high), one.at, value_of(one, high)))
                   : std::nullopt;
    }
  }
  return std::nullopt;
}

Profile profile(const Series& series) {
  if (!series.limits.low || !series.limits.high) {
    const bool high = series.limits.high.has_value();
    return of_end(series, high ? series.limits.high : series.limits.low, high);
  }
  // At a tested value both carry the evaluator's verdict, so their conjunction is it.
  return all_of(of_end(series, series.limits.low, false), of_end(series, series.limits.high, true));
}

std::vector<Crossing> crossings(const Series& series) {
  std::vector<Crossing> out;
  for (std::size_t at = 0; at + 1 < series.readings.size(); ++at) {
    const Reading& first = series.readings[at];
    const Reading& second = series.readings[at + 1];
    if (!first.solid || !second.solid) {
      continue;
    }
    for (const bool high : {false, true}) {
      const auto& threshold = high ? series.limits.high : series.limits.low;
      const auto met = threshold ? meeting(first, second, *threshold, high) : std::nullopt;
      if (met) {
        out.push_back({*met, at, high, *threshold});
      }
    }
  }
  return out;
}

bool rises_and_falls(const Series& series) {
  bool rises = false;
  bool falls = false;
  const Reading* before = nullptr;
  for (const Reading& one : series.readings) {
    if (one.solid && before != nullptr) {
      rises = rises || before->least < one.least || before->greatest < one.greatest;
      falls = falls || one.least < before->least || one.greatest < before->greatest;
    }
    before = one.solid ? &one : before;
  }
  return rises && falls;
}

}  // namespace plumbrule::window
