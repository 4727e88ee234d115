#include "line_diff.hpp"

#include <algorithm>
#include <cstdint>
#include <vector>

#include "lines.hpp"

namespace plumbrule::cases {
namespace {

using Lines = std::vector<std::string_view>;

struct Change {
  char sign = ' ';  // '-' only expected, '+' only actual, ' ' both
  std::string_view line;
};

/// Above this many pairs of lines the middle is shown as removed and added, not matched line by line.
constexpr std::size_t most_pairs = 4'000'000;

/// Longest common run of lines, by the textbook table: length[i][j] is that of a[i..] and b[j..].
std::vector<Change> matched(const Lines& a, const Lines& b) {
  const std::size_t width = b.size() + 1;
  std::vector<std::uint32_t> length((a.size() + 1) * width, 0);
  for (std::size_t i = a.size(); i-- > 0;) {
    for (std::size_t j = b.size(); j-- > 0;) {
      length[i * width + j] = a[i] == b[j] ? length[(i + 1) * width + j + 1] + 1
                                           : std::max(length[(i + 1) * width + j], length[i * width + j + 1]);
    }
  }
  std::vector<Change> changes;
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < a.size() || j < b.size()) {
    if (i < a.size() && j < b.size() && a[i] == b[j]) {
      changes.push_back({' ', a[i++]});
      ++j;
    } else if (j == b.size() || (i < a.size() && length[(i + 1) * width + j] >= length[i * width + j + 1])) {
      changes.push_back({'-', a[i++]});
    } else {
      changes.push_back({'+', b[j++]});
    }
  }
  return changes;
}

std::vector<Change> replaced(const Lines& a, const Lines& b) {
  std::vector<Change> changes;
  for (const std::string_view line : a) {
    changes.push_back({'-', line});
  }
  for (const std::string_view line : b) {
    changes.push_back({'+', line});
  }
  return changes;
}

std::vector<Change> changes_of(Lines a, Lines b) {
  const auto [a_differs, b_differs] = std::mismatch(a.begin(), a.end(), b.begin(), b.end());
  const auto [a_last, b_last] = std::mismatch(a.rbegin(), std::make_reverse_iterator(a_differs), b.rbegin(),
                                              std::make_reverse_iterator(b_differs));
  const Lines a_middle(a_differs, a_last.base());
  const Lines b_middle(b_differs, b_last.base());
  std::vector<Change> changes;
  for (auto line = a.begin(); line != a_differs; ++line) {
    changes.push_back({' ', *line});
  }
  const bool small = a_middle.size() * b_middle.size() <= most_pairs;
  const std::vector<Change> middle = small ? matched(a_middle, b_middle) : replaced(a_middle, b_middle);
  changes.insert(changes.end(), middle.begin(), middle.end());
  for (auto line = a_last.base(); line != a.end(); ++line) {
    changes.push_back({' ', *line});
  }
  return changes;
}

/// A context line is shown when a change is at most two lines away.
std::vector<bool> worth_showing(const std::vector<Change>& changes) {
  constexpr std::size_t context = 2;
  std::vector<bool> shown(changes.size(), false);
  for (std::size_t at = 0; at < changes.size(); ++at) {
    if (changes[at].sign != ' ') {
      const std::size_t from = at - std::min(at, context);
      const std::size_t to = std::min(at + context + 1, changes.size());
      std::fill(shown.begin() + static_cast<std::ptrdiff_t>(from), shown.begin() + static_cast<std::ptrdiff_t>(to),
                true);
    }
  }
  return shown;
}

std::string one_line(const Change& change) {
  constexpr std::size_t longest = 200;
  std::string text = std::string("    ") + change.sign + " ";
  if (change.line.size() > longest) {
    return text.append(change.line.substr(0, longest)) + "... (" + std::to_string(change.line.size()) + " bytes)\n";
  }
  text += change.line;
  return text.ends_with('\n') ? text : text + " (no end of line)\n";
}

}  // namespace

std::string line_diff(std::string_view expected, std::string_view actual, std::size_t most_lines) {
  const std::vector<Change> changes = changes_of(split_lines(expected), split_lines(actual));
  const std::vector<bool> shown = worth_showing(changes);
  std::string text;
  std::size_t printed = 0;
  std::size_t left_out = 0;
  for (std::size_t at = 0; at < changes.size(); ++at) {
    if (!shown[at]) {
      continue;
    }
    if (printed == most_lines) {
      ++left_out;
      continue;
    }
    if (at > 0 && !shown[at - 1]) {
      text += "    ...\n";
    }
    text += one_line(changes[at]);
    ++printed;
  }
  if (left_out > 0) {
    text += "    (" + std::to_string(left_out) + " more lines)\n";
  }
  return text;
}

}  // namespace plumbrule::cases
