#include <algorithm>

#include "apply/window/words.hpp"

namespace plumbrule::window {
namespace {

std::string_view role_in_end(const Words& words, const End& end) {
  const Clause& first = words.window().clauses[end.clauses.front()];
  return first.role == Role::own_limit ? "limits the variable itself" : "fails beyond it";
}

std::string end_text(const Words& words, const End& end) {
  if (end.kind == EndKind::limit) {
    return words.names(end.clauses) +
           (end.clauses.size() > 1 ? " fail beyond it" : " " + std::string(role_in_end(words, end)));
  }
  if (end.kind == EndKind::edge) {
    const std::string of = end.clauses.empty() ? "" : " of " + words.names(end.clauses);
    return "edge of the tested range" + of + ": not bracketed, what lies beyond is not known";
  }
  return "not bracketed: beyond it " + words.names(end.clauses) + (end.clauses.size() > 1 ? " are" : " is") +
         " not shown";
}

EndReport end_report(const Words& words, const End& end) {
  EndReport out;
  out.at = words.number(end.at);
  out.inside = end.inside;
  out.kind = end.kind;
  out.said = end_text(words, end);
  for (const std::size_t index : end.clauses) {
    const Clause& clause = words.window().clauses[index];
    out.clauses.push_back(words.requirement(clause).number);
    if (end.kind == EndKind::limit) {
      const auto lines = words.derivation(clause, end.at);
      out.steps.insert(out.steps.end(), lines.begin(), lines.end());
    }
  }
  return out;
}

PieceReport piece_report(const Words& words, std::size_t at) {
  const Piece& piece = words.window().pieces[at];
  PieceReport out;
  out.low = end_report(words, piece.low);
  out.high = end_report(words, piece.high);
  out.middle = words.number(piece.middle());
  out.width = words.difference(piece.width());
  out.holds_choice = words.window().chosen == at;
  return out;
}

SeriesReport series_report(const Words& words, const Clause& clause, const Series& series) {
  const check::Assertion& demanded = words.assertion(clause, series.check);
  SeriesReport out;
  out.label = explain::label(words.context().rules, demanded);
  out.limit = explain::limit_text(demanded.limit);
  out.threshold = words.thresholds(series);
  out.folded = Words::folded(demanded.limit);
  out.unit = words.unit(series.check);
  if (series.limits.low) {
    out.low = words.limit_end(demanded, series.check, *series.limits.low, false);
  }
  if (series.limits.high) {
    out.high = words.limit_end(demanded, series.check, *series.limits.high, true);
  }
  for (const Reading& one : series.readings) {
    out.readings.push_back(words.reading(series.check, one));
  }
  if (rises_and_falls(series)) {
    out.warnings.emplace_back("it rises and falls with the variable");
  }
  if (clause.role == Role::varies && series.readings.size() < 3) {
    out.warnings.push_back("tested at " + std::to_string(series.readings.size()) +
                           (series.readings.size() == 1 ? " value only" : " values only; three or more show a trend"));
  }
  return out;
}

ClauseReport clause_report(const Words& words, const Clause& clause) {
  ClauseReport out;
  const check::Requirement& requirement = words.requirement(clause);
  out.number = requirement.number;
  out.title = requirement.title;
  out.role = clause.role;
  out.counts = clause.counts;
  out.optional = requirement.optional;
  out.verdict = clause.finding.verdict;
  // Of a whole grading, one reason says enough here; the review lists the rest.
  const bool missing =
      clause.finding.verdict == Verdict::not_shown && clause.finding.reason != explain::Reason::class_not_stated;
  out.why =
      missing ? explain::reason_text(clause.finding.reason) : explain::explain(words.context(), clause.finding).why;
  if (clause.role == Role::varies || clause.role == Role::own_limit) {
    for (const Stretch& one : clause.profile.complying()) {
      out.complying.push_back(words.stretch(one));
      out.stretches.push_back(one);
    }
    const bool limits_variable = clause.role == Role::own_limit;
    for (const Series& one : clause.series) {
      out.series.push_back(series_report(words, clause, one));
      if (limits_variable) {
        out.series.back().readings.clear();  // 7 % at 7 % tells nobody anything
      }
    }
  }
  return out;
}

std::string interval(const Words& words, std::size_t clause) {
  const Clause& of = words.window().clauses[clause];
  return words.name(of) + " complies " + words.stretches(of.profile);
}

std::string conflict_text(const Words& words) {
  if (words.window().too_many) {
    return "there are " + std::to_string(words.window().tested.size()) + " tested values; at most " +
           std::to_string(most_tested) + " are followed";
  }
  const Conflict& conflict = words.window().conflict;
  // Undecided is not excluded: where something is not shown, more tests may still open a window.
  const bool open = words.window().all.anywhere(Verdict::not_shown);
  std::string intervals;
  for (const std::size_t one : conflict.clauses) {
    intervals += (intervals.empty() ? "" : "; ") + interval(words, one);
  }
  switch (conflict.kind) {
    case ConflictKind::never:
      return words.names(conflict.clauses) + (open ? (conflict.clauses.size() > 1 ? " are" : " is") : " never") +
             (open ? std::string(" nowhere shown to comply; more tests may open a window")
                   : std::string(conflict.clauses.size() > 1 ? " comply" : " complies") + " in the tested range");
    case ConflictKind::pair:
      return open ? "nowhere are these two shown to comply together; more tests may open a window: " + intervals
                  : "these two exclude each other: " + intervals;
    case ConflictKind::several:
      return open ? "nowhere are these shown to comply together; more tests may open a window: " + intervals
                  : "no two exclude each other, but these together do: " + intervals;
    default:
      return "no clause was tested at two or more values of the variable";
  }
}

std::vector<std::size_t> narrowing_with(const Window& window, const Decimal& at, Verdict verdict) {
  std::vector<std::size_t> out;
  for (std::size_t index = 0; index < window.clauses.size(); ++index) {
    const Clause& one = window.clauses[index];
    const bool narrows = one.counts && (one.role == Role::varies || one.role == Role::own_limit);
    if (narrows && one.profile.at(at) == verdict) {
      out.push_back(index);
    }
  }
  return out;
}

bool varies(const Window& window) {
  return std::any_of(window.clauses.begin(), window.clauses.end(),
                     [](const Clause& one) { return one.counts && one.role == Role::varies; });
}

// Which clauses fail at the choice, and by what: by the limit on the variable itself, by a test there, or by a line.
std::string failing_there(const Words& words, const Decimal& choice) {
  std::vector<std::size_t> own;
  std::vector<std::size_t> tested;
  std::vector<std::size_t> by_line;
  for (const std::size_t index : narrowing_with(words.window(), choice, Verdict::fails)) {
    const Clause& one = words.window().clauses[index];
    (one.role == Role::own_limit ? own : one.finding.verdict == Verdict::fails ? tested : by_line).push_back(index);
  }
  std::string out;
  const auto add = [&](const std::vector<std::size_t>& which, std::string_view how) {
    if (!which.empty()) {
      out +=
          (out.empty() ? "" : "; ") + words.names(which) + (which.size() > 1 ? " fail" : " fails") + std::string(how);
    }
  };
  add(own, own.size() > 1 ? ", by their limits on the variable itself" : ", by its limit on the variable itself");
  add(tested, ", as tested there");
  add(by_line, ", by straight lines");
  return out;
}

std::string standing_text(const Words& words) {
  const Window& window = words.window();
  if (!window.choice) {
    return "the job mix does not state its value of the variable";
  }
  if (window.chosen) {
    const Stretch& piece = window.pieces[*window.chosen].stretch;
    return "inside the window, " + words.difference(*window.choice - piece.low).full + " above its lower end and " +
           words.difference(piece.high - *window.choice).full + " below its upper end";
  }
  if (window.too_many) {
    return "nothing is worked out for it";
  }
  std::string failing = failing_there(words, *window.choice);
  if (!failing.empty()) {
    return "outside the window: there " + std::move(failing);
  }
  const std::vector<std::size_t> unshown = narrowing_with(window, *window.choice, Verdict::not_shown);
  return !unshown.empty()  ? "not shown at it: " + words.names(unshown)
         : !varies(window) ? "no window can be drawn about it: no clause was tested at two or more values"
                           : "nothing is shown for it: it is not inside what was tested";
}

std::string tolerance_text(const Words& words) {
  const Window& window = words.window();
  if (!window.tolerance || !window.choice) {
    return "";
  }
  const std::string band =
      plain(*window.choice - *window.tolerance) + " to " + words.number(*window.choice + *window.tolerance).full;
  return "production may stray by " + words.difference(*window.tolerance).full + ": " + band +
         (window.tolerance_fits ? " lies inside the window" : " does not lie inside the window");
}

}  // namespace

VariableWindow describe(const explain::Context& context, const Window& window, const Wish& wish) {
  const Words words(context, window);
  const check::Measure& measure = context.rules.measures[window.variable];
  VariableWindow out;
  out.variable = measure.name;
  out.title = measure.title;
  out.unit = context.evidence.units.at(measure.type.unit).text;
  out.unit +=
      measure.type.basis == check::none ? "" : " of " + explain::spaced(context.rules.bases[measure.type.basis].name);
  for (std::size_t at = 0; at < window.tested.size() && !window.too_many; ++at) {
    out.tested.push_back(plain(window.tested[at]));
  }
  if (window.choice) {
    out.choice = words.number(*window.choice);
  }
  for (std::size_t at = 0; at < window.pieces.size(); ++at) {
    out.pieces.push_back(piece_report(words, at));
  }
  out.conflict = window.pieces.empty() ? conflict_text(words) : "";
  out.standing = standing_text(words);
  out.tolerance = tolerance_text(words);
  if (window.tolerance && window.choice) {
    out.production = {words.number(*window.choice - *window.tolerance),
                      words.number(*window.choice + *window.tolerance)};
  }
  out.cautions = cautions(words);
  for (const Clause& one : window.clauses) {
    out.clauses.push_back(clause_report(words, one));
  }
  out.changes = changes(words);
  if (wish.curve) {
    out.curves = curves(words);
  }
  out.outcome = standing(context.plan, window);
  return out;
}

}  // namespace plumbrule::window
