#include "command/origin.hpp"

#include <algorithm>

#include "source/digest.hpp"

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
      const bool waits = std::any_of(set.waiting.begin(), set.waiting.end(),
                                     [&](const check::Loaded::Waiting& one) { return one.file == file; });
      add(out, sources, file, waits ? "amendment, not in force" : "amendment");
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
