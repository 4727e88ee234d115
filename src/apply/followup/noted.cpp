// What is noted beside the values: dates, laboratories, circumstances of the test, materials.

#include <algorithm>

#include "judge/explain/wording.hpp"
#include "apply/followup/comparer.hpp"

namespace plumbrule::followup {
namespace {

using evidence::Circumstances;
using evidence::Material;
using evidence::Note;

std::string stated(const Note& one) { return one.text.empty() ? not_stated : explain::one_line(one.text); }

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

Note used_in(const Result& result, const std::string& material) {
  const auto& all = result.record.materials;
  const auto found = std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.material == material; });
  return found == all.end() ? Note{} : found->name;
}

// Both are names of one listed material.
bool alike(const Context& context, const std::string& material, const std::string& left, const std::string& right) {
  const auto named = [](const Material& one, const std::string& name) {
    return std::any_of(one.names.begin(), one.names.end(),
                       [&](const std::string& own) { return plain(own) == plain(name); });
  };
  const auto& all = context.evidence.materials;
  return std::any_of(all.begin(), all.end(), [&](const Material& one) {
    return plain(one.material) == plain(material) && named(one, left) && named(one, right);
  });
}

Note entry(const Material& material, const std::string& key) {
  const auto found =
      std::find_if(material.entries.begin(), material.entries.end(), [&](const auto& one) { return one.first == key; });
  return found == material.entries.end() ? Note{} : found->second;
}

// "description crushed dolerite, source Pell Quarry".
std::string described(const Material& material) {
  std::string out;
  for (const auto& [key, value] : material.entries) {
    out += (out.empty() ? "" : ", ") + key + " " + explain::one_line(value.text);
  }
  return out.empty() ? "listed" : out;
}

std::string name_of(const Material& one) { return one.material.empty() ? "a material" : one.material; }

std::size_t common(const Material& left, const Material& right) {
  return static_cast<std::size_t>(std::count_if(left.entries.begin(), left.entries.end(), [&](const auto& one) {
    return entry(right, one.first).text == one.second.text;
  }));
}

// The listed material of the same kind with which most agrees, of those that are not taken.
std::size_t nearest(const Material& one, const std::vector<Material>& all, const std::vector<bool>& taken) {
  std::size_t best = all.size();
  for (std::size_t at = 0; at < all.size(); ++at) {
    const bool fits = !taken[at] && plain(all[at].material) == plain(one.material);
    best = fits && (best == all.size() || common(one, all[at]) > common(one, all[best])) ? at : best;
  }
  return best;
}

}  // namespace

void Comparer::day(const Pair& pair, const std::string& what, const evidence::Day& from, const evidence::Day& to) {
  const auto text = [](const Context& context, const evidence::Day& one) {
    const bool readable = one.day != evidence::no_date;
    return !one.span.known() ? std::string(not_stated)
                             : written(context, one.span) + (readable ? "" : " (not readable)");
  };
  const bool unreadable = from.day == evidence::no_date && to.day == evidence::no_date;
  if (from.day != to.day || (unreadable && text(before_, from) != text(after_, to))) {
    out_.values.push_back(
        {shared_subject(after_, later(pair)), what, text(before_, from), text(after_, to), "", from.span, to.span});
  }
}

void Comparer::text(const Pair& pair, const std::string& what, const Note& from, const Note& to) {
  if (from.text != to.text) {
    out_.values.push_back(
        {shared_subject(after_, later(pair)), what, stated(from), stated(to), "", from.span, to.span});
  }
}

void Comparer::replicates(const Pair& pair, Differences& out) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  if (from.replicates == to.replicates) {
    return;
  }
  const auto count = [](std::uint32_t number) {
    return number == 0 ? std::string(not_stated) : std::to_string(number);
  };
  out_.values.push_back({shared_subject(after_, to), "replicates", count(from.replicates), count(to.replicates), "",
                         from.record.replicates, to.record.replicates});
  if (from.replicates != 0 && from.specimens.empty() && to.specimens.empty()) {
    out.altered.push_back(out_.values.size() - 1);
  }
}

