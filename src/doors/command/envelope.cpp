#include "doors/command/envelope.hpp"

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>

#include "doors/command/origin.hpp"
#include "doors/command/rule_set.hpp"
#include "base/diagnose/suggest.hpp"
#include "show/report/envelope/envelope.hpp"
#include "language/syntax/tidy.hpp"

namespace plumbrule::command {
namespace {

constexpr std::size_t envelope_width = 140;

std::optional<std::vector<RuleSet>> specifications(source::SourceMap& sources, const EnvelopeOptions& options) {
  std::vector<RuleSet> out;
  diagnose::Diagnostics diagnostics;
  for (const std::string& path : specifications_in(options.paths, diagnostics)) {
    auto set = prepare_specification(sources, {path, {}, library_folders(options.libraries)}, "", diagnostics);
    if (set) {
      out.push_back(std::move(*set));
    }
  }
  print_diagnostics(diagnostics, sources);
  return diagnostics.has_errors() ? std::nullopt : std::optional(std::move(out));
}

// Every category that some specification asks about, with its words; what is chosen must be among them.
std::optional<contrast::Classes> chosen(const EnvelopeOptions& options, const std::vector<RuleSet>& sets) {
  std::set<std::string> known;
  for (const RuleSet& set : sets) {
    for (const check::Category& category : set.rules.categories) {
      for (const std::string& word : category.words) {
        known.insert(category.name + "=" + word);
      }
    }
  }
  contrast::Classes out;
  for (const std::string& one : options.classes) {
    const std::vector<std::string_view> words(known.begin(), known.end());
    if (known.count(one) == 0) {
      print_error("found `" + one + "`, no class of these specifications; " + diagnose::suggestion(one, words));
      return std::nullopt;
    }
    const std::size_t sign = one.find('=');
    if (!out.emplace(one.substr(0, sign), one.substr(sign + 1)).second) {
      print_error("found a second class for `" + one.substr(0, sign) + "`: `" + one + "`; a mix has one, so name one");
      return std::nullopt;
    }
  }
  return out;
}

std::vector<std::string> vocabularies(const source::SourceMap& sources, const std::vector<RuleSet>& sets) {
  std::vector<std::string> out;
  for (const RuleSet& set : sets) {
    for (std::size_t at = 1; at < set.rules.files.size(); ++at) {
      const std::string name = std::filesystem::path(sources.name(set.rules.files[at])).stem().string();
      if (std::find(out.begin(), out.end(), name) == out.end()) {
        out.push_back(name);
      }
    }
  }
  return out;
}

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
std::vector<Declared> declared(const std::vector<RuleSet>& sets) {
  std::vector<Declared> out;
  for (const RuleSet& set : sets) {
    add_declared("measure", set.rules.measures, set.rules.file, out);
    add_declared("condition", set.rules.conditions, set.rules.file, out);
    add_declared("category", set.rules.categories, set.rules.file, out);
  }
  std::stable_partition(out.begin(), out.end(), [](const Declared& one) { return !one.own; });
  return out;
}

// A name that two files declare unlike: what the specifications say of it cannot be held against each other. What a
// specification declares itself is its own, unless a vocabulary of another one has the name.
bool names_agree(const source::SourceMap& sources, const std::vector<RuleSet>& sets) {
  std::map<std::string, source::FileId> known;  // names of the vocabularies
  for (const Declared& one : declared(sets)) {
    const auto found = known.find(one.name);
    if (found != known.end() && sources.text(found->second) != sources.text(one.file)) {
      print_error("found the " + one.name + " in `" + std::string(sources.name(found->second)) + "` and in `" +
                  std::string(sources.name(one.file)) +
                  "`, which differ, so that these specifications cannot be held against each other; let them use one "
                  "vocabulary");
      return false;
    }
    if (!one.own) {
      known.emplace(one.name, one.file);
    }
  }
  return true;
}

// Nothing if the rule file could not be read back.
std::optional<std::string> page_of(const report::EnvelopeReport& report, const source::SourceMap& sources,
                                   const std::vector<RuleSet>& sets, Format format) {
  if (format == Format::json) {
    return report::envelope_json(report);
  }
  if (format == Format::markdown) {
    return report::envelope_markdown(report);
  }
  if (format == Format::text) {
    return report::envelope_text(report, envelope_width);
  }
  source::SourceMap own;
  const std::string text =
      contrast::rule_file(report.envelope, report.specifications, vocabularies(sources, sets), report.classes) +
      closing_comments(report.origin);
  diagnose::Diagnostics diagnostics;
  auto page = syntax::tidy(own, own.add("envelope.plumb", text), diagnostics);
  print_diagnostics(diagnostics, own);
  return diagnostics.has_errors() ? std::nullopt : page;
}

}  // namespace

Exit envelope(const EnvelopeOptions& options) {
  source::SourceMap sources;
  const auto sets = specifications(sources, options);
  if (!sets) {
    return Exit::rules_broken;
  }
  if (!names_agree(sources, *sets)) {
    return Exit::rules_broken;
  }
  const auto classes = chosen(options, *sets);
  if (!classes) {
    return Exit::unusable;
  }
  std::vector<const check::Rules*> rules;
  rules.reserve(sets->size());
  for (const RuleSet& set : *sets) {
    rules.push_back(&set.rules);
  }
  const contrast::Envelope found = contrast::envelope(rules, *classes);
  const report::EnvelopeReport report{rules, found, *classes, origin_of(sources, *sets)};
  const auto page = page_of(report, sources, *sets, options.format);
  if (!page) {
    return Exit::rules_broken;
  }
  if (!write_output(*page, options.out, sources)) {
    return Exit::unusable;
  }
  return !found.exclusions.empty()                                ? Exit::fails
         : !found.incomparable.empty() || !found.left_out.empty() ? Exit::incomplete
                                                                  : Exit::complies;
}

}  // namespace plumbrule::command
