#pragma once
// A specification made ready for many records that differ only in their numbers: same columns, same words. What the
// words decide (classes, conditions, which results a clause is about) was decided once; a clause on a number is left as
// comparisons of whole numbers. A clause of any other kind (means of specimens, tolerances, the rule on consecutive
// sieves ...) is given to the evaluator with the numbers put in.

#include <array>
#include <bit>
#include <cstddef>
#include <map>
#include <span>
#include <utility>
#include <vector>

#include "apply/sweep/cell.hpp"
#include "apply/sweep/judgement.hpp"
#include "apply/sweep/tally.hpp"

namespace plumbrule::sweep {

/// A column whose number is the reported value of a result; without the number there is no such result.
struct Slot {
  std::uint32_t column = 0;
  std::uint32_t result = 0;  // of the evidence
};

/// Numbers that were compared, for clauses of which the margin is worked out when all are counted: each number once,
/// not each record. By check of the plan and column.
class NumberCounts {
 public:
  /// Digits below this are counted, for each number of decimals.
  static constexpr std::int32_t end = 1 << 15;
  /// False: it is not counted, as its digits are too many or negative.
  bool add(const ShortNumber& number) {
    if (number.digits < 0 || number.digits >= end) {
      return false;
    }
    std::vector<std::uint64_t>& counts = counts_[number.decimals];
    const auto at = static_cast<std::size_t>(number.digits);
    if (at >= counts.size()) {
      counts.resize(std::bit_ceil(at + 1));  // no more than is needed: memory that is touched costs more than counting
    }
    ++counts[at];
    return true;
  }
  /// Calls `each` with every number that was counted and how often, and forgets them.
  template <typename Each>
  void take(const Each& each) {
    for (std::size_t decimals = 0; decimals < counts_.size(); ++decimals) {
      for (std::size_t digits = 0; digits < counts_[decimals].size(); ++digits) {
        if (const std::uint64_t times = std::exchange(counts_[decimals][digits], 0); times > 0) {
          each(ShortNumber{static_cast<std::int32_t>(digits), static_cast<std::uint8_t>(decimals)}, times);
        }
      }
    }
  }

 private:
  std::array<std::vector<std::uint64_t>, most_decimals + 1> counts_;
};

class Program {
 public:
  /// `evidence`: bound from a record of the kind, without errors, in which every slot has a number; all slots are exact
  /// amounts of results without specimens that are no part of a series and not declared by the job mix.
  Program(Against against, evidence::Evidence evidence, std::vector<Slot> slots);

  /// Precondition: the cell of each slot is absent or a short number. Margins that `defer` deals with stay out of
  /// `out`.
  void run(std::span<const Cell> cells, Judgement& out);

  /// From now on numbers of clauses with a single comparison are only counted there, by clause; `all` must outlive it.
  using Deferred = std::map<std::uint64_t, NumberCounts>;
  void defer(Deferred& all);
  /// Adds the margins of what was counted for the clauses of this program, and forgets it.
  void settle(SpecificationTally& tally);

  /// How many clauses are whole numbers only, how many go to the evaluator, and how many were meant for whole numbers
  /// but differed from the evaluator when both were asked at the limits (none, if all is well).
  [[nodiscard]] std::size_t compiled() const { return compiled_; }
  [[nodiscard]] std::size_t evaluated() const { return evaluated_.size(); }
  [[nodiscard]] std::size_t mistrusted() const { return mistrusted_; }

