// Replicates: refused, too few, too far apart, outlying, twice the same.

#include <algorithm>
#include <cstdlib>
#include <map>

#include "judge/audit/inspector.hpp"
#include "judge/audit/outlier.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::audit {
namespace {

const std::string& because(const check::Measure& measure, const evaluate::SpecimenValue& value) {
  static const std::string none = "the measure refuses it";
  return value.refusal < measure.refusals.size() ? measure.refusals[value.refusal].because : none;
}

double number(const Decimal& value) { return std::strtod(value.text().c_str(), nullptr); }

std::string specimens_text(std::size_t count) {
  return std::to_string(count) + (count == 1 ? " specimen" : " specimens");
}

std::string digits(double value) {
  const std::string text = std::to_string(value);
  return text.substr(0, text.find('.') + 5);
}

}  // namespace

bool Inspector::swapped(const Result& result, std::uint32_t specimen, const std::string& because) {
  const std::vector<check::Reading>& readings = measure(result).readings;
  Result turned = result;
  std::vector<Value>& values = turned.specimens[specimen].readings;
  for (std::size_t first = 0; first < values.size(); ++first) {
    for (std::size_t second = first + 1; second < values.size(); ++second) {
      const auto& types = std::pair(readings[first].type, readings[second].type);
      if (types.first.unit != types.second.unit || types.first.basis != types.second.basis ||
          values[first].kind != Value::Kind::quantity || values[second].kind != Value::Kind::quantity) {
        continue;
      }
      std::swap(values[first], values[second]);
      const bool good = evaluate::specimen_value(plan_, evidence_, turned, specimen).good();
      std::swap(values[first], values[second]);
      if (good) {
        Finding& one = add(diagnose::Code::audit_swapped, values[first].span,
                           "`" + readings[first].name + "` and `" + readings[second].name + "` of " + name(result) +
                               " seem to have changed places: " + because,
                           "with the two exchanged the readings are possible",
                           "compare both with the worksheet; the specimen counts as refused until it is corrected");
        one.related.push_back({values[second].span, "`" + readings[second].name + "`"});
        return true;
      }
    }
  }
  return false;
}

void Inspector::refused(const Result& result) {
  const std::string expected = "a value that can be right";
  const std::string look = "look for a slip of the pen, a wrong unit or another specimen's reading";
  for (std::uint32_t at = 0; at < result.specimens.size(); ++at) {
    const auto value = evaluate::specimen_value(plan_, evidence_, result, at);
    if (value.reason != evaluate::Reason::refused) {
      continue;
    }
    const std::string& why = because(measure(result), value);
    if (!swapped(result, at, why)) {
      add(diagnose::Code::audit_impossible, result.specimens[at].span,
          "the specimen of " + name(result) + " cannot be right: " + why, expected, look);
    }
  }
  if (result.reported.kind == Value::Kind::quantity) {
    const auto value = evaluate::reported_value(plan_, evidence_, result);
    if (value.reason == evaluate::Reason::refused) {
      add(diagnose::Code::audit_impossible, result.reported.span,
          "the value of " + name(result) + " cannot be right: " + because(measure(result), value), expected, look);
    }
  }
}

void Inspector::too_few(const Result& result) {
  const std::size_t count = result.specimens.empty() ? result.replicates : result.specimens.size();
  if (count == 0 || result.declared) {
    return;
  }
  std::uint32_t wanted = 0;
  for (const Demand& demand : demands_) {
    const plan::Check& check = *demand.check;
    if (check.over == syntax::Over::specimens && stands_as_asked(check, result)) {
      wanted = std::max(wanted, check.specimens);
    }
  }
  if (count < wanted) {
    const Span place = result.specimens.empty() ? result.record.replicates : Span{};
    add(diagnose::Code::audit_replicates, place.known() ? place : result.span,
        "found " + specimens_text(count) + " behind the result for " + name(result),
        "at least " + std::to_string(wanted) + ", as a requirement of the specification asks",
        "a specimen may have been left out of the report, or discarded");
  }
}

// Readings of more, or of fewer, specimens than are said to stand behind the result.
void Inspector::miscounted(const Result& result) {
  const std::size_t count = result.specimens.size();
  if (count > 0 && result.replicates > 0 && result.record.replicates.known() && count != result.replicates) {
    add(diagnose::Code::audit_replicates, result.record.replicates,
        "found the readings of " + specimens_text(count) + " for " + name(result) + ", and " +
            std::to_string(result.replicates) + " stated as `replicates`",
        "as many specimens as are stated",
        "a specimen may have been left out of the report, or counted twice; a clause counts those with readings");
  }
}

