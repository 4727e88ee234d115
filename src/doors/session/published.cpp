// Diagnostics as other programs see them.

#include <nlohmann/json.hpp>

#include "base/source/version.hpp"
#include "doors/session/bodies.hpp"

namespace plumbrule {
namespace {

// Code points beyond the first 65,536 take two units; they are those of four bytes.
std::uint32_t units_of(std::string_view text) {
  std::uint32_t out = 0;
  for (const char byte : text) {
    const auto value = static_cast<unsigned char>(byte);
    out += source::starts_character(byte) ? (value >= 0xF0U ? 2U : 1U) : 0U;
  }
  return out;
}

Position position_at(const source::SourceMap& sources, source::FileId file, std::uint32_t at) {
  const source::Place place = sources.place({file, at, at});
  const std::string_view before = sources.text(file).substr(0, at);
  const std::size_t line_end = before.rfind('\n');
  const std::string_view in_line = before.substr(line_end == std::string_view::npos ? 0 : line_end + 1);
  return {place.line, place.column, at, place.line - 1, units_of(in_line)};
}

std::optional<Range> range_of(const source::SourceMap& sources, const source::Span& span) {
  if (!span.known()) {
    return std::nullopt;
  }
  return Range{std::string(sources.name(span.file)), position_at(sources, span.file, span.begin),
               position_at(sources, span.file, span.end)};
}

Diagnostic::Severity severity_of(diagnose::Severity severity) {
  switch (severity) {
    case diagnose::Severity::error:
      return Diagnostic::Severity::error;
    case diagnose::Severity::warning:
      return Diagnostic::Severity::warning;
    case diagnose::Severity::note:
      break;
  }
  return Diagnostic::Severity::note;
}

std::string_view word_of(Diagnostic::Severity severity) {
  switch (severity) {
    case Diagnostic::Severity::error:
      return "error";
    case Diagnostic::Severity::warning:
      return "warning";
    case Diagnostic::Severity::note:
      break;
  }
  return "note";
}

using Json = nlohmann::ordered_json;

Json json_of(const Position& at) {
  return {{"line", at.line},
          {"column", at.column},
          {"byte", at.byte},
          {"utf16_line", at.utf16_line},
          {"utf16_unit", at.utf16_unit}};
}

Json json_of(const std::optional<Range>& where) {
  return where ? Json{{"file", where->file}, {"begin", json_of(where->begin)}, {"end", json_of(where->end)}}
               : Json(nullptr);
}

}  // namespace

std::vector<Diagnostic> published(const diagnose::Diagnostics& all, const source::SourceMap& sources) {
  std::vector<Diagnostic> out;
  out.reserve(all.all().size());
  for (const diagnose::Diagnostic& from : all.all()) {
    Diagnostic& to = out.emplace_back();
    to.severity = severity_of(from.severity);
    to.code = diagnose::text(from.code);
    to.message = from.message;
    to.help = from.help;
    to.where = range_of(sources, from.primary.span);
    for (const diagnose::Label& label : from.secondary) {
      to.related.push_back({label.text, range_of(sources, label.span)});
    }
  }
  return out;
}

bool has_errors(const std::vector<Diagnostic>& all) {
  for (const Diagnostic& diagnostic : all) {
    if (diagnostic.severity == Diagnostic::Severity::error) {
      return true;
    }
  }
  return false;
}

std::string json_of(const std::vector<Diagnostic>& all) {
  Json out = Json::array();
  for (const Diagnostic& diagnostic : all) {
    Json related = Json::array();
    for (const Remark& remark : diagnostic.related) {
      related.push_back({{"text", remark.text}, {"where", json_of(remark.where)}});
    }
    out.push_back({{"severity", std::string(word_of(diagnostic.severity))},
                   {"code", diagnostic.code},
                   {"message", diagnostic.message},
                   {"help", diagnostic.help},
                   {"where", json_of(diagnostic.where)},
                   {"related", related}});
  }
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string_view version() { return source::version(); }

}  // namespace plumbrule