 private:
  // A divisor with its inverse, from which a quotient is guessed and then put right in whole numbers: a division of 64
  // bits costs more than anything else here.
  struct Divisor {
    std::int64_t value = 0;  // 0: there is none
    double inverse = 0;
    Divisor() = default;
    explicit Divisor(std::int64_t of) : value(of), inverse(of == 0 ? 0 : 1 / static_cast<double>(of)) {}
    /// Rounded down. Precondition: value > 0, and the quotient has at most 15 digits.
    [[nodiscard]] std::int64_t into(std::int64_t number) const;
  };
  // The printed ends of a limit at one number of decimals: everything times a common power of ten.
  struct Scaled {
    std::int64_t factor = 0;
    std::int64_t low = 0, high = 0;
    Divisor low_place, high_place;  // of rounding; none if a number with so many decimals needs none
    Divisor low_size, high_size;    // of the ends; none if they are zero
  };
  // The ends of what is compared, at one number of decimals: together, so that a comparison meets one of them.
  struct Edges {
    std::int64_t refused_below = 0, refused_above = 0;  // a number outside is no value
    std::int64_t least = 0, most = 0;
  };
  struct Comparison {
    std::uint32_t column = check::none;  // none: the verdict is fixed
    std::uint32_t check = 0;             // of the plan
    NumberCounts* counts = nullptr;      // where its numbers are counted, if its margins are deferred
    Verdict fixed = Verdict::not_shown;
    std::array<Edges, most_decimals + 1> edges{};
    bool has_low = false, has_high = false, has_margin = false;
    quantity::Ties low_ties{}, high_ties{};
    std::array<Scaled, most_decimals + 1> scaled{};
  };
  struct Group {
    std::uint32_t begin = 0, end = 0;  // of comparisons_
  };
  enum class ClauseKind : std::uint8_t { fixed, compared, evaluated };
  struct Clause {
    ClauseKind kind = ClauseKind::evaluated;
    Verdict fixed = Verdict::not_shown;
    std::uint32_t begin = 0, end = 0;  // of groups_
  };
  struct Judged {
    Verdict verdict = Verdict::not_shown;
    std::int32_t margin = no_margin;
  };

  Against against_;
  evidence::Evidence evidence_;
  std::vector<Slot> slots_;
  std::vector<check::MeasureId> measures_;  // of the results of the slots
  std::vector<Clause> clauses_;
  std::vector<Group> groups_;
  std::vector<Comparison> comparisons_;
  std::vector<std::uint32_t> evaluated_;
  std::size_t compiled_ = 0, mistrusted_ = 0;

  // program.cpp: building
  [[nodiscard]] Clause clause(std::uint32_t requirement);
  bool compare(std::uint32_t requirement, std::uint32_t check, Comparison& out) const;
  bool compare_number(std::uint32_t requirement, std::uint32_t check, const Slot& slot, Comparison& out) const;
  bool refusals(check::MeasureId measure, Comparison& out) const;
  bool scale(const check::Assertion& assertion, Comparison& out) const;
  [[nodiscard]] static std::optional<Scaled> scaled_to(const check::Limit& limit, int decimals, int common);
  [[nodiscard]] static std::optional<std::int64_t> place_at(const std::optional<check::End>& end, int decimals,
                                                            int common);
  [[nodiscard]] const Slot* slot_of(std::uint32_t result) const;
  void probe();
  [[nodiscard]] bool agrees(std::uint32_t requirement);
  [[nodiscard]] bool agrees_at(std::uint32_t requirement, std::vector<Cell>& cells, const Comparison& comparison);
  [[nodiscard]] bool agrees_beside(std::uint32_t requirement, std::vector<Cell>& cells, std::uint32_t column,
                                   std::int64_t edge, std::uint8_t decimals);
  [[nodiscard]] std::vector<Cell> own_cells() const;

  // program_run.cpp
  [[nodiscard]] static Judged run(const Comparison& comparison, const Cell& cell);
  [[nodiscard]] static std::int64_t rounded(std::int64_t value, const Divisor& place, quantity::Ties ties);
  [[nodiscard]] static std::int32_t thousandths(std::int64_t distance, const Divisor& size);
  [[nodiscard]] static std::int32_t margin(const Comparison& comparison, const ShortNumber& number);
  [[nodiscard]] static Verdict verdict(const Comparison& comparison, const Cell& cell);
  [[nodiscard]] Judged run(const Clause& clause, std::span<const Cell> cells) const;
  [[nodiscard]] Comparison* only_comparison(const Clause& clause);
  void put_in(std::span<const Cell> cells);
  [[nodiscard]] Judged evaluate(std::uint32_t requirement) const;
};

}  // namespace plumbrule::sweep
