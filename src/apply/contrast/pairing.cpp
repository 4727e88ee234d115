#include "apply/contrast/pairing.hpp"

#include <algorithm>
#include <optional>
#include <tuple>

#include "apply/contrast/limits.hpp"

namespace plumbrule::contrast {
namespace {

// What could be a pair. The smaller in order is taken first.
struct Candidate {
  int distance;  // 0: of one clause and subject, 1: of one subject, 2: of one clause and measure, 3: nothing is
                 // required
  bool statistic, weight, classes, way, limit;  // differ
  std::size_t before, after;
  [[nodiscard]] auto order() const { return std::tie(distance, statistic, weight, classes, way, limit, before, after); }
};

class Pairing {
 public:
  Pairing(const check::Rules& rules_before, const std::vector<Demand>& before, const check::Rules& rules_after,
          const std::vector<Demand>& after, const Words& words)
      : rules_before_(rules_before),
        before_(before),
        rules_after_(rules_after),
        after_(after),
        words_(words),
        one_family_(rules_before.specification->name == rules_after.specification->name) {}

  Pairs run() {
    out_.of.resize(before_.size());
    out_.before_alone = all_mixes(before_);
    out_.after_alone = all_mixes(after_);
    for (const Candidate& one : candidates()) {
      take(one.before, one.after);
    }
    for (std::vector<Pair>& of : out_.of) {
      std::sort(of.begin(), of.end(), [](const Pair& left, const Pair& right) { return left.after < right.after; });
    }
    clear_waivers(before_, out_.before_alone);
    clear_waivers(after_, out_.after_alone);
    return std::move(out_);
  }

 private:
  const check::Rules& rules_before_;
  const std::vector<Demand>& before_;
  const check::Rules& rules_after_;
  const std::vector<Demand>& after_;
  const Words& words_;
  bool one_family_;
  Pairs out_;

  [[nodiscard]] std::vector<Mixes> all_mixes(const std::vector<Demand>& demands) const {
    std::vector<Mixes> out;
    out.reserve(demands.size());
    for (const Demand& demand : demands) {
      out.push_back(mixes_of(demand.classes, demand.exceptions, words_));
    }
    return out;
  }

  static void clear_waivers(const std::vector<Demand>& demands, std::vector<Mixes>& alone) {
    for (std::size_t at = 0; at < demands.size(); ++at) {
      if (demands[at].assertion == nullptr) {
        alone[at].clear();
      }
    }
  }

  // Whether the clause of the one, which requires nothing, demands of other mixes what the other demands.
  static bool waives(const Demand& nothing, const std::vector<Demand>& beside, const Demand& demand) {
    return demand.assertion != nullptr && std::any_of(beside.begin(), beside.end(), [&](const Demand& other) {
             return other.requirement == nothing.requirement && other.subject == demand.subject;
           });
  }

  [[nodiscard]] std::optional<int> distance(const Demand& left, const Demand& right) const {
    if (left.assertion == nullptr || right.assertion == nullptr) {
      const bool pair = left.assertion == nullptr ? waives(left, before_, right) : waives(right, after_, left);
      return pair ? std::optional(3) : std::nullopt;
    }
    const bool clause = one_family_ && left.requirement->number == right.requirement->number;
    if (left.subject == right.subject) {
      return clause ? 0 : 1;
    }
    return clause && left.measure == right.measure ? std::optional(2) : std::nullopt;
  }

  [[nodiscard]] bool limits_differ(const Demand& left, const Demand& right) const {
    return left.assertion != nullptr && right.assertion != nullptr &&
           difference(rules_before_, *left.assertion, rules_after_, *right.assertion).kind != ChangeKind::same;
  }

  [[nodiscard]] std::vector<Candidate> candidates() const {
    std::vector<Candidate> out;
    for (std::size_t at = 0; at < before_.size(); ++at) {
      for (std::size_t to = 0; to < after_.size(); ++to) {
        const Demand& left = before_[at];
        const Demand& right = after_[to];
        if (const auto far = distance(left, right)) {
          out.push_back({*far, statistic_of(left) != statistic_of(right), weight_of(left) != weight_of(right),
                         left.classes != right.classes, left.alternative != right.alternative,
                         limits_differ(left, right), at, to});
        }
      }
    }
    std::sort(out.begin(), out.end(),
              [](const Candidate& left, const Candidate& right) { return left.order() < right.order(); });
    return out;
  }

  // A case that requires nothing is left for the next demand of its clause.
  void take(std::size_t at, std::size_t to) {
    Mixes both = common(out_.before_alone[at], out_.after_alone[to], words_);
    if (both.empty()) {
      return;
    }
    if (before_[at].assertion != nullptr) {
      out_.before_alone[at] = without(out_.before_alone[at], both, words_);
    }
    if (after_[to].assertion != nullptr) {
      out_.after_alone[to] = without(out_.after_alone[to], both, words_);
    }
    out_.of[at].push_back({to, std::move(both)});
  }
};

}  // namespace

Pairs pairs(const check::Rules& rules_before, const std::vector<Demand>& before, const check::Rules& rules_after,
            const std::vector<Demand>& after, const Words& words) {
  return Pairing(rules_before, before, rules_after, after, words).run();
}

}  // namespace plumbrule::contrast
