#include "diagnose/quote.hpp"

#include <algorithm>

#include "diagnose/encoding.hpp"

namespace plumbrule::diagnose {
namespace {

bool starts_character(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }

std::string escaped(char byte) {
  constexpr std::string_view digits = "0123456789abcdef";
  const auto value = static_cast<unsigned char>(byte);
  return std::string("\\x") + digits[value >> 4U] + digits[value & 15U];
}

}  // namespace

std::string quoted(std::string_view text, std::size_t most) {
  std::size_t end = std::min(text.size(), most);
  while (end > 0 && end < text.size() && !starts_character(text[end])) {
    --end;
  }
  const std::string_view part = text.substr(0, end);
  const bool valid = !first_bad_byte(part);
  std::string out = "`";
  for (const char byte : part) {
    const auto value = static_cast<unsigned char>(byte);
    const bool control = value < 0x20U || value == 0x7FU;
    out += control || (!valid && value >= 0x80U) ? escaped(byte) : std::string(1, byte);
  }
  out += end < text.size() ? "...`" : "`";
  return out;
}

std::string printable(std::string_view text) {
  constexpr std::string_view mark = "\xEF\xBF\xBD";
  std::string out;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const auto value = static_cast<unsigned char>(text[at]);
    const bool upper_control =
        value == 0xC2U && at + 1 < text.size() && static_cast<unsigned char>(text[at + 1]) < 0xA0U;
    if (value < 0x20U || value == 0x7FU || upper_control) {
      out += mark;
      at += upper_control ? 1 : 0;
    } else {
      out.push_back(text[at]);
    }
  }
  return out;
}

}  // namespace plumbrule::diagnose
