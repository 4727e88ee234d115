#include "apply/followup/noted.hpp"

#include <algorithm>

#include "judge/explain/wording.hpp"

namespace plumbrule::followup {
namespace {

using evidence::Circumstances;

Value held_in(const Circumstances& all, std::uint32_t index) {
  Value out;
  for (const evidence::HeldStated& one : all.held) {
    out = one.held == index ? one.value : out;  // a specimen's own stands behind the shared one
  }
  return out;
}

const evidence::Clock* clock_in(const Circumstances& all, check::ConditionId condition) {
  const auto found = std::find_if(all.clocks.rbegin(), all.clocks.rend(),
                                  [&](const evidence::Clock& one) { return one.condition == condition; });
  return found == all.clocks.rend() ? nullptr : &*found;
}

}  // namespace

void NotedComparer::compare(const Pair& pair, Differences& out) {
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
  if (from.declared) {
    return;  // dated as the submittal is
  }
  values_.day(pair, "date of the test", from.record.tested, to.record.tested);
  values_.day(pair, "date of making", from.record.made, to.record.made);
  values_.note(pair, "laboratory", from.record.laboratory, to.record.laboratory);
  values_.note(pair, "accreditation", from.record.accreditation, to.record.accreditation);
  values_.note(pair, "note", from.record.note, to.record.note);
  if (values_.value(shared_subject(both_.after, to), "reported value in the other unit", from.record.also,
                    to.record.also, both_.measure(to).type) == Difference::other &&
      from.record.also.usable()) {
    out.noted.push_back(both_.out.values.size() - 1);
  }
  replicates(pair, out);
  circumstances(pair, shared_subject(both_.after, to), "", from.record.circumstances, to.record.circumstances, out);
}

void NotedComparer::replicates(const Pair& pair, Differences& out) {
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
  if (from.replicates == to.replicates) {
    return;
  }
  const auto count = [](std::uint32_t number) {
    return number == 0 ? std::string(not_stated) : std::to_string(number);
  };
  both_.out.values.push_back({shared_subject(both_.after, to), "replicates", count(from.replicates),
                              count(to.replicates), "", from.record.replicates, to.record.replicates});
  if (from.replicates != 0 && from.specimens.empty() && to.specimens.empty()) {
    out.altered.push_back(both_.out.values.size() - 1);
  }
}

void NotedComparer::circumstances(const Pair& pair, const std::string& of, const std::string& whose,
                                  const Circumstances& from, const Circumstances& to, Differences& out) {
  const std::vector<check::Held>& all = both_.measure(both_.later(pair)).held;
  for (std::uint32_t index = 0; index < all.size(); ++index) {
    const check::Held& one = all[index];
    check::Type type;
    type.unit = one.unit;
    const Value left = held_in(from, index);
    if (values_.value(of, whose + "held " + explain::spaced(one.name), left, held_in(to, index), type) ==
            Difference::other &&
        left.usable()) {
      out.noted.push_back(both_.out.values.size() - 1);
    }
  }
  clocks(pair, of, whose, from, to, out);
}

void NotedComparer::clocks(const Pair& pair, const std::string& of, const std::string& whose, const Circumstances& from,
                           const Circumstances& to, Differences& out) {
  for (const check::ConditionId condition : both_.measure(both_.later(pair)).conditions) {
    const evidence::Clock* left = clock_in(from, condition);
    const evidence::Clock* right = clock_in(to, condition);
    const bool both = left != nullptr && right != nullptr;
    if (left == right || (both && left->started == right->started && left->ended == right->ended)) {
      continue;
    }
    const auto times = [](const Context& context, const evidence::Clock* one) {
      return one == nullptr ? std::string(not_stated) : written(context, one->span);
    };
    both_.out.values.push_back({of, whose + "clock of " + explain::spaced(both_.after.rules.conditions[condition].name),
                                times(both_.before, left), times(both_.after, right), "",
                                left == nullptr ? Span{} : left->span, right == nullptr ? Span{} : right->span});
    if (left != nullptr) {
      out.noted.push_back(both_.out.values.size() - 1);
    }
  }
}

}  // namespace plumbrule::followup
