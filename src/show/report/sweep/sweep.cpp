#include "show/report/sweep/sweep.hpp"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <set>

#include "judge/explain/explanation.hpp"
#include "show/report/review/report.hpp"
#include "show/report/parts/table.hpp"

namespace plumbrule::report {
namespace {

using sweep::ClauseTally;
using Json = nlohmann::ordered_json;

constexpr std::array<evaluate::Outcome, 4> outcomes{
    evaluate::Outcome::no_exception_taken, evaluate::Outcome::refer_to_engineer, evaluate::Outcome::revise_and_resubmit,
    evaluate::Outcome::incomplete};
constexpr std::array<const char*, 4> verdicts{"complies", "fails", "not_shown", "does_not_apply"};
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
  for (std::size_t at = 0; at < verdicts.size(); ++at) {
    out[verdicts.at(at)] = tally.verdicts.at(at);
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

std::string sweep_text(const SweepReport& report, std::size_t width) {
  const sweep::Tally& tally = report.tally;
  std::string out = "Sweep of " + plural(tally.records, "record", "records") + ": " + std::to_string(tally.unreadable) +
                    " unreadable, " + std::to_string(tally.faulty) + " judged with errors in them" +
                    (tally.blank > 0 ? ", " + plural(tally.blank, "blank line", "blank lines") : "") + "\n";
  for (std::size_t at = 0; at < report.specifications.size(); ++at) {
    const SweptSpecification& one = report.specifications[at];
    out += "\n" + one.title + ", edition " + one.edition + (one.status.empty() ? "" : " (" + one.status + ")") + "\n";
    for (const evaluate::Outcome outcome : outcomes) {
      out += "  " + std::string(explain::outcome_text(outcome)) + ": " +
             std::to_string(tally.specifications[at].outcomes.at(static_cast<std::size_t>(outcome))) + "\n";
    }
    out += "\n" + text_table(table(one, tally.specifications[at]), width);
  }
  return out +
         "\nA margin is positive inside the limit, rounded down to 0.1 % of it; those of words, of temperatures and of "
         "limits of zero are left out.\n" +
         closing_text(report.origin);
}

std::string sweep_json(const SweepReport& report, bool compact) {
  const sweep::Tally& tally = report.tally;
  Json out{{"report", "sweep 1"},         {"records", tally.records},   {"unreadable", tally.unreadable},
           {"with_errors", tally.faulty}, {"blank_lines", tally.blank}, {"review_day", report.origin.on}};
  Json specifications = Json::array();
  for (std::size_t at = 0; at < report.specifications.size(); ++at) {
    const SweptSpecification& one = report.specifications[at];
    Json part{{"name", one.name}, {"title", one.title}, {"edition", one.edition}, {"status", one.status}};
    Json by_outcome = Json::object();
    for (const evaluate::Outcome outcome : outcomes) {
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
  close_json(out, report.origin);
  return (compact ? Json{{"summary", out}}.dump() : out.dump(2)) + "\n";
}

namespace {

// A whole number from 0 up, and small enough that any number of parts adds up.
std::uint64_t count(const Json& from) {
  constexpr std::uint64_t most = 1'000'000'000'000'000;
  if (!from.is_number_unsigned() || from.get<std::uint64_t>() > most) {
    throw std::out_of_range("a count of " + from.dump());
  }
  return from.get<std::uint64_t>();
}

void demand(bool holds, const char* what) {
  if (!holds) {
    throw std::out_of_range(what);
  }
}

// `judged`: how many records every clause has a verdict on.
void read_clause(const Json& from, std::uint64_t judged, ClauseTally& out) {
  std::uint64_t all = 0;
  for (std::size_t at = 0; at < verdicts.size(); ++at) {
    out.verdicts.at(at) = count(from.at(verdicts.at(at)));
    all += out.verdicts.at(at);
  }
  demand(all == judged, "verdicts that are not one for each record");
  for (const Json& pair : from.at("margins").at("counts_by_thousandths")) {
    const auto margin = pair.at(0).get<std::int32_t>();
    if (margin < -sweep::widest_margin || margin > sweep::widest_margin) {
      throw std::out_of_range("a margin of " + std::to_string(margin));
    }
    out.margins.add(margin, count(pair.at(1)));
  }
  const auto compared = static_cast<std::size_t>(evaluate::Verdict::complies);
  const auto failed = static_cast<std::size_t>(evaluate::Verdict::fails);
  demand(out.margins.count() <= out.verdicts.at(compared) + out.verdicts.at(failed), "more margins than comparisons");
}

SweepReport read(const Json& from) {
  SweepReport out;
  if (from.at("report") != "sweep 1") {
    throw std::out_of_range("another layout than `sweep 1`");
  }
  out.tally.records = count(from.at("records"));
  out.tally.unreadable = count(from.at("unreadable"));
  out.tally.faulty = count(from.at("with_errors"));
  out.tally.blank = count(from.at("blank_lines"));
  demand(out.tally.unreadable + out.tally.faulty <= out.tally.records, "more records with errors than records");
  const std::uint64_t judged = out.tally.records - out.tally.unreadable;
  for (const Json& one : from.at("specifications")) {
    SweptSpecification& head = out.specifications.emplace_back();
    sweep::SpecificationTally& tally = out.tally.specifications.emplace_back();
    head = {one.at("name").get<std::string>(),
            one.at("title").get<std::string>(),
            one.at("edition").get<std::string>(),
            one.at("status").get<std::string>(),
            {}};
    std::uint64_t concluded = 0;
    for (const evaluate::Outcome outcome : outcomes) {
      std::uint64_t& own = tally.outcomes.at(static_cast<std::size_t>(outcome));
      own = count(one.at("outcomes").at(std::string(explain::outcome_text(outcome))));
      concluded += own;
    }
    demand(concluded == judged, "outcomes that are not one for each record");
    for (const Json& clause : one.at("clauses")) {
      head.clauses.push_back({clause.at("number").get<std::string>(), clause.at("title").get<std::string>()});
      read_clause(clause, judged, tally.clauses.emplace_back());
    }
    demand(!head.clauses.empty(), "a specification without clauses");
  }
  demand(!out.specifications.empty(), "no specification");
  const std::string program = from.at("program").get<std::string>();
  out.origin.version = program.substr(std::min(program.size(), std::string_view("plumbrule ").size()));
  out.origin.on = from.at("review_day").get<std::string>();
  for (const Json& one : from.value("set_aside", Json::array())) {
    out.origin.aside.push_back(
        {one.at("what").get<std::string>(), one.at("why").get<std::string>(), one.at("open").get<bool>()});
  }
  for (const Json& file : from.at("files")) {
    out.origin.files.push_back(
        {file.at("path").get<std::string>(), file.at("kind").get<std::string>(), file.at("sha256").get<std::string>()});
  }
  demand(std::any_of(out.origin.files.begin(), out.origin.files.end(),
                     [](const UsedFile& one) { return one.kind != library::archive_kind; }),
         "no digest of a rule file");
  return out;
}

// Discarded if it is no JSON, and damaged if an object holds a key twice, of which the library would keep one.
Json parsed(const std::string& text) {
  std::vector<std::set<std::string>> keys;
  bool twice = false;
  Json out = Json::parse(
      text,
      [&](int, Json::parse_event_t event, Json& value) {
        if (event == Json::parse_event_t::object_start) {
          keys.emplace_back();
        } else if (event == Json::parse_event_t::object_end) {
          keys.pop_back();
        } else if (event == Json::parse_event_t::key) {
          twice = twice || !keys.back().insert(value.get<std::string>()).second;
        }
        return true;
      },
      false);
  demand(out.is_discarded() || !twice, "a key stands twice");
  return out;
}

// The last line that is not empty.
std::string last_line(const std::string& text) {
  const std::size_t end = text.find_last_not_of("\r\n");
  const std::size_t before = end == std::string::npos ? end : text.rfind('\n', end);
  return text.substr(before == std::string::npos ? 0 : before + 1);
}

// The files of the archive, or those of the rules.
std::vector<UsedFile> files_of(const SweepReport& report, bool archive) {
  std::vector<UsedFile> out;
  for (const UsedFile& one : report.origin.files) {
    if ((one.kind == library::archive_kind) == archive) {
      out.push_back(one);
    }
  }
  return out;
}

}  // namespace

std::optional<SweepReport> read_sweep(const std::string& text, std::string& reason) {
  try {
    Json whole = parsed(text);
    if (whole.is_discarded()) {
      whole = parsed(last_line(text));
    }
    if (whole.is_discarded()) {
      reason = "it is no summary as JSON, and its last line, where verdicts have their summary, is none either";
      return std::nullopt;
    }
    return read(whole.contains("summary") ? whole.at("summary") : whole);
  } catch (const nlohmann::json::exception&) {
    reason = "it holds no whole summary of a sweep";
  } catch (const std::exception& damage) {
    reason = std::string("its summary is damaged: ") + damage.what();
  }
  return std::nullopt;
}

bool add_sweep(SweepReport& to, const SweepReport& part, std::string& reason) {
  const auto same_clause = [](const SweptClause& one, const SweptClause& other) { return one.number == other.number; };
  const auto same = [&](const SweptSpecification& one, const SweptSpecification& other) {
    return one.name == other.name && one.edition == other.edition &&
           std::equal(one.clauses.begin(), one.clauses.end(), other.clauses.begin(), other.clauses.end(), same_clause);
  };
  if (!std::equal(to.specifications.begin(), to.specifications.end(), part.specifications.begin(),
                  part.specifications.end(), same)) {
    reason = "it was held against other specifications";
    return false;
  }
  const auto same_file = [](const UsedFile& one, const UsedFile& other) { return one.digest == other.digest; };
  const std::vector<UsedFile> rules = files_of(to, false);
  const std::vector<UsedFile> other_rules = files_of(part, false);
  if (to.origin.version != part.origin.version ||
      !std::equal(rules.begin(), rules.end(), other_rules.begin(), other_rules.end(), same_file)) {
    reason = "it was made with other rule files, or another version of the program";
    return false;
  }
  const auto same_aside = [](const SetAside& one, const SetAside& other) {
    return aside_text(one) == aside_text(other);
  };
  if (to.origin.on != part.origin.on || !std::equal(to.origin.aside.begin(), to.origin.aside.end(),
                                                    part.origin.aside.begin(), part.origin.aside.end(), same_aside)) {
    reason = "it was held against what was in force on another day";
    return false;
  }
  const std::vector<UsedFile> counted = files_of(to, true);
  const std::vector<UsedFile> more = files_of(part, true);
  if (counted.empty() != more.empty()) {
    reason = "of the parts some say which files they count (--digests), and some do not";
    return false;
  }
  const auto twice = std::find_first_of(more.begin(), more.end(), counted.begin(), counted.end(), same_file);
  if (twice != more.end()) {
    reason = "it counts `" + twice->path + "`, which another part counts too, as its SHA-256 says";
    return false;
  }
  to.origin.files.insert(to.origin.files.end(), more.begin(), more.end());
  sweep::add(to.tally, part.tally);
  return true;
}

}  // namespace plumbrule::report
