#include "base/diagnose/render.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/diagnose/quote.hpp"
#include "base/source/source.hpp"

namespace plumbrule::diagnose {
namespace {

constexpr std::uint32_t widest_excerpt = 120;

std::string_view severity_text(Severity severity) {
  return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "note";
}

std::string paint(const std::string& text, const char* colour, bool wanted) {
  return wanted ? "\x1b[" + std::string(colour) + "m" + text + "\x1b[0m" : text;
}

std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), source::starts_character));
}

// A stretch of a line around the underlined part, tabs as blanks, so that the marks below stand right.
struct Excerpt {
  std::string text;
  std::size_t before = 0;  // characters in front of the underlined part
  std::size_t marked = 1;
};

std::string plain(std::string_view text) {
  std::string out(text);
  std::replace(out.begin(), out.end(), '\t', ' ');
  return printable(out);
}

std::size_t character_start(std::string_view text, std::size_t at) {
  while (at > 0 && at < text.size() && !source::starts_character(text[at])) {
    --at;
  }
  return std::min(at, text.size());
}

Excerpt excerpt(const source::SourceMap& sources, const source::Span& span, const source::Place& place) {
  const std::string_view line = sources.line_text(span.file, place.line);
  const std::string_view whole = sources.text(span.file);
  const auto begin = static_cast<std::size_t>(whole.data() + span.begin - line.data());
  const std::size_t end = std::min<std::size_t>(begin + (span.end - span.begin), line.size());
  const std::size_t from = line.size() > widest_excerpt && begin > widest_excerpt / 2
                               ? character_start(line, begin - widest_excerpt / 2)
                               : 0;
  const std::size_t to = character_start(line, std::min(line.size(), from + widest_excerpt));
  const std::size_t first = std::min(begin, to);
  const std::size_t last = std::clamp(end, first, to);
  Excerpt out{plain(line.substr(from, to - from)), characters(line.substr(from, first - from)),
              std::max<std::size_t>(characters(line.substr(first, last - first)), 1)};
  if (from > 0) {
    out.text = "..." + out.text;
    out.before += 3;
  }
  if (to < line.size()) {
    out.text += "...";
  }
  return out;
}

std::string underlined(const source::SourceMap& sources, const Label& label, char mark, bool colour) {
  const source::Place place = sources.place(label.span);
  const Excerpt part = excerpt(sources, label.span, place);
  const std::string number = std::to_string(place.line);
  std::string out = "  " + number + " | " + part.text + "\n  " + std::string(number.size(), ' ') + " | " +
                    std::string(part.before, ' ') +
                    paint(std::string(part.marked, mark), mark == '^' ? "31" : "36", colour);
  out += label.text.empty() ? "\n" : " " + printable(label.text) + "\n";
  return out;
}

}  // namespace

std::string render_text(const Diagnostic& diagnostic, const source::SourceMap& sources, bool colour) {
  const std::string place = printable(sources.place_text(diagnostic.primary.span));
  std::string out = place.empty() ? "" : place + ": ";
  out += paint(std::string(severity_text(diagnostic.severity)),
               diagnostic.severity == Severity::error ? "1;31" : "1;33", colour);
  out += ": " + printable(diagnostic.message) + " [" + std::string(text(diagnostic.code)) + "]\n";
  if (diagnostic.primary.span.known()) {
    out += underlined(sources, diagnostic.primary, '^', colour);
  }
  for (const Label& label : diagnostic.secondary) {
    if (label.span.known()) {
      out += "  " + printable(sources.place_text(label.span)) + ":\n" + underlined(sources, label, '-', colour);
    }
  }
  out += diagnostic.help.empty() ? "" : "  to mend: " + printable(diagnostic.help) + "\n";
  return out;
}

nlohmann::ordered_json render_json(const Diagnostics& diagnostics, const source::SourceMap& sources) {
  using Json = nlohmann::ordered_json;
  const auto place = [&](const Label& label) {
    Json out = Json::object();
    if (label.span.known()) {
      const source::Place at = sources.place(label.span);
      out["file"] = std::string(at.file);
      out["line"] = at.line;
      out["column"] = at.column;
      out["text"] = std::string(sources.text(label.span).substr(0, widest_excerpt));
    }
    if (!label.text.empty()) {
      out["label"] = label.text;
    }
    return out;
  };
  Json all = Json::array();
  for (const Diagnostic& one : diagnostics.all()) {
    Json secondary = Json::array();
    for (const Label& label : one.secondary) {
      secondary.push_back(place(label));
    }
    all.push_back({{"code", std::string(text(one.code))},
                   {"severity", std::string(severity_text(one.severity))},
                   {"message", one.message},
                   {"place", place(one.primary)},
                   {"also", secondary},
                   {"help", one.help}});
  }
  return all;
}

}  // namespace plumbrule::diagnose
