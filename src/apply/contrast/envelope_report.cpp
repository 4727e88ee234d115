#include "apply/contrast/envelope_report.hpp"

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>

#include "base/diagnose/suggest.hpp"

namespace plumbrule::contrast {
namespace {

// What a specification goes by, declared by itself or by a vocabulary.
struct Declared {
  std::string name;  // "measure `x`"
  source::FileId file;
  bool own = false;
};

template <typename All>
void add_declared(const std::string& kind, const All& all, source::FileId own, std::vector<Declared>& out) {
  for (const auto& one : all) {
    if (one.span.known()) {
      out.push_back({kind + " `" + one.name + "`", one.span.file, one.span.file == own});
    }
  }
}

// Those of vocabularies first.
std::vector<Declared> declared(std::span<const library::RuleSet> sets) {
  std::vector<Declared> out;
  for (const library::RuleSet& set : sets) {
    add_declared("measure", set.rules.measures, set.rules.file, out);
    add_declared("condition", set.rules.conditions, set.rules.file, out);
    add_declared("category", set.rules.categories, set.rules.file, out);
  }
  std::stable_partition(out.begin(), out.end(), [](const Declared& one) { return !one.own; });
  return out;
}

}  // namespace

Chosen choose_classes(std::span<const library::RuleSet> sets, const std::vector<std::string>& classes) {
  std::set<std::string> known;
  for (const library::RuleSet& set : sets) {
    for (const check::Category& category : set.rules.categories) {
      for (const std::string& word : category.words) {
        known.insert(category.name + "=" + word);
      }
    }
  }
  Chosen out;
  for (const std::string& one : classes) {
    const std::vector<std::string_view> words(known.begin(), known.end());
    if (known.count(one) == 0) {
      out.misfit = "found `" + one + "`, no class of these specifications; " + diagnose::suggestion(one, words);
      return out;
    }
    const std::size_t sign = one.find('=');
    if (!out.classes.emplace(one.substr(0, sign), one.substr(sign + 1)).second) {
      out.misfit = "found a second class for `" + one.substr(0, sign) + "`: `" + one + "`; a mix has one, so name one";
      return out;
    }
  }
  return out;
}

std::vector<std::string> vocabularies_of(const source::SourceMap& sources, std::span<const library::RuleSet> sets) {
  std::vector<std::string> out;
  for (const library::RuleSet& set : sets) {
    for (std::size_t at = 1; at < set.rules.files.size(); ++at) {
      const std::string name = std::filesystem::path(sources.name(set.rules.files[at])).stem().string();
      if (std::find(out.begin(), out.end(), name) == out.end()) {
        out.push_back(name);
      }
    }
  }
  return out;
}

std::string unlike_names(const source::SourceMap& sources, std::span<const library::RuleSet> sets) {
  std::map<std::string, source::FileId> known;  // names of the vocabularies
  for (const Declared& one : declared(sets)) {
    const auto found = known.find(one.name);
    if (found != known.end() && sources.text(found->second) != sources.text(one.file)) {
      return "found the " + one.name + " in `" + std::string(sources.name(found->second)) + "` and in `" +
             std::string(sources.name(one.file)) +
             "`, which differ, so that these specifications cannot be held against each other; let them use one "
             "vocabulary";
    }
    if (!one.own) {
      known.emplace(one.name, one.file);
    }
  }
  return {};
}

assess::Upshot upshot(const EnvelopeReport& report) {
  const Envelope& found = report.envelope;
  return !found.exclusions.empty()                                ? assess::Upshot::fails
         : !found.incomparable.empty() || !found.left_out.empty() ? assess::Upshot::incomplete
                                                                  : assess::Upshot::complies;
}

}  // namespace plumbrule::contrast
