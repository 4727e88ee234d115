#include "show/report/parts/markup.hpp"

#include <algorithm>

#include "base/diagnose/encoding.hpp"
#include "base/diagnose/quote.hpp"

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

// How long the tag is that stands in front; a drawing or a digest counts as one.
std::size_t tag(std::string_view html) {
  const std::string_view last = html.starts_with("<svg") ? "</svg>" : html.starts_with("<code") ? "</code>" : ">";
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

std::size_t length(std::string_view html) {
  std::size_t out = 0;
  for (; !html.empty(); ++out) {
    html.remove_prefix(character(html));
  }
  return out;
}

std::string every_few_letters(std::string_view part) {
  constexpr std::size_t step = 4;
  std::string out;
  for (std::size_t count = 0; !part.empty(); ++count) {
    const std::string_view one = part.substr(0, character(part));
    out += count > 0 && count % step == 0 ? "<wbr>" : "";
    out += one;
    part.remove_prefix(one.size());
  }
  return out;
}

// Behind the first joints; parts that are still longer than words of the trade behind the second, and so on.
std::string broken_behind(std::string_view word, std::string_view joints, std::string_view second) {
  constexpr std::size_t long_part = 20;
  std::string out;
  while (!word.empty()) {
    const std::size_t size = std::min(word.find_first_of(joints), word.size() - 1) + 1;
    const std::string_view part = word.substr(0, size);
    out += out.empty() ? "" : "<wbr>";
    out += length(part) <= long_part ? std::string(part)
           : second.empty()          ? every_few_letters(part)
                                     : broken_behind(part, second, "");
    word.remove_prefix(size);
  }
  return out;
}

std::string broken_word(std::string_view word) {
  constexpr std::size_t long_word = 16;  // shorter ones find a line
  return length(word) <= long_word ? std::string(word) : broken_behind(word, "/_-", ".:");
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

void append_breakable(std::string& page, const Markup& markup) {
  std::string_view rest = markup.html();
  while (!rest.empty()) {
    const std::size_t size = rest.front() == '<' ? tag(rest) : std::min(rest.find('<'), rest.size());
    page += rest.front() == '<' ? std::string(rest.substr(0, size)) : broken(rest.substr(0, size));
    rest.remove_prefix(size);
  }
}

Markup breakable(const Markup& markup) {
  std::string out;
  append_breakable(out, markup);
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

Frame pour_around(std::string_view text, std::string_view gap,
                  std::initializer_list<std::pair<std::string_view, const Markup*>> holes) {
  const std::string hole = "[[" + std::string(gap) + "]]";
  const std::size_t at = text.find(hole);
  return {pour(text.substr(0, at), holes), pour(text.substr(at + hole.size()), holes)};
}

}  // namespace plumbrule::report
