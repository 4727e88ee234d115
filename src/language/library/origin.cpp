#include "language/library/origin.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "base/source/digest.hpp"
#include "base/source/version.hpp"
#include "language/library/in_force.hpp"

namespace plumbrule::library {
namespace {

// Files one after the other, each once: a text that several sets share has one digest, made once.
class Collector {
 public:
  Collector(Origin& origin, const source::SourceMap& sources) : origin_(origin), sources_(sources) {}

  void add(source::FileId file, const std::string& kind) {
    if (!seen_.insert(file).second) {
      return;
    }
    UsedFile used{std::string(sources_.name(file)), kind, source::sha256(sources_.text(file))};
    const bool known = std::any_of(origin_.files.begin(), origin_.files.end(), [&](const UsedFile& other) {
      return other.path == used.path && other.digest == used.digest;
    });
    if (!known) {
      origin_.files.push_back(std::move(used));
    }
  }

 private:
  Origin& origin_;
  const source::SourceMap& sources_;
  std::set<source::FileId> seen_;
};

// The same file may amend one of the specifications, and be set aside for another.
bool amends(const source::SourceMap& sources, std::span<const RuleSet> sets, source::FileId file) {
  return std::any_of(sets.begin(), sets.end(), [&](const RuleSet& set) {
    return std::any_of(set.fitting.begin(), set.fitting.end(), [&](const check::Loaded::Fitting& one) {
      return one.in_force && sources.name(one.file) == sources.name(file);
    });
  });
}

}  // namespace

Origin origin_of(const source::SourceMap& sources, std::span<const RuleSet> sets,
                 const std::vector<source::FileId>& submittals) {
  Origin out{std::string(source::version()), {}, {}, {}};
  Collector collector(out, sources);
  for (const source::FileId file : submittals) {
    collector.add(file, "submittal");
  }
  for (const RuleSet& set : sets) {
    for (const source::FileId file : set.rules.files) {
      collector.add(file, file == set.rules.file && set.rules.specification ? "specification" : "vocabulary");
    }
    for (const source::FileId file : set.amendments) {
      collector.add(file, amends(sources, sets, file) ? "amendment" : "amendment, not in force");
    }
  }
  return out;
}

Origin origin_of(const source::SourceMap& sources, const RulesInForce& rules,
                 const std::vector<source::FileId>& submittals) {
  Origin out = origin_of(sources, rules.sets, submittals);
  out.on = rules.on;
  out.aside = rules.aside;
  return out;
}

bool leaves_open(const Origin& origin) {
  return std::any_of(origin.aside.begin(), origin.aside.end(), [](const SetAside& one) { return one.open; });
}

std::string not_reviewed(const Origin& origin) {
  std::string out;
  for (const SetAside& one : origin.aside) {
    if (one.open) {
      out += (out.empty() ? "" : ", ") + one.what;
    }
  }
  return out;
}

std::string aside_text(const SetAside& one) {
  return one.what + ": " + one.why + (one.open ? "; nothing of it was reviewed" : "");
}

}  // namespace plumbrule::library