// Where no requirement says how many: fewer than all the other results of the measure, which agree.
void Inspector::fewer_than_others() {
  std::map<check::MeasureId, std::vector<const Result*>> results;
  for (const Result& result : evidence_.results) {
    const bool counted = std::any_of(demands_.begin(), demands_.end(), [&](const Demand& demand) {
      return demand.check->measure == result.measure && demand.check->specimens > 1;
    });
    if (!counted && !result.declared && result.series == check::none && !result.specimens.empty() &&
        result.design == evidence::Design::job_mix) {
      results[result.measure].push_back(&result);
    }
  }
  for (const auto& [of, all] : results) {
    constexpr std::size_t enough = 3;
    const auto fewer = [](const Result* left, const Result* right) {
      return left->specimens.size() < right->specimens.size();
    };
    const auto [least, most] = std::minmax_element(all.begin(), all.end(), fewer);
    const std::size_t usual = (*most)->specimens.size();
    const auto agreeing =
        std::count_if(all.begin(), all.end(), [&](const Result* one) { return one->specimens.size() == usual; });
    if (all.size() >= enough && (*least)->specimens.size() < usual &&
        agreeing + 1 == static_cast<std::ptrdiff_t>(all.size())) {
      add(diagnose::Code::audit_replicates, (*least)->span,
          "found " + specimens_text((*least)->specimens.size()) + " for " + name(**least),
          "as many as its other results have, " + std::to_string(usual),
          "a specimen may have been left out of the report, or discarded");
    }
  }
}

void Inspector::spread(const Result& result, const Replicates& replicates) {
  const check::Measure& of = measure(result);
  if (!of.repeatability || replicates.values.size() < 2) {
    return;
  }
  const auto [least, most] = std::minmax_element(replicates.values.begin(), replicates.values.end());
  const Decimal range = *most - *least;
  const Decimal mean = replicates.mean < Decimal{0} ? -replicates.mean : replicates.mean;
  const Decimal allowed = of.relative ? *of.repeatability * mean : *of.repeatability;
  if (range <= allowed) {
    return;
  }
  const quantity::UnitId difference = evidence_.units.difference(of.type.unit);
  const auto at = [&](auto place) {
    return result.specimens[static_cast<std::size_t>(place - replicates.values.begin())].span;
  };
  Finding& one =
      add(diagnose::Code::audit_spread, at(most),
          "the specimens of " + name(result) + " are " + shown(result, range.stripped(), difference) + " apart",
          "at most " + shown(result, allowed.stripped(), difference) + ", the declared repeatability" +
              (of.relative ? " of " + explain::show((*of.repeatability * Decimal{100}).stripped()) + " % of their mean"
                           : ""),
          "one of the specimens may have been made or read wrongly");
  one.related.push_back({at(least), "the least"});
}

void Inspector::outlier(const Result& result, const Replicates& replicates) {
  constexpr std::size_t fewest = 3;
  if (!out_.outliers || replicates.values.size() < fewest) {
    return;
  }
  out_.tested.push_back(result.span);
  std::vector<double> values;
  std::transform(replicates.values.begin(), replicates.values.end(), std::back_inserter(values), number);
  const auto found = find_outlier(values, number(*rules_.specification->outliers));
  if (!found) {
    return;
  }
  const std::string percent = explain::show((*rules_.specification->outliers * Decimal{100}).stripped()) + " %";
  const bool three = values.size() == fewest;
  add(diagnose::Code::audit_outlier, result.specimens[found->index].span,
      shown(result, replicates.values[found->index].stripped()) + " lies apart from the other specimens of " +
          name(result) + ": T = " + digits(found->t),
      "T of at most " + digits(found->critical) + " for " + std::to_string(values.size()) + " specimens at " + percent +
          ", two-sided (ASTM E178)",
      three ? "of three specimens T cannot exceed 1.1547, so that this shows only that the other two nearly coincide; "
              "test more specimens"
            : "look for a fault of this specimen before it is discarded; the mean of the result counts it");
}

// Specimens of one measure with the same readings: a reading that has no dimension, or that is shared, may well agree.
void Inspector::duplicates() {
  std::map<std::string, Span> seen;
  for (const Result& result : evidence_.results) {
    const std::vector<check::Reading>& readings = measure(result).readings;
    std::map<std::string, Span> labels;
    for (const Specimen& specimen : result.specimens) {
      std::string key = std::to_string(result.measure);
      std::size_t measured = 0;
      for (std::size_t at = 0; at < specimen.readings.size(); ++at) {
        const Value& value = specimen.readings[at];
        const bool own = value.span.begin >= specimen.span.begin && value.span.end <= specimen.span.end;
        const quantity::UnitId unit = readings[at].type.unit;
        if (own && exact(value) && !(evidence_.units.at(unit).dimension == quantity::Dimension{})) {
          key += " " + std::to_string(at) + "=" + in_unit(value.amount, unit).stripped().text();
          ++measured;
        }
      }
      const auto [first, fresh] = seen.try_emplace(key, specimen.span);
      if (measured > 1 && !fresh) {
        add(diagnose::Code::audit_duplicate, specimen.span, "found the same readings twice for " + name(result),
            "readings of its own for each specimen", "one specimen may have been entered twice")
            .related.push_back({first->second, "the same readings"});
        continue;
      }
      if (specimen.label_span.known()) {
        const auto [other, once] = labels.try_emplace(specimen.label, specimen.label_span);
        if (!once && !(other->second == specimen.label_span)) {
          add(diagnose::Code::audit_duplicate, specimen.label_span,
              "found two specimens of " + name(result) + " with one label", "a label of its own for each specimen",
              "one specimen may have been entered twice")
              .related.push_back({other->second, "the same label"});
        }
      }
    }
  }
}

}  // namespace plumbrule::audit
