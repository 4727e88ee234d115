#include "base/diagnose/quote.hpp"
#include "base/source/source.hpp"

#include <algorithm>

#include "base/diagnose/encoding.hpp"

namespace plumbrule::diagnose {
namespace {

std::string escaped(char byte) {
  constexpr std::string_view digits = "0123456789abcdef";
  const auto value = static_cast<unsigned char>(byte);
  return std::string("\\x") + digits[value >> 4U] + digits[value & 15U];
}

}  // namespace

std::string quoted(std::string_view text, std::size_t most) {
  std::size_t end = std::min(text.size(), most);
  while (end > 0 && end < text.size() && !source::starts_character(text[end])) {
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
  return printable(out);
}

namespace {

// How many bytes of a character that must not reach a terminal stand here: C0 and C1 controls, DEL, and the marks that
// turn the direction of writing. 0: a harmless one.
std::size_t harmful(std::string_view rest) {
  const auto byte = [&](std::size_t at) { return at < rest.size() ? static_cast<unsigned char>(rest[at]) : 0U; };
  if (byte(0) < 0x20U || byte(0) == 0x7FU) {
    return 1;
  }
  if (byte(0) == 0xC2U && byte(1) >= 0x80U && byte(1) < 0xA0U) {
    return 2;
  }
  const bool embeds = byte(0) == 0xE2U && byte(1) == 0x80U && byte(2) >= 0xAAU && byte(2) <= 0xAEU;
  const bool isolates = byte(0) == 0xE2U && byte(1) == 0x81U && byte(2) >= 0xA6U && byte(2) <= 0xA9U;
  return embeds || isolates ? 3 : 0;
}

}  // namespace

std::string printable(std::string_view text) {
  constexpr std::string_view mark = "\xEF\xBF\xBD";
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = harmful(text.substr(at));
    if (length > 0) {
      out += mark;
    } else {
      out.push_back(text[at]);
    }
    at += std::max<std::size_t>(length, 1);
  }
  return out;
}

std::string short_quotes(std::string_view message, std::size_t most) {
  std::string out;
  while (!message.empty()) {
    const std::size_t open = message.find('`');
    const std::size_t close = open == std::string_view::npos ? open : message.find('`', open + 1);
    if (close == std::string_view::npos) {
      break;
    }
    out += message.substr(0, open);
    out += quoted(message.substr(open + 1, close - open - 1), most);
    message.remove_prefix(close + 1);
  }
  return out + std::string(message.substr(0, most * 8));
}

}  // namespace plumbrule::diagnose
