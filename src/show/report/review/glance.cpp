#include "show/report/review/glance.hpp"

#include <algorithm>
#include <array>

#include "show/report/matrix/matrix.hpp"
#include "show/report/parts/table.hpp"

namespace plumbrule::report {
namespace {

using explain::Comparison;
using explain::Explanation;
using explain::Verdict;
using quantity::Decimal;

constexpr std::size_t narrow = 72;

// How far a value is from `low` towards `high`, in steps of which there are `count`; 0 or `count` beyond the ends.
std::size_t step_of(const Decimal& value, const Decimal& low, const Decimal& high, std::size_t count) {
  const Decimal step = (high - low) / Decimal{static_cast<std::int64_t>(count)};
  std::size_t out = 0;
  while (out < count && low + step * Decimal{static_cast<std::int64_t>(out + 1)} <= value) {
    ++out;
  }
  return out;
}

// The margin from the limit, which is the bar in the middle: ten percent of the limit a mark, up to fifty each way, and
// a small mark for less than ten.
std::string margin_bar(const std::optional<Decimal>& headroom) {
  constexpr std::size_t half = 5;
  std::string out(2 * half + 1, '.');
  out[half] = '|';
  if (headroom) {
    const bool outside = *headroom < Decimal{0};
    const std::size_t marks = step_of(outside ? -*headroom : *headroom, 0, 50, half);
    const bool some = marks == 0 && !headroom->zero();
    for (std::size_t at = 1; at <= std::max<std::size_t>(marks, some ? 1 : 0); ++at) {
      out[outside ? half - at : half + at] = some ? '-' : '=';
    }
  }
  return out;
}

int rank(const Explanation& one) {
  constexpr std::array<int, 4> ranks{2, 0, 1, 3};  // complies, fails, not shown, does not apply
  return ranks.at(static_cast<std::size_t>(one.verdict));
}

// What the clause turns on: of the comparisons that stand as it does, the one with the least headroom.
const Comparison* telling(const Explanation& one) {
  const Comparison* out = nullptr;
  for (const Comparison& comparison : one.comparisons) {
    const bool stands = comparison.verdict == one.verdict;
    const bool less =
        out == nullptr || (comparison.headroom && (!out->headroom || *comparison.headroom < *out->headroom));
    out = stands && less ? &comparison : out;
  }
  return out;
}

std::string title(const Explanation& one) {
  return one.title + (one.severity == check::Severity::advise ? " (advice only)" : one.optional ? " (optional)" : "");
}

// Of several comparisons, such as the sieves of a grading, the value alone would not say of which it is.
std::string value_of(const Explanation& one, const Comparison& what) {
  return (one.comparisons.size() > 1 ? what.label + ": " : "") + what.value;
}

std::string coloured(std::string text, Verdict verdict, bool colour) {
  if (!colour) {
    return text;
  }
  const char* const code = verdict == Verdict::fails       ? "\033[31m"
                           : verdict == Verdict::not_shown ? "\033[33m"
                                                           : "\033[32m";
  const std::string word(explain::verdict_text(verdict));
  const std::size_t at = text.find(word);
  return at == std::string::npos ? text : text.replace(at, word.size(), code + word + "\033[0m");
}

// A table whose first column is the verdict; colour is put in afterwards, so that widths do not count it.
std::string wide_table(const std::vector<const Explanation*>& findings, std::size_t width, bool colour) {
  std::string out;
  TableView table;
  table.heads = {"", "clause", "", "value", "limit", "out  |  in", "margin, % of limit"};
  for (const Explanation* one : findings) {
    const Comparison* const what = telling(*one);
    const std::string why =
        one->verdict == Verdict::not_shown && what != nullptr && what->value.empty() ? what->why : "";
    table.rows.push_back({std::string(explain::verdict_text(one->verdict)), one->number, title(*one),
                          what == nullptr ? ""
                          : why.empty()   ? value_of(*one, *what)
                                          : why,
                          what == nullptr ? "" : what->limit,
                          what == nullptr || !what->headroom ? "" : margin_bar(what->headroom),
                          what == nullptr || !what->headroom ? "" : headroom_text(what->headroom)});
  }
  const std::string plain = text_table(table, width);
  std::size_t begin = 0;
  while (begin < plain.size()) {
    const std::size_t end = std::min(plain.find('\n', begin), plain.size() - 1);
    std::string line = plain.substr(begin, end - begin + 1);
    for (const Verdict verdict : {Verdict::fails, Verdict::not_shown, Verdict::complies}) {
      line = line.rfind(explain::verdict_text(verdict), 0) == 0 ? coloured(line, verdict, colour) : line;
    }
    out += line;
    begin = end + 1;
  }
  return out;
}

std::string narrow_list(const std::vector<const Explanation*>& findings, std::size_t width, bool colour) {
  std::string out;
  for (const Explanation* one : findings) {
    const Comparison* const what = telling(*one);
    out +=
        coloured(folded_line(std::string(explain::verdict_text(one->verdict)) + "  " + one->number + " " + title(*one),
                             0, width),
                 one->verdict, colour);
    if (what != nullptr) {
      const std::string value = what->value.empty() ? what->why : value_of(*one, *what) + " against " + what->limit;
      out += folded_line(value + (what->headroom ? ", margin " + headroom_text(what->headroom) + " of the limit" : ""),
                         2, width);
    }
  }
  return out;
}

std::string actions(const Report& report, std::size_t width) {
  constexpr std::array<const char*, 3> hands{"laboratory", "designer", "agency"};
  std::string out;
  for (std::size_t hand = 0; hand < hands.size(); ++hand) {
    for (const Action& one : report.actions) {
      if (static_cast<std::size_t>(one.hand) == hand) {
        std::string clauses;
        for (const std::string& clause : one.clauses) {
          clauses += (clauses.empty() ? "" : ", ") + clause;
        }
        constexpr std::size_t most = 60;
        clauses = clauses.size() > most ? std::to_string(one.clauses.size()) + " clauses" : clauses;
        out += folded_line(
            std::string(hands.at(hand)) + ": " + one.what + (clauses.empty() ? "" : " (" + clauses + ")"), 2, width);
      }
    }
  }
  return out.empty() ? out : "\nNext\n" + out;
}

std::string head(const explain::SpecificationHead& one, std::size_t width) {
  return "\n" + folded_line(one.title + ", edition " + one.edition + " (limits " +
                                std::string(explain::status_text(one.status)) + ")",
                            0, width);
}

std::string who(const evidence::Identity& identity, const std::string& file, std::size_t width) {
  std::string out;
  for (const std::string& one : {identity.mix, identity.project, file}) {
    out += (out.empty() || one.empty() ? "" : "; ") + one;
  }
  return folded_line(out, 0, width);
}

std::string closing(const std::string& more, std::size_t width) {
  return "\n" + folded_line(more, 0, width) + folded_line("Caution: " + std::string(caution), 0, width);
}

}  // namespace

std::string glance(const Report& report, std::size_t width, bool colour) {
  std::string out = who(report.identity, report.submittal, width);
  if (!report.problems.empty()) {
    out += folded_line("The submittal has " + std::to_string(report.problems.size()) + " errors.", 0, width);
  }
  for (const Problem& one : report.warnings) {
    out += folded_line("Warning: " + problem_text(one), 0, width);
  }
  for (const SpecificationReport& one : report.specifications) {
    out += head(one, width);
    out += folded_line(std::string(explain::outcome_text(one.outcome)) + ": " + counts(one.findings), 0, width) + "\n";
    std::vector<const Explanation*> findings;
    for (const Explanation& finding : one.findings) {
      if (finding.verdict != Verdict::does_not_apply) {
        findings.push_back(&finding);
      }
    }
    std::stable_sort(findings.begin(), findings.end(),
                     [](const auto* left, const auto* right) { return rank(*left) < rank(*right); });
    out += width < narrow ? narrow_list(findings, width, colour) : wide_table(findings, width, colour);
  }
  for (const SetAside& one : report.origin.aside) {
    out += "\n" + folded_line("Not in force on " + report.origin.on + ": " + aside_text(one), 0, width);
  }
  out += actions(report, width);
  if (!report.audit.findings.empty()) {
    out += "\n" + folded_line("The audit of the readings has " + std::to_string(report.audit.findings.size()) +
                                  (report.audit.findings.size() == 1 ? " finding." : " findings."),
                              0, width);
  }
  return out + closing("Everything, with reasons and places: --detail full. One clause step by step: --explain CLAUSE.",
                       width);
}

namespace {

// Where a clause complies along the tested values: `=` inside, `.` outside, `*` at the job mix.
std::string range_bar(const std::vector<window::Stretch>& stretches, const Decimal& low, const Decimal& high,
                      const std::optional<Decimal>& choice, std::size_t marks) {
  std::string out(marks, '.');
  for (const window::Stretch& one : stretches) {
    const std::size_t from = step_of(one.low, low, high, marks - 1);
    const std::size_t to = step_of(one.high, low, high, marks - 1);
    std::fill(out.begin() + static_cast<std::ptrdiff_t>(from), out.begin() + static_cast<std::ptrdiff_t>(to) + 1, '=');
  }
  if (choice) {
    out[step_of(*choice, low, high, marks - 1)] = '*';
  }
  return "[" + out + "]";
}

std::string ranges(const window::VariableWindow& one, std::size_t width) {
  std::optional<Decimal> low, high;
  for (const std::string& tested : one.tested) {
    const auto value = Decimal::parse(tested);
    low = value && (!low || *value < *low) ? value : low;
    high = value && (!high || *high < *value) ? value : high;
  }
  if (!low || !high || !(*low < *high)) {
    return {};
  }
  const auto choice = one.choice ? Decimal::parse(one.choice->exact) : std::nullopt;
  const std::size_t marks = width < narrow ? 20 : 30;
  TableView table;
  table.heads = {"", one.tested.front() + " to " + one.tested.back() + ", * job mix", "complies"};
  for (const window::ClauseReport& clause : one.clauses) {
    if (!clause.series.empty()) {
      table.rows.push_back({clause.number + " " + clause.title, range_bar(clause.stretches, *low, *high, choice, marks),
                            clause.complying.empty() ? "nowhere" : joined(clause.complying, "; ")});
    }
  }
  return text_table(table, width);
}

}  // namespace

std::string glance(const Windows& report, std::size_t width, bool /*colour*/) {
  std::string out = who(report.identity, report.submittal, width);
  for (const window::SpecificationWindows& specification : report.specifications) {
    out += head(specification, width);
    for (const window::VariableWindow& one : specification.windows) {
      out += folded_line(one.title + " in " + one.unit, 0, width);
      for (const window::PieceReport& piece : one.pieces) {
        out += folded_line(
            "window " + piece.low.at.shown + " to " + piece.high.at.shown + ", middle " + piece.middle.shown, 2, width);
      }
      for (const std::string& said : {one.conflict, one.standing, one.tolerance}) {
        out += said.empty() ? "" : folded_line(said, 2, width);
      }
      for (const std::string& said : one.cautions) {
        out += folded_line("caution: " + said, 2, width);
      }
      out += "\n" + ranges(one, width);
    }
    for (const window::StrengthReport& one : specification.strengths) {
      out += "\n" + folded_line(one.clause + " " + one.title + ": " + one.limit + ", " + one.asked + ": " + one.reached,
                                0, width);
    }
  }
  return out + "\n" + folded_line(std::string(estimate), 0, width) +
         closing("Everything, with every tested value and derivation: --detail full.", width);
}

}  // namespace plumbrule::report
