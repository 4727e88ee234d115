#include "apply/followup/materials.hpp"

#include <algorithm>
#include <set>

#include "base/diagnose/quote.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::followup {
namespace {

using diagnose::quoted;
using evidence::Material;
using evidence::Note;

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

void MaterialsFollower::compare_used(const Pair& pair) {
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
  if (from.declared || from.measure != to.measure) {
    return;
  }
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
    values_.note(pair, "made of " + material, left, right);
    const bool same = plain(left.text) == plain(right.text) || (alike(both_.before, material, left.text, right.text) &&
                                                                alike(both_.after, material, left.text, right.text));
    if (left.given() && !same && !both_.retested(pair)) {
      used_.push_back({both_.out.values.back(), pair});
    }
  }
}

void MaterialsFollower::compare_material(const Material& from, const Material& to) {
  for (const char* key : {"id", "batch", "description", "source", "certificate", "note"}) {
    const Note left = entry(from, key);
    const Note right = entry(to, key);
    if (left.text == right.text) {
      continue;
    }
    both_.out.values.push_back(
        {"materials", name_of(to) + ", " + key, worded(left), worded(right), "", left.span, right.span});
    if (left.given() && plain(left.text) != plain(right.text) && std::string_view(key) != "note") {
      listed_.push_back(both_.out.values.back());
    }
  }
}

void MaterialsFollower::compare_listed() {
  const std::vector<Material>& earlier = both_.before.evidence.materials;
  std::vector<bool> taken(earlier.size(), false);
  for (const Material& one : both_.after.evidence.materials) {
    const std::size_t at = nearest(one, earlier, taken);
    if (at < earlier.size()) {
      taken[at] = true;
      compare_material(earlier[at], one);
      continue;
    }
    both_.out.values.push_back({"materials", name_of(one), "not there", described(one), "", {}, one.span});
    if (!earlier.empty()) {
      listed_.push_back(both_.out.values.back());
    }
  }
  for (std::size_t at = 0; at < earlier.size(); ++at) {
    if (!taken[at]) {
      both_.out.values.push_back(
          {"materials", name_of(earlier[at]), described(earlier[at]), "not there", "", earlier[at].span, {}});
      listed_.push_back(both_.out.values.back());
    }
  }
}

// Of the list, if most tests stay as with the job mix; and of the tests that say what they were made of.
void MaterialsFollower::look(const JobMixFollower& job_mix) const {
  const auto more = [](std::size_t count) {
    return count > 1 ? " (and " + std::to_string(count - 1) + " more)" : std::string();
  };
  const auto shown = [](const std::string& text) {
    return text == not_stated || text == "not there" ? text : quoted(text);
  };
  if (!listed_.empty() && job_mix.mostly_kept()) {
    const ValueChange& change = listed_.front();
    both_.look(LookKind::materials_changed,
               change.subject + ": " + change.what + " was " + shown(change.before) + " and is " + shown(change.after) +
                   more(listed_.size()) + job_mix.kept_text(),
               "ask which materials the tests were made of", change.before_place, change.after_place);
  }
  if (!used_.empty()) {
    const ValueChange& change = used_.front().change;
    both_.look(LookKind::materials_changed,
               change.subject + ": " + change.what + " was " + shown(change.before) + " and is " + shown(change.after) +
                   more(used_.size()) + ", and " + both_.dates(used_.front().pair),
               "ask which materials the test was made of", change.before_place, change.after_place);
  }
}

}  // namespace plumbrule::followup
