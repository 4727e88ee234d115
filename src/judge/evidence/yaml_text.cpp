#include "judge/evidence/yaml_text.hpp"

#include <algorithm>

namespace plumbrule::evidence {
namespace {

constexpr std::string_view blanks = " \t\r\n";
// Behind one of these, or at the beginning of a line, a quote opens a value; elsewhere it is an apostrophe.
constexpr std::string_view openers = ":-?,[{\n";

bool is_yaml_blank(char byte) { return blanks.find(byte) != std::string_view::npos; }

std::size_t line_end(std::string_view text, std::size_t at) { return std::min(text.find('\n', at), text.size()); }

// Behind the closing quote of the quoted text that begins at `at`.
std::optional<std::size_t> quoted_end(std::string_view text, std::size_t at) {
  const char quote = text[at];
  for (++at; at < text.size(); ++at) {
    if (quote == '"' && text[at] == '\\') {
      ++at;
    } else if (text[at] == quote) {
      if (quote == '"' || at + 1 >= text.size() || text[at + 1] != quote) {
        return at + 1;
      }
      ++at;  // '' is an apostrophe inside single quotes
    }
  }
  return std::nullopt;
}

// Folding and indentation change only the blanks, so the other bytes of the value stand in the text in their order.
std::size_t same_bytes_end(std::string_view text, std::size_t at, std::string_view value, std::size_t if_empty) {
  std::size_t end = if_empty;
  for (const char byte : value) {
    if (is_yaml_blank(byte)) {
      continue;
    }
    while (at < text.size() && is_yaml_blank(text[at])) {
      ++at;
    }
    if (at >= text.size() || text[at] != byte) {
      break;
    }
    end = ++at;
  }
  return end;
}

bool opens_value(std::string_view text, std::size_t at) {
  while (at > 0 && (text[at - 1] == ' ' || text[at - 1] == '\t')) {
    --at;
  }
  return at == 0 || openers.find(text[at - 1]) != std::string_view::npos;
}

}  // namespace

std::optional<std::size_t> first_control_character(std::string_view text) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    const auto byte = static_cast<unsigned char>(text[at]);
    const bool low = byte < 0x20U && !is_yaml_blank(text[at]);
    const bool high = byte == 0xC2U && at + 1 < text.size() && static_cast<unsigned char>(text[at + 1]) < 0xA0U;
    if (low || high || byte == 0x7FU) {
      return at;
    }
  }
  return std::nullopt;
}

std::size_t next_written(std::string_view text, std::size_t at) {
  while (at < text.size() && (is_yaml_blank(text[at]) || text[at] == '#')) {
    at = text[at] == '#' ? line_end(text, at) : at + 1;
  }
  return std::min(at, text.size());
}

std::size_t word_end(std::string_view text, std::size_t at) {
  return std::min(text.find_first_of(" \t\r\n,[]{}", at), text.size());
}

std::optional<std::size_t> scalar_end(std::string_view text, std::size_t begin, std::string_view value) {
  if (begin >= text.size()) {
    return text.size();
  }
  const char first = text[begin];
  if (first == '"' || first == '\'') {
    return quoted_end(text, begin);
  }
  if (first == '|' || first == '>') {
    return same_bytes_end(text, line_end(text, begin), value, word_end(text, begin));
  }
  return same_bytes_end(text, begin, value, begin);
}

std::optional<std::size_t> unclosed_quote(std::string_view text, std::size_t from) {
  for (std::size_t at = from; at < text.size(); ++at) {
    if (text[at] == '#' && (at == 0 || is_yaml_blank(text[at - 1]))) {
      at = line_end(text, at);
    } else if ((text[at] == '"' || text[at] == '\'') && opens_value(text, at)) {
      const auto end = quoted_end(text, at);
      if (!end) {
        return at;
      }
      at = *end - 1;
    }
  }
  return std::nullopt;
}

}  // namespace plumbrule::evidence
