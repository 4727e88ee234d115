#include "show/report/envelope/envelope.hpp"

#include <nlohmann/json.hpp>
#include <set>

#include "judge/explain/wording.hpp"
#include "show/report/parts/table.hpp"
#include "show/report/review/report.hpp"

namespace plumbrule::report {
namespace {

using contrast::Bound;
using contrast::Demand;
using contrast::Exclusion;
using contrast::Row;
using Json = nlohmann::ordered_json;

// "ohio_421 MIX-3": short enough for a table; the heading says which document that is.
std::string named(const EnvelopeReport& report, std::size_t specification, const check::Requirement& requirement) {
  return report.specifications[specification]->specification->name + " " + requirement.number;
}

std::string limit_of(const Demand& demand) { return explain::limit_text(demand.assertion->limit); }

// `write`: how a limit is written; names of specifications stay as they are.
std::string met_by(const EnvelopeReport& report, const Row& row, std::string (*write)(std::string)) {
  std::string out;
  for (const std::string& limit : contrast::row_limits(row, report.specifications, true)) {
    out += (out.empty() ? "" : ", and ") + write(limit);
  }
  for (const auto& [at, demand] : row.rounded) {
    out += ", perhaps less as " + named(report, at, *demand->requirement) + " is " + contrast::rounding_of(*demand);
  }
  return out;
}

// Of an end that is what a printed limit comes to, that limit.
std::string by_rounding(const Bound& bound) {
  return bound.by_rounding ? " (" + limit_of(*bound.demand) + ", " + contrast::rounding_of(*bound.demand) + ")" : "";
}

std::string set_by(const EnvelopeReport& report, const Row& row) {
  std::string out;
  const auto add = [&](const char* end, const std::optional<Bound>& bound) {
    if (bound) {
      out += (out.empty() ? "" : "; ") + std::string(end) +
             named(report, bound->specification, *bound->demand->requirement) + by_rounding(*bound);
    }
  };
  if (row.low && row.high && row.low->demand == row.high->demand) {
    add("", row.low);
    add("tolerance ", row.tolerance);
    return out;
  }
  const bool several = (row.low && row.high) || row.tolerance;
  add(several ? "lower " : "", row.low);
  add(several ? "upper " : "", row.high);
  add(row.low || row.high ? "tolerance " : "", row.tolerance);
  if (row.words) {
    for (const auto& [at, demand] : row.all) {
      out += (out.empty() ? "" : "; ") + named(report, at, *demand->requirement);
    }
  }
  return out;
}

std::string qualified(const Row& row) {
  std::string out = row.statistic == "the result" ? "" : row.statistic;
  const auto add = [&](const std::string& text) { out += (out.empty() ? "" : "; ") + text; };
  if (row.severity != check::Severity::reject) {
    add(std::string(explain::severity_text(row.severity)));
  }
  if (row.optional) {
    add("optional test");
  }
  if (row.validity.count > 0) {
    add("tested within " + explain::age_text(row.validity));
  }
  if (!row.who.empty()) {
    add(row.who);
  }
  for (const std::string& other : row.beside) {
    add(other);
  }
  return out;
}

// How many documents ask it.
std::string documents(const std::vector<std::pair<std::size_t, const Demand*>>& all) {
  std::set<std::size_t> out;
  for (const auto& [at, demand] : all) {
    out.insert(at);
  }
  return std::to_string(out.size());
}

TableView rows(const EnvelopeReport& report) {
  TableView out;
  out.heads = {"Property", "Which", "All are met by", "Set by", "Documents"};
  for (const Row& row : report.envelope.rows) {
    const check::Rules& rules = *report.specifications[row.specification];
    out.rows.push_back({explain::label(rules, *row.demand->assertion), qualified(row),
                        met_by(report, row, explain::spaced), set_by(report, row), documents(row.all)});
  }
  for (const contrast::Kept& kept : report.envelope.kept) {
    std::string sources;
    for (const auto& [at, demand] : kept.all) {
      sources += (sources.empty() ? "" : "; ") + named(report, at, *demand->requirement);
    }
    const std::string age = explain::age_text(kept.requirement->validity);
    out.rows.push_back({kept.requirement->title,
                        "one of several ways" + (age.empty() ? "" : "; tested within " + age) +
                            (kept.who.empty() ? "" : "; " + kept.who),
                        explain::spaced(kept.demand), sources, documents(kept.all)});
  }
  return out;
}

// The classes for which they do, as far as the two ask for any.
std::string classes_of(const Exclusion& one) {
  const std::string& left = one.left->who;
  const std::string& right = one.right->who;
  const std::string both =
      left + (left.empty() || right.empty() || left == right ? "" : "; ") + (left == right ? "" : right);
  return both.empty() ? "" : " [" + both + "]";
}

std::string exclusion(const EnvelopeReport& report, const Exclusion& one) {
  return explain::label(*report.specifications[one.left_specification], *one.left->assertion) + ": " +
         named(report, one.left_specification, *one.left->requirement) + " (" + limit_of(*one.left) + ") and " +
         named(report, one.right_specification, *one.right->requirement) + " (" + limit_of(*one.right) +
         "): " + one.why + classes_of(one);
}

std::vector<std::string> heads(const EnvelopeReport& report) {
  std::vector<std::string> out;
  for (const check::Rules* rules : report.specifications) {
    const check::Specification& one = *rules->specification;
    out.push_back(one.name + ": " + one.title + ", edition " + one.edition + ", limits " +
                  std::string(explain::status_text(one.provenance.status)));
  }
  return out;
}

std::string chosen(const EnvelopeReport& report) {
  std::string out;
  for (const auto& [category, word] : report.classes) {
    out += (out.empty() ? "" : ", ") + explain::spaced(category) + " " + explain::spaced(word);
  }
  return out.empty() ? "all classes; choose with --class to leave out what cannot apply" : out;
}

// How a form writes a list: what stands before each entry, and how its text is escaped.
struct Style {
  const char* bullet;
  std::string (*text)(const std::string&);
};
constexpr Style in_text{"  ", [](const std::string& text) { return text; }};
constexpr Style in_markdown{"- ", markdown_cell};

std::string lines(const EnvelopeReport& report, const Style& style, const char* bullet) {
  std::string out;
  for (const std::string& head : heads(report)) {
    out += bullet + style.text(head) + "\n";
  }
  return out + bullet + style.text("for " + chosen(report)) + "\n";
}

std::string listed(const std::string& head, const std::vector<std::string>& all, const Style& style) {
  std::string out;
  for (const std::string& one : all) {
    out += style.bullet + style.text(one) + "\n";
  }
  return out.empty() ? out : head + ":\n" + (style.bullet[0] == '-' ? "\n" : "") + out;
}

std::vector<std::string> texts(const EnvelopeReport& report, const std::vector<Exclusion>& all) {
  std::vector<std::string> out;
  out.reserve(all.size());
  for (const Exclusion& one : all) {
    out.push_back(exclusion(report, one));
  }
  return out;
}

std::vector<std::string> uncovered(const EnvelopeReport& report) {
  std::vector<std::string> out;
  for (const contrast::Uncovered& one : report.envelope.uncovered) {
    out.push_back(report.specifications[one.specification]->specification->name + ": " +
                  (one.who.empty() ? "all mixes" : one.who));
  }
  return out;
}

std::string excluded(const EnvelopeReport& report, const Style& style) {
  const contrast::Envelope& found = report.envelope;
  const std::string unlike =
      found.kept.empty() ? "" : " Clauses with several ways to comply are not held against the others.";
  return (found.exclusions.empty() ? "No two limits of one property exclude each other." + unlike + "\n"
                                   : listed("Exclude each other", texts(report, found.exclusions), style)) +
         listed("Could not be held against each other", texts(report, found.incomparable), style) +
         listed("Not carried over", found.left_out, style) +
         listed("Asks nothing that counts, so that its own review stays incomplete", uncovered(report), style);
}

Json bound(const EnvelopeReport& report, const std::optional<Bound>& one) {
  if (!one) {
    return nullptr;
  }
  return {{"value", one->in_row.value.stripped().text()},
          {"itself_passes", one->in_row.inclusive},
          {"specification", report.specifications[one->specification]->specification->name},
          {"clause", one->demand->requirement->number},
          {"printed", limit_of(*one->demand)}};
}

Json row(const EnvelopeReport& report, const Row& one) {
  const check::Rules& rules = *report.specifications[one.specification];
  Json all = Json::array();
  for (const auto& [at, demand] : one.all) {
    all.push_back({{"specification", report.specifications[at]->specification->name},
                   {"clause", demand->requirement->number},
                   {"limit", limit_of(*demand)}});
  }
  return {{"property", explain::label(rules, *one.demand->assertion)},
          {"measure", one.demand->measure},
          {"for", one.who},
          {"beside", one.beside},
          {"statistic", one.statistic},
          {"severity", std::string(explain::severity_text(one.severity))},
          {"optional", one.optional},
          {"tested_within", explain::age_text(one.validity)},
          {"unit", rules.units.at(one.demand->assertion->limit.unit).text},
          {"limit", met_by(report, one, [](std::string limit) { return limit; })},
          {"low", bound(report, one.low)},
          {"high", bound(report, one.high)},
          {"tolerance", bound(report, one.tolerance)},
          {"documents", all}};
}

}  // namespace

std::string envelope_text(const EnvelopeReport& report, std::size_t width) {
  return lines(report, in_text, "") + "\n" + text_table(rows(report), width) + "\n" + excluded(report, in_text) +
         closing_text(report.origin);
}

std::string envelope_markdown(const EnvelopeReport& report) {
  return "# What satisfies all of these\n\n" + lines(report, in_markdown, "- ") + "\n" + markdown_table(rows(report)) +
         "\n" + excluded(report, in_markdown) + closing_markdown(report.origin);
}

std::string envelope_json(const EnvelopeReport& report) {
  Json all = Json::array();
  for (const Row& one : report.envelope.rows) {
    all.push_back(row(report, one));
  }
  Json kept = Json::array();
  for (const contrast::Kept& one : report.envelope.kept) {
    kept.push_back({{"specification", report.specifications[one.specification]->specification->name},
                    {"clause", one.requirement->number},
                    {"for", one.who},
                    {"tested_within", explain::age_text(one.requirement->validity)},
                    {"demand", one.demand}});
  }
  Json out = {{"envelope", 1},
              {"specifications", heads(report)},
              {"classes", report.classes},
              {"limits", all},
              {"kept_as_they_are", kept},
              {"exclude_each_other", texts(report, report.envelope.exclusions)},
              {"left_out", report.envelope.left_out},
              {"asks_nothing", uncovered(report)},
              {"not_comparable", texts(report, report.envelope.incomparable)}};
  close_json(out, report.origin);
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace plumbrule::report