void Comparer::clocks(const Pair& pair, const std::string& of, const std::string& whose, const Circumstances& from,
                      const Circumstances& to, Differences& out) {
  for (const check::ConditionId condition : measure(later(pair)).conditions) {
    const evidence::Clock* left = clock_in(from, condition);
    const evidence::Clock* right = clock_in(to, condition);
    const bool both = left != nullptr && right != nullptr;
    if (left == right || (both && left->started == right->started && left->ended == right->ended)) {
      continue;
    }
    const auto times = [](const Context& context, const evidence::Clock* one) {
      return one == nullptr ? std::string(not_stated) : written(context, one->span);
    };
    out_.values.push_back({of, whose + "clock of " + explain::spaced(after_.rules.conditions[condition].name),
                           times(before_, left), times(after_, right), "", left == nullptr ? Span{} : left->span,
                           right == nullptr ? Span{} : right->span});
    if (left != nullptr) {
      out.noted.push_back(out_.values.size() - 1);
    }
  }
}

void Comparer::circumstances(const Pair& pair, const std::string& of, const std::string& whose,
                             const Circumstances& from, const Circumstances& to, Differences& out) {
  const std::vector<check::Held>& all = measure(later(pair)).held;
  for (std::uint32_t index = 0; index < all.size(); ++index) {
    const check::Held& one = all[index];
    check::Type type;
    type.unit = one.unit;
    const Value left = held_in(from, index);
    if (value(of, whose + "held " + explain::spaced(one.name), left, held_in(to, index), type) == Change::other &&
        left.usable()) {
      out.noted.push_back(out_.values.size() - 1);
    }
  }
  clocks(pair, of, whose, from, to, out);
}

void Comparer::materials_used(const Pair& pair) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  std::set<std::string> names;
  for (const Result* one : {&from, &to}) {
    for (const evidence::MaterialUsed& used : one->record.materials) {
      names.insert(used.material);
    }
  }
  for (const std::string& material : names) {
    const Note left = used_in(from, material);
    const Note right = used_in(to, material);
    if (left.text == right.text) {
      continue;
    }
    text(pair, "made of " + material, left, right);
    const bool same = plain(left.text) == plain(right.text) || (alike(before_, material, left.text, right.text) &&
                                                                alike(after_, material, left.text, right.text));
    if (left.given() && !same && !retested(pair)) {
      used_.push_back({out_.values.back(), pair});
    }
  }
}

void Comparer::beside(const Pair& pair, Differences& out) {
  const Result& from = earlier(pair);
  const Result& to = later(pair);
  if (from.declared) {
    return;  // dated as the submittal is
  }
  day(pair, "date of the test", from.record.tested, to.record.tested);
  day(pair, "date of making", from.record.made, to.record.made);
  text(pair, "laboratory", from.record.laboratory, to.record.laboratory);
  text(pair, "accreditation", from.record.accreditation, to.record.accreditation);
  text(pair, "note", from.record.note, to.record.note);
  if (value(shared_subject(after_, to), "reported value in the other unit", from.record.also, to.record.also,
            measure(to).type) == Change::other &&
      from.record.also.usable()) {
    out.noted.push_back(out_.values.size() - 1);
  }
  replicates(pair, out);
  circumstances(pair, shared_subject(after_, to), "", from.record.circumstances, to.record.circumstances, out);
  materials_used(pair);
}

void Comparer::material(const Material& from, const Material& to) {
  for (const char* key : {"id", "batch", "description", "source", "certificate", "note"}) {
    const Note left = entry(from, key);
    const Note right = entry(to, key);
    if (left.text == right.text) {
      continue;
    }
    out_.values.push_back(
        {"materials", name_of(to) + ", " + key, stated(left), stated(right), "", left.span, right.span});
    if (left.given() && plain(left.text) != plain(right.text) && std::string_view(key) != "note") {
      materials_.push_back(out_.values.back());
    }
  }
}

void Comparer::materials() {
  const std::vector<Material>& earlier = before_.evidence.materials;
  std::vector<bool> taken(earlier.size(), false);
  for (const Material& one : after_.evidence.materials) {
    const std::size_t at = nearest(one, earlier, taken);
    if (at < earlier.size()) {
      taken[at] = true;
      material(earlier[at], one);
      continue;
    }
    out_.values.push_back({"materials", name_of(one), "not there", described(one), "", {}, one.span});
    if (!earlier.empty()) {
      materials_.push_back(out_.values.back());
    }
  }
  for (std::size_t at = 0; at < earlier.size(); ++at) {
    if (!taken[at]) {
      out_.values.push_back(
          {"materials", name_of(earlier[at]), described(earlier[at]), "not there", "", earlier[at].span, {}});
      materials_.push_back(out_.values.back());
    }
  }
}

}  // namespace plumbrule::followup
