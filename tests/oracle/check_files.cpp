#include "check_files.hpp"

#include <numeric>

#include "judge/evidence/written.hpp"
#include "language/check/shelf.hpp"

namespace plumbrule::oracle {
namespace {

using RuleSets = std::vector<std::unique_ptr<RuleSet>>;

evidence::KnownNames names_of(const RuleSets& sets) {
  evidence::KnownNames out;
  for (const auto& set : sets) {
    for (const check::Measure& measure : set->rules.measures) {
      out.measures.push_back(measure.name);
    }
    for (const check::Condition& condition : set->rules.conditions) {
      out.conditions.push_back(condition.name);
    }
    for (const check::Category& category : set->rules.categories) {
      out.categories.push_back(category.name);
    }
  }
  return out;
}

RuleSets prepare_all(source::SourceMap& sources, const ReviewFiles& files, std::string& trouble) {
  RuleSets out;
  const source::Disk disk;
  check::Shelf shelf(sources, disk);
  for (const std::string& path : files.against) {
    diagnose::Diagnostics diagnostics;
    check::Loaded loaded = check::load(shelf, {path, files.amendments, files.libraries}, diagnostics);
    auto set = diagnostics.has_errors() ? nullptr : prepare(sources, std::move(loaded), files.on, diagnostics);
    if (set == nullptr) {
      trouble = "no usable specification in " + path;
      return out;
    }
    set->path = path;
    out.push_back(std::move(set));
  }
  return out;
}

}  // namespace

Checked check_files(const ReviewFiles& files) {
  Checked out;
  source::SourceMap sources;
  const RuleSets sets = prepare_all(sources, files, out.trouble);
  source::FileText file = source::read_file(files.submittal);
  if (!out.trouble.empty() || !file.text) {
    out.trouble = out.trouble.empty() ? "cannot read " + files.submittal + ": " + file.reason : out.trouble;
    return out;
  }
  diagnose::Diagnostics diagnostics;
  const source::FileId id = sources.add(files.submittal, std::move(*file.text));
  const auto document = evidence::read_yaml(sources, id, diagnostics);
  if (!document) {
    out.trouble = "unusable submittal " + files.submittal;
    return out;
  }
  const evidence::KnownNames others = names_of(sets);
  for (const auto& set : sets) {
    Comparison one = compare(*set, *document, others, evidence::read_date(files.on));
    out.clauses += one.clauses;
    out.left_open += std::accumulate(one.left_open.begin(), one.left_open.end(), std::size_t{0});
    for (Difference& difference : one.differences) {
      difference.clause = set->path + ": " + difference.clause;
      out.differences.push_back(std::move(difference));
    }
  }
  return out;
}

std::string report(const Checked& checked) {
  std::string out;
  for (const Difference& one : checked.differences) {
    out += "  " + one.clause + ": engine " + one.engine + ", oracle " + one.judge + "\n";
  }
  return out;
}

}  // namespace plumbrule::oracle
