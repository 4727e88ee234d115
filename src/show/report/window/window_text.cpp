#include <algorithm>

#include "base/diagnose/quote.hpp"
#include "show/report/window/window.hpp"

namespace plumbrule::report {
namespace {

using diagnose::printable;
using explain::Verdict;
using window::ClauseReport;
using window::Role;

std::string item(const std::string& indent, const std::string& name, const std::string& value) {
  return value.empty()
             ? ""
             : indent + name + std::string(name.size() < 12 ? 12 - name.size() : 1, ' ') + printable(value) + "\n";
}

std::string painted(const std::string& text, std::string_view shade, bool colour) {
  return colour ? "\x1b[" + std::string(shade) + "m" + text + "\x1b[0m" : text;
}

std::string lines(const std::vector<explain::Line>& steps, std::size_t indent) {
  std::string out;
  for (const explain::Line& line : steps) {
    out += std::string(indent + 2 * static_cast<std::size_t>(line.depth), ' ') + printable(line.text);
    out += line.place.empty() ? "\n" : "   [" + printable(line.place) + "]\n";
  }
  return out;
}

std::string end(const std::string& name, const window::EndReport& one) {
  return item("    ", name, one.at.shown + (one.inside ? "" : " (itself outside)") + ": " + one.said);
}

std::string pieces(const window::VariableWindow& one, bool colour) {
  std::string out;
  for (const window::PieceReport& piece : one.pieces) {
    const bool point = piece.low.at.exact == piece.high.at.exact;
    const std::string span = point ? piece.low.at.full + " alone" : piece.low.at.shown + " to " + piece.high.at.full;
    out += "  window      " + painted(printable(span), "34", colour) +
           (piece.holds_choice ? ", holds the job mix" : "") + "\n";
    out += end("lower end", piece.low) + end("upper end", piece.high);
    out += point ? "" : item("    ", "middle", piece.middle.shown + ", width " + piece.width.shown);
  }
  if (one.pieces.empty()) {
    out += "  window      " + painted("none", "1;31", colour) + ": " + printable(one.conflict) + "\n";
  }
  return out;
}

std::string marks(const ClauseReport& one) {
  return std::string(one.counts ? "" : " (advice only)") + (one.optional ? " (optional test)" : "");
}

std::string readings(const std::vector<window::ReadingReport>& all) {
  std::string out;
  for (const window::ReadingReport& one : all) {
    const std::string value = one.value.empty() ? "" : one.value + ", ";
    const std::string why = one.why.empty() ? "" : ": " + one.why;
    out += "        at " + printable(one.at) + ": " + printable(value) +
           std::string(explain::verdict_text(one.verdict)) + printable(why) +
           (one.place.empty() ? "" : "   [" + printable(one.place) + "]") + "\n";
  }
  return out;
}

std::string varying(const ClauseReport& one) {
  std::string out = "    " + printable(one.number + "  " + one.title) + marks(one) + "\n";
  out +=
      item("      ", "complies", one.complying.empty() ? "nowhere in the tested range" : joined(one.complying, "; "));
  for (const window::SeriesReport& series : one.series) {
    out += item("      ", "limit",
                series.label + ": " + series.limit + (series.folded ? "; unrounded: " + series.threshold : ""));
    out += readings(series.readings);
    for (const std::string& warning : series.warnings) {
      out += item("      ", "caution", warning);
    }
  }
  return out;
}

std::string clauses(const window::VariableWindow& one) {
  std::string varies;
  std::string beside;
  std::string open;
  for (const ClauseReport& clause : one.clauses) {
    if (clause.role == Role::varies || clause.role == Role::own_limit) {
      varies += varying(clause);
    } else {
      (clause.verdict == Verdict::not_shown ? open : beside) +=
          "    " + printable(clause.number + "  " + clause.title) + marks(clause) + ": " +
          std::string(explain::verdict_text(clause.verdict)) +
          (clause.role == Role::tolerance ? ", a tolerance of production" : "") +
          (clause.verdict == Verdict::complies ? "" : "; " + printable(clause.why)) + "\n";
    }
  }
  return (varies.empty() ? "" : "  Clauses that vary with it\n" + varies) +
         (beside.empty() ? "" : "  " + std::string(judged_at_job_mix) + "\n" + beside) +
         (open.empty() ? "" : "  " + std::string(not_shown_beside) + "\n" + open);
}

std::string changes(const window::VariableWindow& one) {
  std::string out = one.changes.empty() ? "" : "  What a change would do (an estimate, to be confirmed by test)\n";
  for (const window::ChangeReport& change : one.changes) {
    out += "    " + printable(change.clause + "  " + change.title) + "\n";
    out += item("      ", "now", change.now) + item("      ", "change", change.move);
    for (const std::string& other : change.others) {
      out += item("      ", "there", other);
    }
  }
  return out;
}

std::string curves(const window::VariableWindow& one) {
  std::string out =
      one.curves.empty() ? "" : "  Parabolas of least squares, for comparison; the window does not rest on them\n";
  for (const window::CurveReport& curve : one.curves) {
    out += "    " + printable(curve.clause + "  " + curve.label) + "\n";
    out += item("      ", "curve", curve.formula) + item("      ", "complies", curve.within);
    for (const window::ReadingReport& point : curve.points) {
      out += "        at " + printable(point.at) + ": " + printable(point.value) + ", tested value off by " +
             printable(point.why) + "\n";
    }
  }
  return out;
}

std::string window_of(const window::VariableWindow& one, bool colour) {
  std::string out = "\n" + item(" ", one.title, "in " + one.unit);
  out += item("  ", "tested at", joined(one.tested, ", "));
  out += item("  ", "job mix", one.choice ? one.choice->full : "not stated");
  out += pieces(one, colour);
  out += item("  ", "choice", one.standing) + item("  ", "tolerance", one.tolerance);
  for (const std::string& caution : one.cautions) {
    out += item("  ", "caution", caution);
  }
  return out + clauses(one) + changes(one) + curves(one);
}

// At other times than the one for which it is asked, a low value is no failure of the clause.
std::string strength_readings(const std::vector<window::ReadingReport>& all) {
  std::string out;
  for (const window::ReadingReport& one : all) {
    const std::string meets = one.verdict == Verdict::complies ? "meets it"
                              : one.verdict == Verdict::fails  ? "does not meet it"
                                                               : "not shown: " + one.why;
    out += "        at " + printable(one.at) + ": " + printable(one.value.empty() ? meets : one.value + ", " + meets) +
           (one.place.empty() ? "" : "   [" + printable(one.place) + "]") + "\n";
  }
  return out;
}

std::string strength(const window::StrengthReport& one) {
  std::string out = "    " + printable(one.clause + "  " + one.title) + "\n";
  out += item("      ", "asked", one.limit + ", " + one.asked) + item("      ", "build", one.reached);
  out += lines(one.steps, 18) + strength_readings(one.readings);
  for (const std::string& caution : one.cautions) {
    out += item("      ", "caution", caution);
  }
  out += item("      ", "level", one.level) + item("      ", "source", one.source);
  return out + item("      ", "meaning", one.meaning) + item("      ", "to mend", one.mend);
}

std::string specification(const window::SpecificationWindows& one, bool colour) {
  std::string out = "\n" + printable(one.title) + "\n";
  out += item("  ", "edition", one.edition + (one.agency.empty() ? "" : ", " + one.agency));
  out += item("  ", "limits",
              std::string(explain::status_text(one.status)) + (one.status_note.empty() ? "" : ": " + one.status_note));
  out += item("  ", "source", one.source);
  for (const std::string& amendment : one.amendments) {
    out += item("  ", "amended by", amendment);
  }
  for (const std::string& withdrawn : one.withdrawn) {
    out += item("  ", "withdrawn", withdrawn);
  }
  out += item("  ", "rules", one.file);
  for (const window::VariableWindow& part : one.windows) {
    out += window_of(part, colour);
  }
  if (one.windows.empty()) {
    out += "  window      none: no result says with `at` that it was tested at another design value\n";
  }
  out += one.strengths.empty() ? "" : "\n  Strength build at the job mix\n";
  for (const window::StrengthReport& part : one.strengths) {
    out += strength(part);
  }
  return out;
}

// The ends that a clause makes, each with its derivation.
std::string ends_of(const window::VariableWindow& one, const std::string& clause) {
  std::string out;
  for (const window::PieceReport& piece : one.pieces) {
    for (const auto& [name, end] : {std::pair("lower end", &piece.low), std::pair("upper end", &piece.high)}) {
      const bool makes = std::find(end->clauses.begin(), end->clauses.end(), clause) != end->clauses.end();
      if (makes) {
        out += item("  ", name, end->at.full + ": " + end->said) + lines(end->steps, 4);
      }
    }
  }
  return out;
}

}  // namespace

std::string window_text(const Windows& report, bool colour) {
  std::string out = item("", "Submittal", report.submittal) + item("", "Project", report.identity.project) +
                    item("", "Mix", report.identity.mix) + item("", "Laboratory", report.identity.laboratory) +
                    item("", "Prepared by", report.identity.prepared_by) + item("", "Date", report.identity.date) +
                    item("", "Note", report.identity.note);
  if (!report.problems.empty()) {
    out +=
        item("", "Errors",
             std::to_string(report.problems.size()) + " in the submittal (listed apart); what they touch is not shown");
  }
  for (const Problem& one : report.warnings) {
    out += item("", "Warning", problem_text(one));
  }
  for (const window::SpecificationWindows& one : report.specifications) {
    out += specification(one, colour);
  }
  return out + "\n" + std::string(estimate) + "\n" + closing_text(report.origin);
}

std::optional<std::string> window_explained(const Windows& report, const std::string& clause) {
  std::string out;
  for (const window::SpecificationWindows& one : report.specifications) {
    for (const window::VariableWindow& part : one.windows) {
      for (const ClauseReport& own : part.clauses) {
        if (own.number != clause) {
          continue;
        }
        out += printable(one.title + ", edition " + one.edition) + "\n" + printable(part.title) + " in " +
               printable(part.unit) + "\n";
        const bool varies = own.role == Role::varies || own.role == Role::own_limit;
        const std::string ends = ends_of(part, clause);
        out += varies ? varying(own) : "    " + printable(own.number + "  " + own.title) + ": does not vary with it\n";
        out += varies && ends.empty() ? "  it makes no end of the window\n" : ends;
      }
    }
  }
  return out.empty() ? std::nullopt
                     : std::optional(out + "\n" + std::string(estimate) + "\n" + closing_text(report.origin));
}

}  // namespace plumbrule::report
