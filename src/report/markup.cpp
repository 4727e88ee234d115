#include "report/markup.hpp"

#include "diagnose/encoding.hpp"
#include "diagnose/quote.hpp"

namespace plumbrule::report {
namespace {

// Bytes that are not UTF-8 made a replacement mark, so that no reader of the page guesses another encoding.
std::string valid(std::string_view text) {
  std::string out;
  for (auto bad = diagnose::first_bad_byte(text); bad; bad = diagnose::first_bad_byte(text)) {
    out += text.substr(0, *bad);
    out += "\xEF\xBF\xBD";
    text.remove_prefix(*bad + 1);
  }
  return out + std::string(text);
}

std::string blanks(std::string text) {
  for (char& byte : text) {
    byte = byte == '\n' || byte == '\r' || byte == '\t' ? ' ' : byte;
  }
  return text;
}

}  // namespace

Markup escaped(std::string_view text) {
  std::string out;
  for (const char byte : diagnose::printable(blanks(valid(text)))) {
    switch (byte) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out.push_back(byte);
    }
  }
  return Markup(std::move(out));
}

Markup pour(std::string_view text, std::initializer_list<std::pair<std::string_view, const Markup*>> holes) {
  std::string out;
  for (std::size_t open = text.find("[["); open != std::string_view::npos; open = text.find("[[")) {
    const std::size_t close = text.find("]]", open);
    const std::string_view key = text.substr(open + 2, close - open - 2);
    out += text.substr(0, open);
    for (const auto& [name, value] : holes) {
      out += name == key ? value->html() : "";
    }
    text.remove_prefix(close + 2);
  }
  return Markup(out + std::string(text));
}

}  // namespace plumbrule::report
