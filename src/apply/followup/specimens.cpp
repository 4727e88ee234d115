// Which specimens of two results are the same.

#include <algorithm>
#include <functional>
#include <map>
#include <set>

#include "apply/followup/match.hpp"

namespace plumbrule::followup {
namespace {

using explain::Context;

bool labelled(const Result& result) {
  return std::all_of(result.specimens.begin(), result.specimens.end(),
                     [](const Specimen& one) { return !one.label.empty(); });
}

std::multiset<std::string> keys(const Context& context, const Result& result) {
  std::multiset<std::string> out;
  for (const Specimen& one : result.specimens) {
    out.insert(specimen_key(context, result, one));
  }
  return out;
}

class SpecimenMatcher {
 public:
  SpecimenMatcher(const Context& before, const Result& earlier, const Context& after, const Result& later)
      : before_(before),
        after_(after),
        earlier_(earlier),
        later_(later),
        taken_(earlier.specimens.size(), false),
        out_(later.specimens.size()) {
    for (std::uint32_t at = 0; at < out_.size(); ++at) {
      out_[at].after = at;
    }
  }

  std::vector<SpecimenPair> run(bool repeated) {
    const bool others = repeated && labelled(earlier_) && labelled(later_);
    round([](const Context&, const Result&, const Specimen& one) {
      return one.label.empty() ? std::nullopt : std::optional(one.label);
    });
    const bool any = !others || all_alike();
    round([any](const Context& context, const Result& result, const Specimen& one) {
      return any || own_numbers(one) > 1 ? std::optional(specimen_key(context, result, one)) : std::nullopt;
    });
    if (!others) {
      round([](const Context&, const Result&, const Specimen&) { return std::optional(std::string()); });
    }
    for (std::uint32_t from = 0; from < taken_.size(); ++from) {
      if (!taken_[from]) {
        out_.push_back({from, check::none});
      }
    }
    return std::move(out_);
  }

 private:
  using Key = std::function<std::optional<std::string>(const Context&, const Result&, const Specimen&)>;
  const Context& before_;
  const Context& after_;
  const Result& earlier_;
  const Result& later_;
  std::vector<bool> taken_;
  std::vector<SpecimenPair> out_;

  // Three single values do not agree by chance.
  [[nodiscard]] bool all_alike() const {
    constexpr std::size_t enough = 3;
    return later_.specimens.size() >= enough && keys(before_, earlier_) == keys(after_, later_);
  }

  void round(const Key& key) {
    std::multimap<std::string, std::uint32_t> open;
    for (std::uint32_t from = 0; from < taken_.size(); ++from) {
      const auto own = taken_[from] ? std::nullopt : key(before_, earlier_, earlier_.specimens[from]);
      if (own) {
        open.emplace(*own, from);
      }
    }
    for (SpecimenPair& one : out_) {
      const auto own = one.before != check::none ? std::nullopt : key(after_, later_, later_.specimens[one.after]);
      const auto found = own ? open.lower_bound(*own) : open.end();
      if (found != open.end() && found->first == *own) {
        one.before = found->second;
        taken_[found->second] = true;
        open.erase(found);
      }
    }
  }
};

}  // namespace

std::vector<SpecimenPair> match_specimens(const Context& before, const Result& earlier, const Context& after,
                                          const Result& later, bool repeated) {
  return SpecimenMatcher(before, earlier, after, later).run(repeated);
}

}  // namespace plumbrule::followup
