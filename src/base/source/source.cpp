#include "base/source/source.hpp"

#include <algorithm>
#include <iterator>

namespace plumbrule::source {

Span cover(const Span& a, const Span& b) {
  if (!a.known()) {
    return b;
  }
  if (!b.known() || b.file != a.file) {
    return a;
  }
  return {a.file, std::min(a.begin, b.begin), std::max(a.end, b.end)};
}

FileId SourceMap::add(std::string name, std::string text, std::uint32_t first_line) {
  File file{std::move(name), std::move(text), first_line, {0}};
  for (std::size_t at = 0; at < file.text.size(); ++at) {
    if (file.text[at] == '\n') {
      file.line_starts.push_back(static_cast<std::uint32_t>(at + 1));
    }
  }
  files_.push_back(std::make_shared<const File>(std::move(file)));
  return static_cast<FileId>(files_.size() - 1);
}

std::string_view SourceMap::text(const Span& span) const {
  const std::string_view whole = text(span.file);
  return whole.substr(span.begin, span.end - span.begin);
}

Place SourceMap::place(const Span& span) const {
  const File& file = *files_.at(span.file);
  const auto next = std::upper_bound(file.line_starts.begin(), file.line_starts.end(), span.begin);
  const auto line = static_cast<std::uint32_t>(next - file.line_starts.begin()) + file.first_line - 1;
  const std::uint32_t start = *(next - 1);
  const std::string_view before = std::string_view(file.text).substr(start, span.begin - start);
  const auto characters = std::count_if(before.begin(), before.end(), starts_character);
  return {file.name, line, static_cast<std::uint32_t>(characters) + 1};
}

std::string_view SourceMap::line_text(FileId id, std::uint32_t line) const {
  const File& file = *files_.at(id);
  const std::uint32_t start = file.line_starts.at(line - file.first_line);
  const std::size_t end = std::min(file.text.find('\n', start), file.text.size());
  std::string_view found = std::string_view(file.text).substr(start, end - start);
  if (found.ends_with('\r')) {
    found.remove_suffix(1);
  }
  return found;
}

std::string SourceMap::place_text(const Span& span) const {
  if (!span.known()) {
    return {};
  }
  const Place at = place(span);
  return std::string(at.file) + ":" + std::to_string(at.line) + ":" + std::to_string(at.column);
}

}  // namespace plumbrule::source
