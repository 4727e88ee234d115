#include "apply/window/find.hpp"

#include <algorithm>

#include "apply/window/clauses.hpp"

namespace plumbrule::window {
namespace {

bool narrows(const Clause& clause) {
  return clause.counts && (clause.role == Role::varies || clause.role == Role::own_limit);
}

Profile together(const std::vector<Clause>& clauses, const std::vector<std::size_t>& which) {
  Profile out;
  bool first = true;
  for (const std::size_t at : which) {
    out = first ? clauses[at].profile : all_of(out, clauses[at].profile);
    first = false;
  }
  return out;
}

std::vector<std::size_t> narrowing(const std::vector<Clause>& clauses) {
  std::vector<std::size_t> out;
  for (std::size_t at = 0; at < clauses.size(); ++at) {
    if (narrows(clauses[at])) {
      out.push_back(at);
    }
  }
  return out;
}

// Whether the clause was tested up to the value and no farther on that side.
bool ends_at(const Profile& profile, const Decimal& value, bool low) {
  const auto& points = profile.points();
  return points.empty() || (low ? !(points.front().at < value) : !(value < points.back().at));
}

End end_of(const Window& window, const Stretch& stretch, bool low) {
  End out;
  out.at = low ? stretch.low : stretch.high;
  out.inside = low ? stretch.low_inside : stretch.high_inside;
  std::vector<std::size_t> edges;
  std::vector<std::size_t> open;
  for (const std::size_t index : narrowing(window.clauses)) {
    const Clause& clause = window.clauses[index];
    const Profile& profile = clause.profile;
    const Verdict beyond = !out.inside ? profile.at(out.at) : low ? profile.below(out.at) : profile.above(out.at);
    if (beyond == Verdict::fails) {
      out.clauses.push_back(index);
    } else if (beyond == Verdict::not_shown) {
      const bool edge = out.inside && ends_at(profile, out.at, low);
      // A limit of the variable itself is known everywhere; it ends with the tests only because they do.
      if (clause.role == Role::varies || !edge) {
        (edge ? edges : open).push_back(index);
      }
    }
  }
  if (out.clauses.empty()) {
    out.kind = edges.empty() && !open.empty() ? EndKind::not_shown : EndKind::edge;
    out.clauses = edges.empty() ? open : edges;
  }
  return out;
}

bool empty_together(const std::vector<Clause>& clauses, const std::vector<std::size_t>& which) {
  return !together(clauses, which).anywhere(Verdict::complies);
}

// Takes away, one after the other, clauses without which the rest still exclude each other.
std::vector<std::size_t> smallest(const std::vector<Clause>& clauses, std::vector<std::size_t> which) {
  for (std::size_t at = 0; at < which.size();) {
    std::vector<std::size_t> rest = which;
    rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(at));
    if (!rest.empty() && empty_together(clauses, rest)) {
      which = std::move(rest);
    } else {
      ++at;
    }
  }
  return which;
}

Conflict conflict(const std::vector<Clause>& clauses) {
  const std::vector<std::size_t> all = narrowing(clauses);
  Conflict out;
  for (const std::size_t one : all) {
    if (!clauses[one].profile.anywhere(Verdict::complies)) {
      out.kind = ConflictKind::never;
      out.clauses.push_back(one);
    }
  }
  for (std::size_t one = 0; one < all.size() && out.clauses.empty(); ++one) {
    for (std::size_t other = one + 1; other < all.size() && out.clauses.empty(); ++other) {
      if (empty_together(clauses, {all[one], all[other]})) {
        out = {ConflictKind::pair, {all[one], all[other]}};
      }
    }
  }
  if (out.clauses.empty() && !all.empty()) {
    out = {ConflictKind::several, smallest(clauses, all)};
  }
  return out;
}

// A result at the job mix that was not varied is no tested value of the window.
void keep_varied(Window& window) {
  std::vector<Decimal> varied;
  for (const Decimal& value : window.tested) {
    const auto there = [&](const Reading& one) { return one.matched && one.at == value; };
    const bool any = std::any_of(window.clauses.begin(), window.clauses.end(), [&](const Clause& clause) {
      return clause.role == Role::varies &&
             std::any_of(clause.series.begin(), clause.series.end(), [&](const Series& one) {
               return std::any_of(one.readings.begin(), one.readings.end(), there);
             });
    });
    if (any) {
      varied.push_back(value);
    }
  }
  window.tested = varied.empty() ? window.tested : varied;
}

// Of the clauses that state one, the widest tolerance, in the variable's unit.
std::optional<Decimal> production(const plan::Plan& plan, const Evidence& evidence, const Window& window) {
  std::optional<Decimal> out;
  for (const Clause& clause : window.clauses) {
    if (clause.role != Role::tolerance) {
      continue;
    }
    const plan::Check& check = plan.checks[clause.tolerance_check];
    const auto& units = evidence.units;
    const quantity::UnitId unit = units.difference(plan.measures[window.variable].type.unit);
    const Decimal wide = quantity::convert(check.tolerance, units.at(check.unit), units.at(unit));
    out = !out || *out < wide ? wide : *out;
  }
  return out;
}

}  // namespace

