#include "show/report/review/pictures.hpp"

#include <algorithm>
#include <limits>
#include <locale>
#include <sstream>

#include "judge/explain/wording.hpp"

namespace plumbrule::report {
namespace {

using explain::Comparison;
using explain::Explanation;
using explain::Numbers;
using quantity::Decimal;

constexpr std::size_t fewest_sieves = 3;  // fewer are no grading
constexpr std::size_t most_strips = 6;    // on one picture, so that it fits a printed page

picture::Verdict verdict_of(explain::Verdict verdict) {
  switch (verdict) {
    case explain::Verdict::complies:
      return picture::Verdict::complies;
    case explain::Verdict::fails:
      return picture::Verdict::fails;
    case explain::Verdict::not_shown:
      return picture::Verdict::not_shown;
    default:
      return picture::Verdict::does_not_apply;
  }
}

std::string with_unit(const Decimal& value, const std::string& unit) {
  return explain::show(value) + (unit.empty() ? "" : " " + unit);
}

// As printed; a value that was worked out without the zeros that arithmetic leaves behind.
picture::Value value_of(const Decimal& value, const std::string& unit) {
  return {coordinate(value.text()), with_unit(value, unit)};
}

std::optional<picture::Value> value_of(const std::optional<Decimal>& value, const std::string& unit) {
  return value ? std::optional(value_of(*value, unit)) : std::nullopt;
}

std::optional<Decimal> stripped(const std::optional<Decimal>& value) {
  return value ? std::optional(value->stripped()) : std::nullopt;
}

// Of the comparisons that have the verdict of the clause, the one with the least room; none if no comparison has it.
const Comparison* deciding(const Explanation& finding) {
  const Comparison* out = nullptr;
  for (const Comparison& one : finding.comparisons) {
    const bool less = out == nullptr || (one.headroom && (!out->headroom || *one.headroom < *out->headroom));
    if (one.verdict == finding.verdict && less) {
      out = &one;
    }
  }
  return out;
}

picture::Margin margin_of(const Explanation& finding) {
  picture::Margin out;
  out.number = finding.number;
  out.title = finding.title;
  out.verdict = verdict_of(finding.verdict);
  out.shown = explain::verdict_text(finding.verdict);
  const Comparison* one = deciding(finding);
  if (one == nullptr || finding.verdict == explain::Verdict::does_not_apply) {
    return out;
  }
  out.value = one->value;
  out.limit = one->limit;
  const bool shown = finding.verdict != explain::Verdict::not_shown;
  out.margin = shown ? one->margin : "";
  if (shown && one->headroom) {
    out.headroom = coordinate(one->headroom->text());
    // Near the limit a coarser place would hide on which side of it the value lies.
    const bool near = *one->headroom < Decimal{1} && *one->headroom > Decimal{-1};
    const Decimal place = Decimal::of(near ? "0.01" : "0.1");
    out.shown = one->headroom->written_as(place, quantity::Ties::to_even).text() + " %";
  } else if (shown && !one->value.empty()) {
    out.shown = "value: " + one->value;
  }
  return out;
}

picture::Picture margins(const SpecificationReport& one) {
  picture::MarginChart out;
  out.title = "Margins to the limits";
  for (const Explanation& finding : one.findings) {
    out.margins.push_back(margin_of(finding));
  }
  out.notes = {"Of a clause with several comparisons the one that decides is drawn"};
  return picture::draw(out);
}

// The compared value. One beyond the printed limit complies if it rounds to it, which its place does not show.
picture::Value compared(const Comparison& one) {
  const Numbers& numbers = one.numbers;
  picture::Value out = value_of(numbers.value->stripped(), numbers.unit);
  const auto below = [&](const std::optional<Decimal>& end) { return end && *numbers.value < *end; };
  const auto above = [&](const std::optional<Decimal>& end) { return end && *end < *numbers.value; };
  const bool beyond =
      below(numbers.low) || above(numbers.high) || below(numbers.tolerance_low) || above(numbers.tolerance_high);
  out.text += beyond && one.verdict == explain::Verdict::complies ? ", complies by rounding" : "";
  return out;
}

picture::Sieve sieve_of(const Comparison& one) {
  const Numbers& numbers = one.numbers;
  return {coordinate(numbers.sieve->text()),
          numbers.sieve_name,
          value_of(numbers.low, numbers.unit),
          value_of(numbers.high, numbers.unit),
          value_of(stripped(numbers.tolerance_low), numbers.unit),
          value_of(stripped(numbers.tolerance_high), numbers.unit),
          numbers.value ? std::optional(compared(one)) : std::nullopt,
          verdict_of(one.verdict)};
}

// The gradings of a clause: one for each of its alternatives, which begins where a sieve comes again.
std::vector<picture::GradingChart> gradings_of(const Explanation& finding) {
  std::vector<picture::GradingChart> out;
  std::vector<std::string> seen;
  for (const Comparison& one : finding.comparisons) {
    if (!one.numbers.sieve) {
      continue;
    }
    const std::string opening = one.numbers.sieve->stripped().text();
    if (out.empty() || std::find(seen.begin(), seen.end(), opening) != seen.end()) {
      seen.clear();
      out.emplace_back();
      out.back().title = finding.number + " " + finding.title;
    }
    seen.push_back(opening);
    out.back().sieves.push_back(sieve_of(one));
  }
  std::erase_if(out, [](const picture::GradingChart& one) {
    const bool tested = std::any_of(one.sieves.begin(), one.sieves.end(),
                                    [](const picture::Sieve& sieve) { return sieve.passing.has_value(); });
    return !tested || one.sieves.size() < fewest_sieves;
  });
  return out;
}

// Whether the specimens lie so far apart that one of them, or the next one, may be beyond a limit.
bool spread_matters(const Comparison& one) {
  const Numbers& numbers = one.numbers;
  if (numbers.specimens.size() < 2 || !numbers.value || numbers.spread || numbers.sieve) {
    return false;
  }
  const auto less = [](const Decimal& a, const Decimal& b) { return a < b; };
  const Decimal range = *std::max_element(numbers.specimens.begin(), numbers.specimens.end(), less) -
                        *std::min_element(numbers.specimens.begin(), numbers.specimens.end(), less);
  const bool near_low = numbers.low && *numbers.value - *numbers.low < range && *numbers.low - *numbers.value < range;
  const bool near_high =
      numbers.high && *numbers.high - *numbers.value < range && *numbers.value - *numbers.high < range;
  return numbers.specimens.size() > 2 || near_low || near_high;
}

std::vector<picture::Limit> limits_of(const Numbers& numbers) {
  using Side = picture::Limit::Side;
  std::vector<picture::Limit> out;
  const auto add = [&](const std::optional<Decimal>& end, Side side, const std::string& words) {
    if (end) {
      out.push_back({value_of(*end, numbers.unit), side, words + with_unit(*end, numbers.unit)});
    }
  };
  add(numbers.low, Side::lower, "at least ");
  add(numbers.high, Side::upper, "at most ");
  add(stripped(numbers.tolerance_low), Side::lower, "from the job mix at least ");
  add(stripped(numbers.tolerance_high), Side::upper, "from the job mix at most ");
  return out;
}

picture::Scatter strip_of(const Explanation& finding, const Comparison& one) {
  picture::Scatter out;
  out.title = finding.number + " " + one.label;
  out.unit = one.numbers.unit;
  for (const Decimal& specimen : one.numbers.specimens) {
    out.specimens.push_back(value_of(specimen.stripped(), ""));
  }
  out.statistic = compared(one);
  out.statistic_name = one.numbers.statistic == "each" ? "the one that decides" : one.numbers.statistic;
  out.limits = limits_of(one.numbers);
  out.verdict = verdict_of(one.verdict);
  return out;
}

std::vector<picture::Picture> scatters(const SpecificationReport& one) {
  std::vector<picture::ScatterChart> charts;
  for (const Explanation& finding : one.findings) {
    for (const Comparison& comparison : finding.comparisons) {
      if (!spread_matters(comparison)) {
        continue;
      }
      if (charts.empty() || charts.back().strips.size() == most_strips) {
        charts.emplace_back();
        charts.back().title = charts.size() == 1 ? "Single specimens" : "Single specimens, continued";
        charts.back().notes = {
            "Drawn where three or more specimens were tested, or where their range is wider than the distance to the "
            "limit"};
      }
      charts.back().strips.push_back(strip_of(finding, comparison));
    }
  }
  std::vector<picture::Picture> out;
  std::transform(charts.begin(), charts.end(), std::back_inserter(out),
                 [](const picture::ScatterChart& chart) { return picture::draw(chart); });
  return out;
}

// Parts of about the same length, each short enough for half a sheet of paper.
std::vector<picture::Picture> drawn_in_parts(const picture::MatrixChart& all) {
  constexpr std::size_t most_rows = 24;
  const std::size_t parts = std::max<std::size_t>((all.rows.size() + most_rows - 1) / most_rows, 1);
  std::vector<picture::Picture> out;
  for (std::size_t part = 0; part < parts; ++part) {
    const std::size_t begin = part * all.rows.size() / parts;
    const std::size_t end = (part + 1) * all.rows.size() / parts;
    picture::MatrixChart one{all.title, all.columns, {}, all.notes};
    one.rows.assign(all.rows.begin() + static_cast<std::ptrdiff_t>(begin),
                    all.rows.begin() + static_cast<std::ptrdiff_t>(end));
    one.title += parts == 1 ? ""
                            : ", tests " + std::to_string(begin + 1) + " to " + std::to_string(end) + " of " +
                                  std::to_string(all.rows.size());
    out.push_back(picture::draw(one));
  }
  return out;
}

}  // namespace

double coordinate(std::string_view exact) {
  double out = std::numeric_limits<double>::quiet_NaN();
  std::istringstream stream{std::string(exact)};
  stream.imbue(std::locale::classic());
  return stream >> out ? out : std::numeric_limits<double>::quiet_NaN();
}

std::vector<Placed> pictures(const Report& report) {
  std::vector<Placed> out;
  for (const SpecificationReport& one : report.specifications) {
    if (!one.findings.empty()) {
      out.push_back({one.title, margins(one)});
    }
    for (const Explanation& finding : one.findings) {
      for (picture::GradingChart& chart : gradings_of(finding)) {
        for (const picture::SieveAxis axis : {picture::SieveAxis::power, picture::SieveAxis::logarithmic}) {
          chart.axis = axis;
          out.push_back({one.title, picture::draw(chart)});
        }
      }
    }
    for (picture::Picture& scatter : scatters(one)) {
      out.push_back({one.title, std::move(scatter)});
    }
  }
  return out;
}

std::vector<picture::Picture> pictures_of(const Matrix& matrix) {
  picture::MatrixChart all;
  all.title = "One submittal against " + std::to_string(matrix.columns.size()) + " specifications";
  for (const Column& one : matrix.columns) {
    const bool known = one.specification != nullptr;
    all.columns.push_back({one.label, known ? std::string(explain::outcome_text(one.specification->outcome)) : ""});
  }
  for (const TestRow& kind : matrix.kinds) {
    if (!has_row(kind, 0, matrix.columns.size())) {
      continue;
    }
    picture::MatrixRow row{kind.label, {}};
    for (const Cell& cell : kind.cells) {
      std::string text = cell.clause;
      text += cell.value.empty() ? "" : ", " + cell.value;
      text += cell.limit.empty() ? "" : " against " + cell.limit;
      text += cell.other_way ? ": " + std::string(explain::verdict_text(cell.this_way)) + way_text(cell) : "";
      row.cells.push_back({verdict_of(cell.verdict), cell.asked, text});
    }
    all.rows.push_back(std::move(row));
  }
  return drawn_in_parts(all);
}

}  // namespace plumbrule::report
