#include "recipe.hpp"

#include <algorithm>
#include <charconv>
#include <vector>

#include "lines.hpp"

namespace plumbrule::cases {
namespace {

/// Words of a recipe; a quoted text is one word, kept with its opening quote so that `"+"` is no joint.
std::optional<std::vector<std::string>> words_of(std::string_view recipe) {
  std::vector<std::string> words;
  std::size_t at = 0;
  while (at < recipe.size()) {
    if (recipe[at] == ' ') {
      ++at;
      continue;
    }
    std::size_t end = at + 1;
    if (recipe[at] == '"') {
      while (end < recipe.size() && recipe[end] != '"') {
        end += recipe[end] == '\\' ? 2 : 1;
      }
      if (end >= recipe.size()) {
        return std::nullopt;
      }
      words.emplace_back(recipe.substr(at, end - at));
      at = end + 1;
    } else {
      end = std::min(recipe.find(' ', at), recipe.size());
      words.emplace_back(recipe.substr(at, end - at));
      at = end;
    }
  }
  return words;
}

std::optional<std::string> quoted_part(std::string_view word) {
  if (!word.starts_with('"')) {
    return std::nullopt;
  }
  constexpr std::string_view letters = "ntr\"\\";
  constexpr std::string_view meanings = "\n\t\r\"\\";
  std::string text;
  for (std::size_t at = 1; at < word.size(); ++at) {
    if (word[at] != '\\') {
      text += word[at];
      continue;
    }
    const std::size_t letter = letters.find(word[++at]);
    if (letter == std::string_view::npos) {
      return std::nullopt;
    }
    text += meanings[letter];
  }
  return text;
}

std::optional<std::size_t> number(std::string_view word, int base) {
  std::size_t value = 0;
  const auto [end, failure] = std::from_chars(word.data(), word.data() + word.size(), value, base);
  if (failure != std::errc() || end != word.data() + word.size()) {
    return std::nullopt;
  }
  return value;
}

std::string numbered(std::string_view text, std::size_t value) {
  std::string result;
  for (const char letter : text) {
    result += letter == '#' ? std::to_string(value) : std::string(1, letter);
  }
  return result;
}

/// One part of a recipe, as words.
using Part = std::vector<std::string>;

bool add_bytes(const Part& part, std::string& into) {
  for (std::size_t at = 1; at < part.size(); ++at) {
    const auto byte = number(part[at], 16);
    if (!byte || *byte > 0xFF) {
      return false;
    }
    into += static_cast<char>(*byte);
  }
  return part.size() > 1;
}

bool add_repeated(const Part& part, std::string& into) {
  const auto times = part.size() == 3 ? number(part[1], 10) : std::nullopt;
  const auto text = part.size() == 3 ? quoted_part(part[2]) : std::nullopt;
  if (!times || !text || text->empty() || *times > largest_generated / text->size()) {
    return false;
  }
  const bool series = part[0] == "series";
  into.reserve(into.size() + *times * text->size());
  for (std::size_t at = 1; at <= *times && into.size() <= largest_generated; ++at) {
    series ? into += numbered(*text, at) : into += *text;
  }
  into += part[0] == "line" ? "\n" : "";
  return true;
}

bool add_part(const Part& part, std::string& into) {
  const std::string& word = part[0];
  if (word == "empty") {
    return part.size() == 1;
  }
  if (word == "bytes") {
    return add_bytes(part, into);
  }
  if (word == "repeat" || word == "line" || word == "series") {
    return add_repeated(part, into);
  }
  const auto text = word == "text" && part.size() == 2 ? quoted_part(part[1]) : std::nullopt;
  into += text.value_or("");
  return text.has_value();
}

std::string shown(const Part& part) {
  std::string text;
  for (const std::string& word : part) {
    text += (text.empty() ? "" : " ") + word + (word.starts_with('"') ? "\"" : "");
  }
  return text;
}

}  // namespace

Generated generate(std::string_view recipe) {
  const auto words = words_of(recipe);
  if (!words) {
    return {std::nullopt, "a quoted text of the recipe is not closed"};
  }
  std::string bytes;
  auto from = words->begin();
  while (true) {
    const auto joint = std::find(from, words->end(), "+");
    const Part part(from, joint);
    if (part.empty() || !add_part(part, bytes)) {
      return {std::nullopt, "`" + shown(part) + "` is no part of a recipe; see tests/cases/recipe.hpp"};
    }
    if (bytes.size() > largest_generated) {
      return {std::nullopt, "the recipe makes more than 300 MiB"};
    }
    if (joint == words->end()) {
      return {std::move(bytes), {}};
    }
    from = joint + 1;
  }
}

}  // namespace plumbrule::cases
