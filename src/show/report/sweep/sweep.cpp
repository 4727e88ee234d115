#include "show/report/sweep/sweep.hpp"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "judge/explain/explanation.hpp"
#include "show/report/parts/table.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {
namespace {

using sweep::ClauseTally;
using sweep::summary_outcomes;
using sweep::SweptClause;
using sweep::SweptSpecification;
using Json = nlohmann::ordered_json;

constexpr std::array<std::uint32_t, 3> quantiles{50, 500, 950};

// Thousandths of the limit as percent: "-3.2", and at the ends "200 or more".
std::string percent(std::int32_t margin) {
  const std::int32_t size = margin < 0 ? -margin : margin;
  const std::string text = (margin < 0 ? "-" : "") + std::to_string(size / 10) + "." + std::to_string(size % 10);
  return margin >= sweep::widest_margin ? "200 or more" : margin <= -sweep::widest_margin ? "-200 or less" : text;
}

std::string plural(std::uint64_t count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

TableView table(const SweptSpecification& specification, const sweep::SpecificationTally& tally) {
  TableView out;
  out.heads = {"clause", "",    "complies", "fails", "not shown", "does not apply", "5 % (margin, % of limit)",
               "median", "95 %"};
  for (std::size_t at = 0; at < tally.clauses.size(); ++at) {
    const ClauseTally& clause = tally.clauses[at];
    std::vector<std::string> row{specification.clauses[at].number, specification.clauses[at].title};
    for (const std::uint64_t count : clause.verdicts) {
      row.push_back(std::to_string(count));
    }
    for (const std::uint32_t permille : quantiles) {
      row.push_back(clause.margins.count() == 0 ? "" : percent(clause.margins.quantile(permille)));
    }
    out.rows.push_back(std::move(row));
  }
  return out;
}

Json json_of(const SweptClause& clause, const ClauseTally& tally) {
  Json out{{"number", clause.number}, {"title", clause.title}};
  for (std::size_t at = 0; at < sweep::verdict_keys.size(); ++at) {
    out[sweep::verdict_keys.at(at)] = tally.verdicts.at(at);
  }
  Json margins{{"count", tally.margins.count()}};
  if (tally.margins.count() > 0) {
    margins["percent_of_limit"] = {{"5 %", percent(tally.margins.quantile(50))},
                                   {"median", percent(tally.margins.quantile(500))},
                                   {"95 %", percent(tally.margins.quantile(950))}};
  }
  Json counts = Json::array();
  for (std::int32_t margin = -sweep::widest_margin; margin <= sweep::widest_margin; ++margin) {
    if (const std::uint64_t count = tally.margins.at(margin); count > 0) {
      counts.push_back({margin, count});
    }
  }
  margins["counts_by_thousandths"] = std::move(counts);
  out["margins"] = std::move(margins);
  return out;
}

}  // namespace

std::string sweep_text(const sweep::Summary& summary, std::size_t width) {
  const sweep::Tally& tally = summary.tally;
  std::string out = "Sweep of " + plural(tally.records, "record", "records") + ": " + std::to_string(tally.unreadable) +
                    " unreadable, " + std::to_string(tally.faulty) + " judged with errors in them" +
                    (tally.blank > 0 ? ", " + plural(tally.blank, "blank line", "blank lines") : "") + "\n";
  for (std::size_t at = 0; at < summary.specifications.size(); ++at) {
    const SweptSpecification& one = summary.specifications[at];
    out += "\n" + one.title + ", edition " + one.edition + (one.status.empty() ? "" : " (" + one.status + ")") + "\n";
    for (const evaluate::Outcome outcome : summary_outcomes) {
      out += "  " + std::string(explain::outcome_text(outcome)) + ": " +
             std::to_string(tally.specifications[at].outcomes.at(static_cast<std::size_t>(outcome))) + "\n";
    }
    out += "\n" + text_table(table(one, tally.specifications[at]), width);
  }
  return out +
         "\nA margin is positive inside the limit, rounded down to 0.1 % of it; those of words, of temperatures and of "
         "limits of zero are left out.\n" +
         closing_text(summary.origin);
}

std::string sweep_json(const sweep::Summary& summary, bool compact) {
  const sweep::Tally& tally = summary.tally;
  Json out{{"report", "sweep 1"},         {"records", tally.records},   {"unreadable", tally.unreadable},
           {"with_errors", tally.faulty}, {"blank_lines", tally.blank}, {"review_day", summary.origin.on}};
  Json specifications = Json::array();
  for (std::size_t at = 0; at < summary.specifications.size(); ++at) {
    const SweptSpecification& one = summary.specifications[at];
    Json part{{"name", one.name}, {"title", one.title}, {"edition", one.edition}, {"status", one.status}};
    Json by_outcome = Json::object();
    for (const evaluate::Outcome outcome : summary_outcomes) {
      by_outcome[std::string(explain::outcome_text(outcome))] =
          tally.specifications[at].outcomes.at(static_cast<std::size_t>(outcome));
    }
    part["outcomes"] = std::move(by_outcome);
    part["clauses"] = Json::array();
    for (std::size_t clause = 0; clause < one.clauses.size(); ++clause) {
      part["clauses"].push_back(json_of(one.clauses[clause], tally.specifications[at].clauses[clause]));
    }
    specifications.push_back(std::move(part));
  }
  out["specifications"] = std::move(specifications);
  close_json(out, summary.origin);
  return (compact ? Json{{"summary", out}}.dump() : out.dump(2)) + "\n";
}

}  // namespace plumbrule::report
