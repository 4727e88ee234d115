#include "doors/command/origin.hpp"

#include <algorithm>

#include "base/source/digest.hpp"

namespace plumbrule::command {
namespace {

void add(report::Origin& origin, const source::SourceMap& sources, source::FileId file, const std::string& kind) {
  report::UsedFile one{std::string(sources.name(file)), kind, source::sha256(sources.text(file))};
  const bool known = std::any_of(origin.files.begin(), origin.files.end(), [&](const report::UsedFile& other) {
    return other.path == one.path && other.digest == one.digest;
  });
  if (!known) {
    origin.files.push_back(std::move(one));
  }
}

// Every specification is read with files of its own, so the path tells which amendment it is.
bool amends(const source::SourceMap& sources, std::span<const RuleSet> sets, source::FileId file) {
  return std::any_of(sets.begin(), sets.end(), [&](const RuleSet& set) {
    return std::any_of(set.fitting.begin(), set.fitting.end(), [&](const check::Loaded::Fitting& one) {
      return one.in_force && sources.name(one.file) == sources.name(file);
    });
  });
}

}  // namespace

report::Origin origin_of(const source::SourceMap& sources, std::span<const RuleSet> sets,
                         const std::vector<source::FileId>& submittals) {
  report::Origin out{PLUMBRULE_VERSION, {}, {}, {}};
  for (const source::FileId file : submittals) {
    add(out, sources, file, "submittal");
  }
  for (const RuleSet& set : sets) {
    for (const source::FileId file : set.rules.files) {
      add(out, sources, file, file == set.rules.file && set.rules.specification ? "specification" : "vocabulary");
    }
    for (const source::FileId file : set.amendments) {
      add(out, sources, file, amends(sources, sets, file) ? "amendment" : "amendment, not in force");
    }
  }
  return out;
}

report::Origin origin_of(const source::SourceMap& sources, const RulesInForce& rules,
                         const std::vector<source::FileId>& submittals) {
  report::Origin out = origin_of(sources, rules.sets, submittals);
  out.on = rules.on;
  out.aside = rules.aside;
  return out;
}

}  // namespace plumbrule::command
