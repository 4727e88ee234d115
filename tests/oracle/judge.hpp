#pragma once
// The independent judge: verdicts by walking the rules as written, once for each submittal. It is slow and plain on
// purpose. It converts a result into the limit's unit, rounds it and then compares; the only things that it shares
// with the engine are the parser, the readers of the submittal's text, and quantities.

#include <string_view>

#include "demand.hpp"
#include "formula.hpp"

namespace plumbrule::oracle {

enum class Verdict : std::uint8_t { complies, fails, not_shown, does_not_apply };
[[nodiscard]] std::string_view text(Verdict verdict);
[[nodiscard]] std::string_view text(Why why);

struct Judged {
  Verdict verdict = Verdict::complies;
  Why why = Why::none;
};

struct Finding {
  std::string number;
  Judged judged;
  bool simple = false;  // the reason follows from one thing, so that the engine must give the same
  Lost lost;            // what the table of bounds gave up on the way
};

enum class Outcome : std::uint8_t { no_exception_taken, refer_to_engineer, revise_and_resubmit, incomplete };
[[nodiscard]] std::string_view text(Outcome outcome);

struct Review {
  bool readable = false;
  std::vector<Finding> findings;  // in the order of the rules
  Outcome outcome = Outcome::incomplete;
};

/// `on`: the day of the review, if it is not the submittal's date. The book and the units may serve many reviews.
[[nodiscard]] Review review(const Rulebook& book, Units& units, const evidence::Node& document,
                            std::optional<std::int32_t> on);

}  // namespace plumbrule::oracle
