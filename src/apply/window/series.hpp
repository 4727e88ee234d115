#pragma once
// A series of readings against the limit of its check: straight lines between neighbouring tested values, and the
// values at which a line meets the limit (language.md, section 15.3).

#include "apply/window/profile.hpp"
#include "apply/window/trials.hpp"

namespace plumbrule::window {

struct Series {
  std::uint32_t check = 0;  // of the plan
  evaluate::Thresholds limits;
  std::vector<Reading> readings;  // in rising order of the variable
};

/// Where a line between two neighbouring readings meets a threshold: at + (threshold - from) * width / (to - from).
struct Crossing {
  Decimal at;
  std::size_t first = 0;  // of readings; the line ends at the next one
  bool high = false;      // the upper end of the limit
  quantity::Threshold threshold;
};

/// True where the value passes the threshold from its side.
[[nodiscard]] bool passes(const Decimal& value, const quantity::Threshold& threshold, bool high);

/// The value of the line through two readings; exact if it needs at most 34 digits.
[[nodiscard]] Decimal on_line(const Decimal& at, const Decimal& first_at, const Decimal& first,
                              const Decimal& second_at, const Decimal& second);

/// The series at a value between its ends; nothing where no line is drawn. For a limit with an upper end only this is
/// the greatest compared value, else the least.
[[nodiscard]] std::optional<Decimal> value_at(const Series& series, const Decimal& at);

/// The verdicts at the tested values are the evaluator's. Between two solid readings the line is judged; elsewhere
/// nothing is shown.
[[nodiscard]] Profile profile(const Series& series);
[[nodiscard]] std::vector<Crossing> crossings(const Series& series);

/// The values rise somewhere and fall somewhere else.
[[nodiscard]] bool rises_and_falls(const Series& series);

}  // namespace plumbrule::window
