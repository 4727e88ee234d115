#include "base/diagnose/suggest.hpp"

#include <algorithm>
#include <cctype>
#include <vector>

#include "base/diagnose/quote.hpp"

namespace plumbrule::diagnose {
namespace {

constexpr std::size_t longest = 64;
constexpr std::size_t most_listed = 8;

// Edit distance with swaps of neighbours (optimal string alignment), three rows at a time.
std::size_t distance(std::string_view left, std::string_view right) {
  std::vector<std::size_t> before(right.size() + 1);
  std::vector<std::size_t> previous(right.size() + 1);
  std::vector<std::size_t> current(right.size() + 1);
  for (std::size_t at = 0; at <= right.size(); ++at) {
    previous[at] = at;
  }
  for (std::size_t i = 1; i <= left.size(); ++i) {
    current[0] = i;
    for (std::size_t j = 1; j <= right.size(); ++j) {
      const std::size_t replaced = previous[j - 1] + (left[i - 1] == right[j - 1] ? 0 : 1);
      current[j] = std::min({replaced, previous[j] + 1, current[j - 1] + 1});
      if (i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1]) {
        current[j] = std::min(current[j], before[j - 2] + 1);
      }
    }
    std::swap(before, previous);
    std::swap(previous, current);
  }
  return previous[right.size()];
}

bool same_letters(std::string_view left, std::string_view right) {
  const auto small = [](char letter) { return std::tolower(static_cast<unsigned char>(letter)); };
  return std::equal(left.begin(), left.end(), right.begin(), right.end(),
                    [&](char one, char other) { return small(one) == small(other); });
}

std::size_t common_start(std::string_view left, std::string_view right) {
  return static_cast<std::size_t>(std::mismatch(left.begin(), left.end(), right.begin(), right.end()).first -
                                  left.begin());
}

}  // namespace

std::optional<std::string_view> nearest(std::string_view word, std::span<const std::string_view> known) {
  if (word.empty() || word.size() > longest) {
    return std::nullopt;
  }
  std::optional<std::string_view> best;
  std::size_t best_distance = longest;
  for (const std::string_view candidate : known) {
    if (candidate.size() > longest) {
      continue;
    }
    const std::size_t longer = std::max(word.size(), candidate.size());
    const std::size_t cap = std::max<std::size_t>(longer / 3, 1);
    if (longer - std::min(word.size(), candidate.size()) > cap) {
      continue;  // each missing letter is an edit
    }
    const std::size_t found = distance(word, candidate);
    if (found == longer && !same_letters(word, candidate)) {
      continue;  // every character replaced: `F` is not like `%`
    }
    // Of equally near words the one that begins alike: people drop endings more often than they change beginnings.
    const bool closer = found < best_distance ||
                        (best && found == best_distance && common_start(word, candidate) > common_start(word, *best));
    if (found <= cap && closer) {
      best = candidate;
      best_distance = found;
    }
  }
  return best;
}

std::string suggestion(std::string_view word, std::span<const std::string_view> known) {
  if (const auto best = nearest(word, known)) {
    return "did you mean " + quoted(*best, longest) + "?";
  }
  if (known.empty()) {
    return "nothing of that kind is declared here; declare it, or correct the name";
  }
  std::vector<std::string_view> once;  // several specifications may know the same
  for (std::size_t at = 0; at < known.size() && once.size() <= most_listed; ++at) {
    if (std::find(once.begin(), once.end(), known[at]) == once.end()) {
      once.push_back(known[at]);
    }
  }
  std::string out;
  for (std::size_t at = 0; at < std::min(once.size(), most_listed); ++at) {
    out += (out.empty() ? "known: " : ", ") + quoted(once[at], longest);
  }
  return once.size() > most_listed ? out + ", ..." : out;
}

}  // namespace plumbrule::diagnose
