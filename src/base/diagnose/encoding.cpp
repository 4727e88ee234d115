#include "base/diagnose/encoding.hpp"

namespace plumbrule::diagnose {
namespace {

// How many bytes the character at the front has, or 0 if it is not valid (RFC 3629, section 4).
std::size_t character_length(std::string_view rest) {
  const auto byte = [&](std::size_t at) { return at < rest.size() ? static_cast<unsigned char>(rest[at]) : 0U; };
  const unsigned first = byte(0);
  if (first < 0x80U) {
    return first == 0 ? 0 : 1;
  }
  const std::size_t length = first >= 0xC2U && first <= 0xDFU   ? 2
                             : (first & 0xF0U) == 0xE0U         ? 3
                             : first >= 0xF0U && first <= 0xF4U ? 4
                                                                : 0;
  for (std::size_t at = 1; at < length; ++at) {
    if ((byte(at) & 0xC0U) != 0x80U) {
      return 0;
    }
  }
  const unsigned second = byte(1);
  const bool overlong = (first == 0xE0U && second < 0xA0U) || (first == 0xF0U && second < 0x90U);
  const bool beyond = (first == 0xEDU && second > 0x9FU) || (first == 0xF4U && second > 0x8FU);
  return overlong || beyond ? 0 : length;
}

}  // namespace

std::optional<std::size_t> first_bad_byte(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = character_length(text.substr(at));
    if (length == 0) {
      return at;
    }
    at += length;
  }
  return std::nullopt;
}

bool check_encoding(const source::SourceMap& sources, source::FileId file, Diagnostics& diagnostics) {
  const auto bad = first_bad_byte(sources.text(file));
  if (bad) {
    const auto at = static_cast<std::uint32_t>(*bad);
    diagnostics.error(Code::file_encoding, {file, at, at + 1},
                      "found a byte that is not text in `" + std::string(sources.name(file)) + "`",
                      "save the file as plain text in UTF-8");
  }
  return !bad;
}

}  // namespace plumbrule::diagnose
