#include "apply/contrast/mixes.hpp"

#include <algorithm>
#include <iterator>
#include <optional>

#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

std::set<std::string> all_words(const Words& words, const std::string& category) {
  const auto found = words.find(category);
  return found == words.end() ? std::set<std::string>() : std::set(found->second.begin(), found->second.end());
}

// Without the categories of which every word will do; nothing if no word of one is left.
std::optional<Asked> settled(Asked asked, const Words& words) {
  for (auto one = asked.begin(); one != asked.end();) {
    if (one->second.empty()) {
      return std::nullopt;
    }
    one = one->second == all_words(words, one->first) ? asked.erase(one) : std::next(one);
  }
  return asked;
}

std::optional<Asked> common_part(const Asked& left, const Asked& right, const Words& words) {
  Asked out = left;
  for (const auto& [category, wanted] : right) {
    const auto [own, fresh] = out.emplace(category, wanted);
    if (!fresh) {
      std::set<std::string> both;
      std::set_intersection(own->second.begin(), own->second.end(), wanted.begin(), wanted.end(),
                            std::inserter(both, both.begin()));
      own->second = std::move(both);
    }
  }
  return settled(std::move(out), words);
}

// Category by category: what lies outside of it is kept, what lies inside is asked about the next.
void leave_out(Asked left, const Asked& right, const Words& words, Mixes& out) {
  for (const auto& [category, wanted] : right) {
    std::set<std::string>& own = left.emplace(category, all_words(words, category)).first->second;
    std::set<std::string> inside;
    Asked outside = left;
    outside[category].clear();
    for (const std::string& word : own) {
      (wanted.count(word) > 0 ? inside : outside[category]).insert(word);
    }
    if (auto part = settled(std::move(outside), words)) {
      out.push_back(std::move(*part));
    }
    own = std::move(inside);
  }
}

// Both as one part, if they ask alike but for the words of one category.
std::optional<Asked> together(const Asked& left, const Asked& right, const Words& words) {
  Asked out = left;
  std::size_t unlike = 0;
  for (const auto& [category, wanted] : right) {
    const auto own = out.find(category);
    if (own == out.end()) {
      return std::nullopt;
    }
    unlike += own->second == wanted ? 0 : 1;
    own->second.insert(wanted.begin(), wanted.end());
  }
  return left.size() == right.size() && unlike <= 1 ? settled(std::move(out), words) : std::nullopt;
}

// Of hostile rules the parts would double with every demand.
constexpr std::size_t most_parts = 64;

// As few parts as can be had by putting two together.
Mixes merged(Mixes mixes, const Words& words) {
  if (mixes.size() > most_parts) {
    return mixes;
  }
  for (std::size_t at = 0; at < mixes.size(); ++at) {
    for (std::size_t other = at + 1; other < mixes.size(); ++other) {
      if (auto both = together(mixes[at], mixes[other], words)) {
        mixes[at] = std::move(*both);
        mixes.erase(mixes.begin() + static_cast<std::ptrdiff_t>(other));
        return merged(std::move(mixes), words);
      }
    }
  }
  return mixes;
}

std::string in_words(const Asked& asked, const Words& words) {
  std::string out;
  for (const auto& [category, wanted] : asked) {
    std::string list;
    for (const std::string& word : words.at(category)) {
      list += wanted.count(word) == 0 ? "" : (list.empty() ? "" : ", ") + explain::spaced(word);
    }
    out += (out.empty() ? "" : "; ") + explain::spaced(category) + " " + list;
  }
  return out;
}

}  // namespace

Words words_of(const std::vector<const check::Rules*>& specifications) {
  Words out;
  for (const check::Rules* rules : specifications) {
    for (const check::Category& category : rules->categories) {
      std::vector<std::string>& known = out[category.name];
      std::copy_if(category.words.begin(), category.words.end(), std::back_inserter(known),
                   [&](const auto& word) { return std::find(known.begin(), known.end(), word) == known.end(); });
    }
  }
  return out;
}

Mixes mixes_of(const Asked& asked, const std::vector<Asked>& exceptions, const Words& words) {
  const auto own = settled(asked, words);
  return own ? without({*own}, exceptions, words) : Mixes();
}

Mixes common(const Mixes& left, const Mixes& right, const Words& words) {
  Mixes out;
  for (const Asked& one : left) {
    for (const Asked& other : right) {
      if (auto both = common_part(one, other, words)) {
        out.push_back(std::move(*both));
      }
    }
  }
  return merged(std::move(out), words);
}

Mixes without(const Mixes& left, const Mixes& right, const Words& words) {
  Mixes out = left;
  for (const Asked& taken : right) {
    if (out.size() > most_parts) {
      break;
    }
    Mixes rest;
    for (const Asked& one : out) {
      if (common_part(one, taken, words)) {
        leave_out(one, taken, words, rest);
      } else {
        rest.push_back(one);
      }
    }
    out = std::move(rest);
  }
  return merged(std::move(out), words);
}

std::string in_words(const Mixes& mixes, const Words& words) {
  std::string out;
  for (const Asked& asked : mixes) {
    out += (out.empty() ? "" : " or ") + in_words(asked, words);
  }
  return out;
}

}  // namespace plumbrule::contrast
