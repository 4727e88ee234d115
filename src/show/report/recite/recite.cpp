#include "show/report/recite/recite.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "judge/explain/wording.hpp"

namespace plumbrule::report {
namespace {

using check::Assertion;
using check::Requirement;
using check::Rules;

// Pairs of units that the trade prints beside each other.
struct Pair {
  std::string_view metric;
  std::string_view customary;
};
constexpr std::array<Pair, 10> pairs{{{"g/m2", "g/ft2"},
                                      {"kg/m2", "lb/yd2"},
                                      {"N.m", "lbf.in"},
                                      {"kg-cm", "lbf.in"},
                                      {"kg-mm", "lbf.in"},
                                      {"degC", "degF"},
                                      {"Cdeg", "Fdeg"},
                                      {"cm", "in"},
                                      {"mm", "in"},
                                      {"kg", "lb"}}};

std::string_view partner(const std::string& unit, Units units) {
  for (const Pair& pair : pairs) {
    if (units == Units::customary && unit == pair.metric) {
      return pair.customary;
    }
    if (units == Units::metric && unit == pair.customary) {
      return pair.metric;
    }
  }
  return {};
}

std::string converted(const check::End& end, const quantity::Unit& from, const quantity::Unit& to) {
  const quantity::Decimal value = quantity::convert(end.value, from, to);
  // Two decimals, of small values three digits.
  quantity::Decimal place = quantity::Decimal::of("0.01");
  const quantity::Decimal size = value < quantity::Decimal{0} ? -value : value;
  while (quantity::Decimal{0} < size && size < place * quantity::Decimal{100}) {
    place = place / quantity::Decimal{10};
  }
  return quantity::round_to(value, place, quantity::Ties::to_even).text();
}

std::string converted(const Rules& rules, const Assertion& assertion, Units units) {
  quantity::UnitTable table = rules.units;
  const quantity::Unit& from = rules.units.at(assertion.limit.unit);
  const std::string_view wanted = partner(from.text, units);
  if (wanted.empty() || assertion.limit.words != 0) {
    return {};
  }
  const quantity::Unit& to = table.at(*table.find(wanted));
  std::string out;
  if (assertion.limit.low) {
    out += (assertion.limit.high ? "" : "at least ") + converted(*assertion.limit.low, from, to);
  }
  if (assertion.limit.high) {
    out += (assertion.limit.low ? " to " : "at most ") + converted(*assertion.limit.high, from, to);
  }
  return out.empty() ? out : out + " " + std::string(wanted) + " (converted)";
}

std::string rounding(const check::Rounding& rule) {
  return !rule.place ? "every digit"
                     : "to " + rule.place->text() + (rule.ties == quantity::Ties::to_even ? ", even" : ", up");
}

// Of a range the place of each end, where they differ.
std::string rounding(const Assertion& assertion) {
  std::string out = assertion.staged ? "each specimen " + rounding(*assertion.staged) : "";
  for (const auto* end : {&assertion.limit.low, &assertion.limit.high, &assertion.limit.tolerance}) {
    if (!*end) {
      continue;
    }
    const std::string text = rounding((*end)->rounding);
    const bool known = out == text || out.ends_with("; " + text);
    out += known ? "" : (out.empty() ? "" : "; ") + text;
  }
  return out;
}

std::string status(const Requirement& requirement) {
  return std::string(explain::status_text(requirement.provenance.status)) + (requirement.optional ? ", optional" : "") +
         (requirement.severity == check::Severity::reject
              ? ""
              : ", " + std::string(explain::severity_text(requirement.severity)));
}

// If all requirements have one.
std::optional<check::Validity> common_age(const Rules& rules) {
  if (rules.requirements.empty()) {
    return std::nullopt;
  }
  const check::Validity& first = rules.requirements.front().validity;
  const bool all = std::all_of(rules.requirements.begin(), rules.requirements.end(),
                               [&](const Requirement& one) { return check::same_age(one.validity, first); });
  return all && first.count > 0 ? std::optional(first) : std::nullopt;
}

// What else decides, but for what is said of the whole specification.
std::string beside_limit(const Requirement& requirement, const check::Alternative& one, bool one_age) {
  std::string out;
  if (one.ends) {
    out += ", ends of the band " + (*one.ends * quantity::Decimal{100}).stripped().text() + " %";
  }
  return requirement.validity.count == 0 || one_age
             ? out
             : out + ", tested within " + explain::age_text(requirement.validity);
}

class Reciter {
 public:
  Reciter(const Rules& rules, Units units) : rules_(rules), units_(units), one_age_(common_age(rules).has_value()) {
    table_.heads = {"Clause", "Property", "For", "Limit"};
    if (units != Units::printed) {
      table_.heads.emplace_back(units == Units::metric ? "Metric" : "Customary");
    }
    for (const char* head : {"Rounded", "Status", "Cited"}) {
      table_.heads.emplace_back(head);
    }
  }

