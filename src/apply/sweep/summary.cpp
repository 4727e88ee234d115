#include "apply/sweep/summary.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>
#include <stdexcept>

#include "judge/explain/explanation.hpp"

namespace plumbrule::sweep {
namespace {

using library::SetAside;
using library::UsedFile;
using Json = nlohmann::ordered_json;

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
  for (std::size_t at = 0; at < verdict_keys.size(); ++at) {
    out.verdicts.at(at) = count(from.at(verdict_keys.at(at)));
    all += out.verdicts.at(at);
  }
  demand(all == judged, "verdicts that are not one for each record");
  for (const Json& pair : from.at("margins").at("counts_by_thousandths")) {
    const auto margin = pair.at(0).get<std::int32_t>();
    if (margin < -widest_margin || margin > widest_margin) {
      throw std::out_of_range("a margin of " + std::to_string(margin));
    }
    out.margins.add(margin, count(pair.at(1)));
  }
  const auto compared = static_cast<std::size_t>(evaluate::Verdict::complies);
  const auto failed = static_cast<std::size_t>(evaluate::Verdict::fails);
  demand(out.margins.count() <= out.verdicts.at(compared) + out.verdicts.at(failed), "more margins than comparisons");
}

// `judged`: as above.
void read_specification(const Json& from, std::uint64_t judged, SweptSpecification& head, SpecificationTally& tally) {
  head = {from.at("name").get<std::string>(),
          from.at("title").get<std::string>(),
          from.at("edition").get<std::string>(),
          from.at("status").get<std::string>(),
          {}};
  std::uint64_t concluded = 0;
  for (const evaluate::Outcome outcome : summary_outcomes) {
    std::uint64_t& records = tally.outcomes.at(static_cast<std::size_t>(outcome));
    records = count(from.at("outcomes").at(std::string(explain::outcome_text(outcome))));
    concluded += records;
  }
  demand(concluded == judged, "outcomes that are not one for each record");
  for (const Json& clause : from.at("clauses")) {
    head.clauses.push_back({clause.at("number").get<std::string>(), clause.at("title").get<std::string>()});
    read_clause(clause, judged, tally.clauses.emplace_back());
  }
  demand(!head.clauses.empty(), "a specification without clauses");
}

library::Origin read_origin(const Json& from) {
  library::Origin out;
  const std::string program = from.at("program").get<std::string>();
  out.version = program.substr(std::min(program.size(), std::string_view("plumbrule ").size()));
  out.on = from.at("review_day").get<std::string>();
  for (const Json& one : from.value("set_aside", Json::array())) {
    out.aside.push_back(
        {one.at("what").get<std::string>(), one.at("why").get<std::string>(), one.at("open").get<bool>()});
  }
  for (const Json& file : from.at("files")) {
    out.files.push_back(
        {file.at("path").get<std::string>(), file.at("kind").get<std::string>(), file.at("sha256").get<std::string>()});
  }
  demand(std::any_of(out.files.begin(), out.files.end(),
                     [](const UsedFile& one) { return one.kind != library::archive_kind; }),
         "no digest of a rule file");
  return out;
}

Summary read_whole(const Json& from) {
  Summary out;
  demand(from.at("report") == "sweep 1", "another layout than `sweep 1`");
  out.tally.records = count(from.at("records"));
  out.tally.unreadable = count(from.at("unreadable"));
  out.tally.faulty = count(from.at("with_errors"));
  out.tally.blank = count(from.at("blank_lines"));
  demand(out.tally.unreadable + out.tally.faulty <= out.tally.records, "more records with errors than records");
  const std::uint64_t judged = out.tally.records - out.tally.unreadable;
  for (const Json& one : from.at("specifications")) {
    read_specification(one, judged, out.specifications.emplace_back(), out.tally.specifications.emplace_back());
  }
  demand(!out.specifications.empty(), "no specification");
  out.origin = read_origin(from);
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

bool same_file(const UsedFile& one, const UsedFile& other) { return one.digest == other.digest; }

// The files of the archive, or those of the rules.
std::vector<UsedFile> files_of(const Summary& summary, bool archive) {
  std::vector<UsedFile> out;
  for (const UsedFile& one : summary.origin.files) {
    if ((one.kind == library::archive_kind) == archive) {
      out.push_back(one);
    }
  }
  return out;
}

// Why a part cannot be added; empty if it can.
std::string held_otherwise(const Summary& to, const Summary& part) {
  const auto same_clause = [](const SweptClause& one, const SweptClause& other) { return one.number == other.number; };
  const auto same = [&](const SweptSpecification& one, const SweptSpecification& other) {
    return one.name == other.name && one.edition == other.edition &&
           std::equal(one.clauses.begin(), one.clauses.end(), other.clauses.begin(), other.clauses.end(), same_clause);
  };
  if (!std::equal(to.specifications.begin(), to.specifications.end(), part.specifications.begin(),
                  part.specifications.end(), same)) {
    return "it was held against other specifications";
  }
  const std::vector<UsedFile> rules = files_of(to, false);
  const std::vector<UsedFile> other_rules = files_of(part, false);
  if (to.origin.version != part.origin.version ||
      !std::equal(rules.begin(), rules.end(), other_rules.begin(), other_rules.end(), same_file)) {
    return "it was made with other rule files, or another version of the program";
  }
  const auto same_aside = [](const SetAside& one, const SetAside& other) {
    return aside_text(one) == aside_text(other);
  };
  if (to.origin.on != part.origin.on || !std::equal(to.origin.aside.begin(), to.origin.aside.end(),
                                                    part.origin.aside.begin(), part.origin.aside.end(), same_aside)) {
    return "it was held against what was in force on another day";
  }
  return {};
}

std::string counted_twice(const std::vector<UsedFile>& counted, const std::vector<UsedFile>& more) {
  if (counted.empty() != more.empty()) {
    return "of the parts some say which files they count (--digests), and some do not";
  }
  const auto twice = std::find_first_of(more.begin(), more.end(), counted.begin(), counted.end(), same_file);
  return twice == more.end() ? ""
                             : "it counts `" + twice->path + "`, which another part counts too, as its SHA-256 says";
}

}  // namespace

std::optional<Summary> read_summary(const std::string& text, std::string& reason) {
  try {
    Json whole = parsed(text);
    if (whole.is_discarded()) {
      whole = parsed(last_line(text));
    }
    if (whole.is_discarded()) {
      reason = "it is no summary as JSON, and its last line, where verdicts have their summary, is none either";
      return std::nullopt;
    }
    return read_whole(whole.contains("summary") ? whole.at("summary") : whole);
  } catch (const nlohmann::json::exception&) {
    reason = "it holds no whole summary of a sweep";
  } catch (const std::exception& damage) {
    reason = std::string("its summary is damaged: ") + damage.what();
  }
  return std::nullopt;
}

bool add_part(Summary& to, const Summary& part, std::string& reason) {
  const std::vector<UsedFile> more = files_of(part, true);
  const std::string otherwise = held_otherwise(to, part);
  const std::string why = otherwise.empty() ? counted_twice(files_of(to, true), more) : otherwise;
  if (!why.empty()) {
    reason = why;
    return false;
  }
  to.origin.files.insert(to.origin.files.end(), more.begin(), more.end());
  add(to.tally, part.tally);
  return true;
}

assess::Upshot upshot(const Summary& summary) {
  const Tally& tally = summary.tally;
  assess::Upshots out;
  out.add_open(library::leaves_open(summary.origin) || tally.unreadable > 0 || tally.faulty > 0 || tally.records == 0);
  for (const SpecificationTally& specification : tally.specifications) {
    for (const evaluate::Outcome outcome : summary_outcomes) {
      if (specification.outcomes.at(static_cast<std::size_t>(outcome)) > 0) {
        out.add(outcome);
      }
    }
  }
  return out.upshot();
}

}  // namespace plumbrule::sweep
