#include "printable.hpp"

#include <algorithm>

namespace plumbrule::cases {
namespace {

bool goes_on_with_a_name(std::string_view rest) {
  if (rest.empty()) {
    return false;
  }
  const auto byte = static_cast<unsigned char>(rest.front());
  return byte == '_' || byte == '-' || byte >= 0x80U || (byte >= '0' && byte <= '9') || (byte >= 'a' && byte <= 'z') ||
         (byte >= 'A' && byte <= 'Z');
}

void replace_all(std::string& text, const std::string& from, const std::string& to) {
  std::size_t at = 0;
  while (!from.empty() && (at = text.find(from, at)) != std::string::npos) {
    if (goes_on_with_a_name(std::string_view(text).substr(at + from.size()))) {
      ++at;
      continue;
    }
    text.replace(at, from.size(), to);
    at += to.size();
  }
}

/// Length of the UTF-8 sequence that starts the text; 0 when there is none. Overlong forms and surrogates pass: this
/// is for showing, not for judging.
std::size_t sequence_length(std::string_view text) {
  const auto first = static_cast<unsigned char>(text.front());
  const std::size_t length = first < 0x80U   ? 1
                             : first < 0xC2U ? 0
                             : first < 0xE0U ? 2
                             : first < 0xF0U ? 3
                             : first < 0xF5U ? 4
                                             : 0;
  if (length > text.size()) {
    return 0;
  }
  const std::string_view rest = text.substr(1, length > 0 ? length - 1 : 0);
  const bool continued = std::all_of(rest.begin(), rest.end(),
                                     [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U; });
  return continued ? length : 0;
}

std::string byte_name(unsigned char byte) {
  constexpr std::string_view digits = "0123456789ABCDEF";
  return std::string("<x") + digits[byte >> 4U] + digits[byte & 0xFU] + ">";
}

/// U+2400 and on are pictures of the control characters 0 to 31.
std::string picture(unsigned char control) {
  constexpr unsigned char delete_character = 0x7F;
  const auto last = static_cast<char>(0x80U + (control == delete_character ? 0x21U : control));
  return std::string("\xE2\x90") + last;
}

}  // namespace

std::string with_names(std::string_view text, Replacements replacements) {
  std::stable_sort(replacements.begin(), replacements.end(),
                   [](const auto& a, const auto& b) { return a.first.size() > b.first.size(); });
  std::string result(text);
  for (const auto& [from, to] : replacements) {
    replace_all(result, from, to);
  }
  return result;
}

std::string printable(std::string_view text) {
  std::string result;
  while (!text.empty()) {
    const auto first = static_cast<unsigned char>(text.front());
    const std::size_t length = sequence_length(text);
    if (length == 0) {
      result += byte_name(first);
    } else if ((first < 0x20U && first != '\n' && first != '\t') || first == 0x7FU) {
      result += picture(first);
    } else {
      result += text.substr(0, length);
    }
    text.remove_prefix(std::max<std::size_t>(length, 1));
  }
  return result;
}

}  // namespace plumbrule::cases