  TableView run() {
    std::uint32_t section = check::none;
    for (const Requirement& requirement : rules_.requirements) {
      if (requirement.section != section) {
        section = requirement.section;
        table_.rows.push_back({rules_.sections[section].number + " " + rules_.sections[section].title});
      }
      add(requirement);
    }
    return std::move(table_);
  }

 private:
  const Rules& rules_;
  Units units_;
  bool one_age_;  // of all tests, which is said of the whole specification
  TableView table_;

  void row(const Requirement& requirement, const std::string& property, const std::string& who,
           const std::string& limit, const Assertion* assertion, const std::string& cite, bool first) {
    std::vector<std::string> cells{first ? requirement.number : "", property, who, limit};
    if (units_ != Units::printed) {
      cells.push_back(assertion == nullptr ? "" : converted(rules_, *assertion, units_));
    }
    cells.push_back(assertion == nullptr ? "" : rounding(*assertion));
    cells.push_back(first ? status(requirement) : "");
    cells.push_back(first || cite != requirement.cite ? cite : "");
    table_.rows.push_back(std::move(cells));
  }

  void add(const Requirement& requirement) {
    bool first = true;
    // The general case is printed first, its exceptions under it.
    for (std::size_t at = requirement.cases.size(); at-- > 0;) {
      const check::Case& one = requirement.cases[at];
      std::string who = explain::classes(rules_, requirement.where);
      const std::string narrower = explain::classes(rules_, one.where);
      who += narrower.empty() ? "" : (who.empty() ? "" : "; ") + narrower;
      if (one.alternatives.empty()) {
        row(requirement, "", who, "not required", nullptr, one.cite, first);
        first = false;
      }
      for (std::size_t alternative = 0; alternative < one.alternatives.size(); ++alternative) {
        bool lead = true;
        for (const Assertion& assertion : one.alternatives[alternative].assertions) {
          const std::string how = explain::statistic(assertion.statistic);
          // Of a grading the property stands in the first row, only the sieve in the others.
          const std::string property = lead ? (alternative > 0 ? "or " : "") + explain::label(rules_, assertion) +
                                                  (how.empty() ? "" : ", " + how)
                                            : explain::conditions(rules_, assertion);
          std::string beside = lead ? beside_limit(requirement, one.alternatives[alternative], one_age_) : "";
          lead = false;
          row(requirement, property + beside, who, explain::limit_text(assertion.limit), &assertion, one.cite, first);
          first = false;
        }
      }
    }
  }
};

}  // namespace

TableView limits_table(const Rules& rules, Units units) { return Reciter(rules, units).run(); }

std::vector<std::string> specification_lines(const Rules& rules) {
  const check::Specification& one = *rules.specification;
  std::vector<std::string> out{one.title, "edition " + one.edition + (one.agency.empty() ? "" : ", " + one.agency)};
  if (!one.effective.empty()) {
    out.push_back("effective " + one.effective);
  }
  for (const std::string& amendment : one.amendments) {
    out.push_back("amended by " + amendment);
  }
  for (const syntax::Withdrawn& clause : rules.withdrawn) {
    out.push_back("withdrawn: " + clause.number + " " + clause.title + ", by " + clause.by);
  }
  out.push_back("limits " + explain::standing_text(one.provenance));
  if (const auto all = common_age(rules)) {
    out.push_back("each test made within " + explain::age_text(*all) + " before the review");
  }
  if (one.certificates) {
    out.emplace_back("a certificate is required of every material");
  }
  if (one.outliers) {
    out.push_back("specimens are tested for outliers at a significance of " +
                  (*one.outliers * quantity::Decimal{100}).stripped().text() + " %");
  }
  if (!one.provenance.source.empty()) {
    out.push_back("source: " + one.provenance.source);
  }
  return out;
}

}  // namespace plumbrule::report