Decimal Piece::middle() const { return (stretch.low + stretch.high) / Decimal{2}; }

Window find(const plan::Plan& plan, const Evidence& evidence, const evaluate::Review& review, check::MeasureId variable,
            const std::optional<Decimal>& tolerance) {
  Window out;
  out.variable = variable;
  out.tested = tested(plan, evidence, variable);
  out.choice = declared(plan, evidence, variable);
  if (out.tested.size() > most_tested) {
    out.too_many = true;
    return out;
  }
  ClauseFinder finder(plan, evidence, variable, out.tested);
  for (const evaluate::Finding& finding : review.findings) {
    if (auto clause = finder.clause(review, finding)) {
      out.clauses.push_back(std::move(*clause));
    }
  }
  keep_varied(out);
  const std::vector<std::size_t> which = narrowing(out.clauses);
  out.all = together(out.clauses, which);
  for (const Stretch& stretch : out.all.complying()) {
    if (out.choice && stretch.contains(*out.choice)) {
      out.chosen = out.pieces.size();
    }
    out.pieces.push_back({stretch, end_of(out, stretch, true), end_of(out, stretch, false)});
  }
  if (out.pieces.empty()) {
    out.conflict = conflict(out.clauses);
  }
  out.tolerance = tolerance ? tolerance : production(plan, evidence, out);
  if (out.tolerance && out.chosen) {
    const Stretch& piece = out.pieces[*out.chosen].stretch;
    out.tolerance_fits = piece.contains(*out.choice - *out.tolerance) && piece.contains(*out.choice + *out.tolerance);
  }
  return out;
}

Standing standing(const plan::Plan& plan, const Window& window) {
  bool open = window.submittal_has_errors || !window.choice;
  bool varies = false;
  for (const Clause& clause : window.clauses) {
    varies = varies || (narrows(clause) && clause.role == Role::varies);
    if (narrows(clause) && clause.role == Role::varies && !plan.requirements[clause.requirement].optional) {
      // A line between other tests confirms nothing of what the review of the job mix does not show.
      open = open || clause.finding.verdict == Verdict::not_shown;
    }
    if (clause.role == Role::varies || !clause.counts) {
      continue;
    }
    if (clause.finding.verdict == Verdict::fails) {
      return Standing::fails;
    }
    open = open || (clause.role == Role::constant && clause.finding.verdict == Verdict::not_shown &&
                    !plan.requirements[clause.requirement].optional);
  }
  if (!varies) {
    return Standing::open;
  }
  if (window.choice && window.all.at(*window.choice) == Verdict::fails) {
    return Standing::fails;
  }
  if (!window.chosen) {
    const bool nowhere = window.pieces.empty() && !window.all.anywhere(Verdict::not_shown);
    return nowhere ? Standing::fails : Standing::open;
  }
  if (window.tolerance && !window.tolerance_fits) {
    return Standing::fails;
  }
  const Piece& piece = window.pieces[*window.chosen];
  const bool bracketed = piece.low.kind == EndKind::limit && piece.high.kind == EndKind::limit;
  return open || !bracketed ? Standing::open : Standing::holds;
}

}  // namespace plumbrule::window
