#include "exact_text.hpp"

#include <vector>

#include "lines.hpp"

namespace plumbrule::cases {
namespace {
constexpr std::string_view no_line_end = "\\no end of line";
}

std::string encode_text(std::string_view text) {
  std::string written;
  for (const std::string_view line : split_lines(text)) {
    if (line.starts_with('\\') || line.starts_with(section_mark)) {
      written += '\\';
    }
    written += line;
  }
  if (!written.empty() && !written.ends_with('\n')) {
    written.append("\n").append(no_line_end).append("\n");
  }
  return written;
}

std::optional<std::string> decode_text(std::string_view written) {
  std::string text;
  const std::vector<std::string_view> lines = split_lines(written);
  for (std::size_t at = 0; at < lines.size(); ++at) {
    std::string_view line = lines[at];
    if (at + 1 == lines.size() && at > 0 && trimmed(line) == no_line_end) {
      text.pop_back();
      return text;
    }
    if (line.starts_with('\\')) {
      line.remove_prefix(1);
      if (!line.starts_with('\\') && !line.starts_with(section_mark)) {
        return std::nullopt;
      }
    }
    text += line;
  }
  if (!text.empty() && !text.ends_with('\n')) {  // the last line of a case file that was cut short
    text += '\n';
  }
  return text;
}

}  // namespace plumbrule::cases
