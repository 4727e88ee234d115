#include "apply/review/matrix.hpp"

#include <algorithm>
#include <array>

namespace plumbrule::review {
namespace {

using explain::Comparison;
using explain::Verdict;
using quantity::Decimal;

int badness(Verdict verdict) {
  constexpr std::array<int, 4> ranks{1, 3, 2, 0};  // complies, fails, not shown, does not apply
  return ranks.at(static_cast<std::size_t>(verdict));
}

bool less_room(const std::optional<Decimal>& one, const std::optional<Decimal>& other) {
  return one && (!other || *one < *other);
}

bool worse(const Cell& one, const Cell& other) {
  return badness(one.verdict) != badness(other.verdict) ? badness(one.verdict) > badness(other.verdict)
                                                        : less_room(one.headroom, other.headroom);
}

class MatrixMaker {
 public:
  explicit MatrixMaker(const Report& report) : report_(report) {}

  Matrix run() {
    for (const SpecificationReport& one : report_.specifications) {
      out_.columns.push_back(column(one));
    }
    for (Column& column : out_.columns) {
      const auto namesakes = std::count_if(out_.columns.begin(), out_.columns.end(), [&](const Column& other) {
        return other.specification->name == column.specification->name;
      });
      if (namesakes > 1) {
        column.label = column.specification->edition + " " + column.label;
      }
    }
    std::stable_sort(out_.columns.begin(), out_.columns.end(), [](const Column& left, const Column& right) {
      const auto outcome = [](const Column& one) {
        return !decided(one)                                                         ? 3
               : one.specification->outcome == evaluate::Outcome::incomplete         ? 1
               : one.specification->outcome == evaluate::Outcome::no_exception_taken ? 0
                                                                                     : 2;
      };
      if (outcome(left) != outcome(right)) {
        return outcome(left) < outcome(right);
      }
      // One without a headroom has none that could be compared, and stands behind.
      return left.headroom && (!right.headroom || *right.headroom < *left.headroom);
    });
    for (std::size_t at = 0; at < out_.columns.size(); ++at) {
      for (const explain::Explanation& finding : out_.columns[at].specification->findings) {
        for (const Comparison& comparison : finding.comparisons) {
          add(at, finding, comparison);
        }
      }
    }
    return std::move(out_);
  }

 private:
  const Report& report_;
  Matrix out_;

  // Whether any clause was decided. Where nothing was, the outcome is no better than one that fails.
  static bool decided(const Column& one) {
    return one.counts[static_cast<std::size_t>(Verdict::complies)] > 0 ||
           one.counts[static_cast<std::size_t>(Verdict::fails)] > 0;
  }

  static Column column(const SpecificationReport& one) {
    Column out;
    out.specification = &one;
    out.label = one.name;
    for (const std::string& amendment : one.amendments) {
      out.label += " + " + amendment;
    }
    const auto fails = [](const explain::Explanation& finding) {
      return finding.verdict == Verdict::fails && finding.severity != check::Severity::advise;
    };
    out.fails = std::any_of(one.findings.begin(), one.findings.end(), fails);
    for (const explain::Explanation& finding : one.findings) {
      ++out.counts[static_cast<std::size_t>(finding.verdict)];
      // Where a clause fails, one that complies governs nothing.
      if (finding.severity != check::Severity::advise && (!out.fails || fails(finding))) {
        govern(finding, out);
      }
    }
    return out;
  }

  static void govern(const explain::Explanation& finding, Column& out) {
    const Comparison* failing = nullptr;
    for (const Comparison& comparison : finding.comparisons) {
      // Of alternatives one that complies is enough: what the others lack does not govern.
      if (comparison.verdict != finding.verdict) {
        continue;
      }
      failing = failing == nullptr ? &comparison : failing;
      if (less_room(comparison.headroom, out.headroom)) {
        out.headroom = comparison.headroom;
        out.governing = finding.number + " " + comparison.label;
      }
    }
    // A word, or a rule on consecutive sieves, fails without a number.
    if (out.fails && out.governing.empty()) {
      out.governing = finding.number + " " + (failing == nullptr ? finding.title : failing->label);
    }
  }

  void add(std::size_t at, const explain::Explanation& finding, const Comparison& comparison) {
    const bool advice = finding.severity == check::Severity::advise;  // never hides what decides
    const std::string subject = comparison.subject + (advice ? "|advice" : "");
    auto kind =
        std::find_if(out_.kinds.begin(), out_.kinds.end(), [&](const TestRow& one) { return one.subject == subject; });
    if (kind == out_.kinds.end()) {
      kind = out_.kinds.insert(out_.kinds.end(), {subject, comparison.label + (advice ? ", advice only" : ""), {}});
      kind->cells.resize(out_.columns.size());
    }
    // The verdict of the clause counts: of alternatives one is enough.
    const bool other_way = finding.verdict == Verdict::complies && comparison.verdict != Verdict::complies;
    // What fails although no comparison does, such as the rule on consecutive sieves, fails in all of its cells.
    const bool as_a_whole = finding.verdict == Verdict::fails &&
                            std::none_of(finding.comparisons.begin(), finding.comparisons.end(),
                                         [](const Comparison& one) { return one.verdict == Verdict::fails; });
    const Verdict shown = comparison.verdict == Verdict::complies && !as_a_whole ? Verdict::complies : finding.verdict;
    const Cell cell{shown,
                    true,
                    other_way,
                    other_way ? comparison.verdict : shown,
                    finding.number,
                    comparison.limit,
                    comparison.value,
                    other_way || as_a_whole ? std::nullopt : comparison.headroom,
                    comparison.why};
    if (!kind->cells[at].asked || worse(cell, kind->cells[at])) {
      kind->cells[at] = cell;
    }
  }
};

}  // namespace

Matrix matrix(const Report& report) { return MatrixMaker(report).run(); }

}  // namespace plumbrule::review
