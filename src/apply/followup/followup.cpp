#include "apply/followup/followup.hpp"

#include <algorithm>
#include <array>
#include <tuple>

#include "apply/followup/comparer.hpp"

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

FollowUp Comparer::run() {
  clauses();
  identity();
  whose();
  classes();
  materials();
  for (const Pair& pair : matching_.pairs) {
    const Differences found = differences(pair);
    looks(pair, found);
    count_kept(pair, found);
  }
  repeated_series();
  gone();
  job_mix_changed();
  materials_changed();
  for (const ClauseProgress& one : out_.clauses) {
    class_changed(one);
  }
  results();
  audits();
  std::vector<ValueChange> once;
  add(once, out_.values, [](const ValueChange& one) { return shared_key(one); });
  out_.values = std::move(once);
  return std::move(out_);
}

FollowUp compare(const Side& before, const Side& after) { return Comparer(before, after).run(); }

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
