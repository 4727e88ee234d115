#include "report/markup.hpp"

#include <algorithm>

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

// How long the tag is that stands in front; a drawing counts as one.
std::size_t tag(std::string_view html) {
  const std::string_view last = html.starts_with("<svg") ? "</svg>" : ">";
  const std::size_t end = html.find(last);
  return end == std::string_view::npos ? html.size() : end + last.size();
}

// How many bytes the character has that stands in front; an entity counts as one.
std::size_t character(std::string_view html) {
  if (html.front() == '&') {
    return std::min(html.find(';'), html.size() - 1) + 1;
  }
  std::size_t size = 1;
  while (size < html.size() && (static_cast<unsigned char>(html[size]) & 0xC0U) == 0x80U) {
    ++size;
  }
  return size;
}

constexpr std::string_view joints = "/_-.:";

std::string broken_word(std::string_view word) {
  constexpr std::size_t long_word = 16;  // bytes; shorter ones find a line
  constexpr std::size_t long_part = 20;  // characters; longer than words of the trade
  constexpr std::size_t step = 4;
  if (word.size() <= long_word) {
    return std::string(word);
  }
  std::string out;
  std::string part;
  std::string cut;  // the same, to be broken anywhere
  std::size_t count = 0;
  const auto close = [&] {
    out += count > long_part ? cut : part;
    part.clear();
    cut.clear();
    count = 0;
  };
  while (!word.empty()) {
    const std::string_view one = word.substr(0, character(word));
    cut += count > 0 && count % step == 0 ? "<wbr>" : "";
    part += one;
    cut += one;
    ++count;
    word.remove_prefix(one.size());
    if (joints.find(one) != std::string_view::npos && !word.empty()) {
      close();
      out += "<wbr>";
    }
  }
  close();
  return out;
}

std::string broken(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::size_t size = std::min(text.find_first_of(" \n"), text.size());
    out += broken_word(text.substr(0, size));
    text.remove_prefix(size);
    if (!text.empty()) {
      const bool number = !out.empty() && out.back() >= '0' && out.back() <= '9';
      const bool percent = text.starts_with(" %") && (text.size() == 2 || text[2] == ' ' || text[2] == ',');
      out += number && percent ? "&nbsp;" : std::string(1, text.front());
      text.remove_prefix(1);
    }
  }
  return out;
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

Markup breakable(const Markup& markup) {
  std::string out;
  std::string_view rest = markup.html_;
  while (!rest.empty()) {
    const std::size_t size = rest.front() == '<' ? tag(rest) : std::min(rest.find('<'), rest.size());
    out += rest.front() == '<' ? std::string(rest.substr(0, size)) : broken(rest.substr(0, size));
    rest.remove_prefix(size);
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
