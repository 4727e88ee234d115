#pragma once
// The window of a design variable: where every clause that varies with it complies (language.md, section 15). Numbers
// and indices only; words are made in describe.hpp.

#include "apply/window/series.hpp"

namespace plumbrule::window {

/// What a clause has to do with the variable.
enum class Role : std::uint8_t {
  varies,     // its tests were made at two or more values
  own_limit,  // it limits the variable itself
  tolerance,  // how far production may stray from the job mix: no limit of the window
  constant,   // was not tested at two values: its verdict at the job mix stands beside the window
};

/// A result of a check of the clause that is passed over, as it is older than the clause allows.
struct TooOld {
  Decimal at;  // of the variable
  std::uint32_t result = 0;
};

struct Clause {
  std::uint32_t requirement = 0;
  Role role{};
  evaluate::Finding finding;   // at the job mix
  Profile profile;             // of varies and own_limit
  std::vector<Series> series;  // one for each check that was tested
  std::uint32_t tolerance_check = check::none;
  bool counts = true;           // false: advice only; it does not narrow the window
  std::vector<TooOld> too_old;  // in the order of the tested values
};

enum class EndKind : std::uint8_t {
  limit,      // beyond it a clause fails
  edge,       // the tested range of a clause ends here: not bracketed
  not_shown,  // beyond it a clause is not shown
};

struct End {
  Decimal at;
  bool inside = true;
  EndKind kind{};
  std::vector<std::size_t> clauses;  // that make it an end
};

struct Piece {
  Stretch stretch;
  End low, high;
  [[nodiscard]] Decimal middle() const;
  [[nodiscard]] Decimal width() const { return stretch.high - stretch.low; }
};

enum class ConflictKind : std::uint8_t { none, never, pair, several };

/// Why the window is empty.
struct Conflict {
  ConflictKind kind{};
  std::vector<std::size_t> clauses;  // never: each by itself; pair: these two; several: all these together
};

/// More values of a variable, or times of a series, are not followed.
inline constexpr std::size_t most_tested = 100;

struct Window {
  check::MeasureId variable = check::none;
  std::vector<Decimal> tested;    // at which clauses that vary were tested; without one, all
  bool too_many = false;          // more than most_tested: nothing else is worked out
  std::optional<Decimal> choice;  // of the job mix
  std::vector<Clause> clauses;    // without those that do not apply
  Profile all;                    // of the clauses that vary or limit the variable, and count
  std::vector<Piece> pieces;
  std::optional<std::size_t> chosen;  // the piece that holds the choice
  Conflict conflict;
  std::optional<Decimal> tolerance;  // of production, in the variable's unit
  bool tolerance_fits = false;
  bool submittal_has_errors = false;
};

[[nodiscard]] Window find(const plan::Plan& plan, const Evidence& evidence, const evaluate::Review& review,
                          check::MeasureId variable, const std::optional<Decimal>& tolerance);

/// language.md, section 15.8.
enum class Standing : std::uint8_t { holds, fails, open };
[[nodiscard]] Standing standing(const plan::Plan& plan, const Window& window);

}  // namespace plumbrule::window
