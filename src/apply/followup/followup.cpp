#include "apply/followup/followup.hpp"

#include <array>
#include <set>
#include <tuple>

#include "apply/followup/audited.hpp"
#include "apply/followup/class_looks.hpp"
#include "apply/followup/clauses.hpp"
#include "apply/followup/heads.hpp"
#include "apply/followup/job_mix.hpp"
#include "apply/followup/materials.hpp"
#include "apply/followup/repeated.hpp"
#include "apply/followup/result_values.hpp"
#include "apply/followup/test_looks.hpp"

namespace plumbrule::followup {
namespace {

auto key(const Span& span) { return std::tuple(span.file, span.begin, span.end); }
auto key(const ValueChange& one) {
  return std::tuple(key(one.before_place), key(one.after_place), one.subject, one.what, one.before, one.after);
}
auto key(const ResultChange& one) { return std::tuple(one.added, key(one.place), one.subject, one.value); }
// How many tests a specification knows is no other look.
auto key(const Look& one) {
  return std::tuple(
      one.kind, key(one.before), key(one.after),
      one.kind == LookKind::job_mix_changed || one.kind == LookKind::materials_changed ? std::string() : one.found);
}
auto key(const AuditProgress& one) {
  return std::tuple(one.progress, one.finding.code, key(one.finding.place), one.finding.found);
}

// Values from `shared` are met once for each specimen.
auto shared_key(const ValueChange& one) {
  return std::tuple(key(one.before_place), key(one.after_place), one.what, one.before, one.after);
}

// What is new in `from`, in its order.
template <typename Element, typename Key>
void add(std::vector<Element>& all, const std::vector<Element>& from, const Key& key_of) {
  std::set<decltype(key_of(from.front()))> known;
  for (const Element& one : all) {
    known.insert(key_of(one));
  }
  for (const Element& one : from) {
    if (known.insert(key_of(one)).second) {
      all.push_back(one);
    }
  }
}

constexpr auto by_key = [](const auto& one) { return key(one); };

}  // namespace

FollowUp compare(const Side& before, const Side& after) {
  Comparison both(before.context, after.context);
  ResultComparer results(both);
  TestLooks tests(both);
  RepeatedReadings repeated(both);
  JobMixFollower job_mix(both);
  MaterialsFollower materials(both);
  follow_clauses(both);
  compare_identity(both);
  look_whose(both);
  compare_classes(both);
  materials.compare_listed();
  for (const Pair& pair : both.matching.pairs) {
    const Differences found = results.compare(pair);
    materials.compare_used(pair);
    tests.look(pair, found);
    repeated.look(pair, found);
    job_mix.count(pair, found);
  }
  repeated.look_at_series();
  look_at_gone(both);
  job_mix.look();
  materials.look(job_mix);
  for (const ClauseProgress& one : both.out.clauses) {
    look_at_class(both, one);
  }
  list_other_results(both);
  follow_audit(both, before.audit, after.audit);
  std::vector<ValueChange> once;
  add(once, both.out.values, [](const ValueChange& one) { return shared_key(one); });
  both.out.values = std::move(once);
  return std::move(both.out);
}

void join(FollowUp& all, const FollowUp& other) {
  add(all.values, other.values, by_key);
  add(all.results, other.results, by_key);
  add(all.looks, other.looks, by_key);
  add(all.audit, other.audit, by_key);
}

std::string_view progress_text(Progress progress) {
  constexpr std::array<std::string_view, 4> texts{"closed", "still open", "new", "withdrawn"};
  return texts.at(static_cast<std::size_t>(progress));
}

std::string_view look_code(LookKind kind) {
  constexpr std::array<std::string_view, 13> texts{
      "reading_altered",   "reported_alone",    "failing_gone",  "moved",          "class_changed",
      "specimen_gone",     "readings_repeated", "readings_gone", "specimen_added", "job_mix_changed",
      "materials_changed", "other_submittal",   "dates_reversed"};
  return texts.at(static_cast<std::size_t>(kind));
}

}  // namespace plumbrule::followup
