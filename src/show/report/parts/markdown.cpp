#include "show/report/parts/markdown.hpp"

#include "base/diagnose/quote.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::report {
namespace {

bool digit(char byte) { return byte >= '0' && byte <= '9'; }

// At the beginning of a line these would begin a list, a heading or a rule.
std::size_t line_mark(std::string_view text) {
  if (!text.empty() && (text.front() == '-' || text.front() == '+' || text.front() == '=')) {
    return 0;
  }
  std::size_t at = 0;
  while (at < text.size() && digit(text[at])) {
    ++at;
  }
  const bool mark = at > 0 && at < text.size() && (text[at] == '.' || text[at] == ')');
  return mark && (at + 1 == text.size() || text[at + 1] == ' ') ? at : std::string_view::npos;
}

// An address that readers of Markdown make a link without being asked.
bool address(std::string_view text, std::size_t at) {
  return (text[at] == ':' && text.substr(at + 1).starts_with("//")) ||
         (text[at] == '.' && at >= 3 && text.substr(at - 3).starts_with("www"));
}

}  // namespace

std::string markdown_text(std::string_view text) {
  constexpr std::string_view signs = "\\`*_[]#|~!@$^";
  const std::string line = diagnose::printable(explain::one_line(text));
  const std::size_t begins = line_mark(line);
  std::string out;
  for (std::size_t at = 0; at < line.size(); ++at) {
    const char byte = line[at];
    if (byte == '<' || byte == '>' || byte == '&') {
      out += byte == '<' ? "&lt;" : byte == '>' ? "&gt;" : "&amp;";
      continue;
    }
    if (signs.find(byte) != std::string_view::npos || at == begins || address(line, at)) {
      out.push_back('\\');
    }
    out.push_back(byte);
  }
  return out;
}

}  // namespace plumbrule::report
