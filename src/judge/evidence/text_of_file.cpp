#include "judge/evidence/text_of_file.hpp"

#include "base/diagnose/encoding.hpp"
#include "judge/evidence/document.hpp"
#include "judge/evidence/yaml_text.hpp"

namespace plumbrule::evidence {

bool without_control_characters(const TextOfFile& text, source::FileId file, diagnose::Code code,
                                diagnose::Diagnostics& diagnostics) {
  const auto bad = first_control_character(text.text);
  if (bad) {
    const auto at = static_cast<std::uint32_t>(text.offset + *bad);
    const std::uint32_t end = at + (text.text[*bad] == '\xC2' ? 2 : 1);
    diagnostics.error(code, {file, at, end}, "found a control character",
                      "take it out; it cannot be seen, but it is in the text");
  }
  return !bad;
}

std::optional<TextOfFile> text_of_file(const source::SourceMap& sources, source::FileId file, diagnose::Code code,
                                       diagnose::Diagnostics& diagnostics) {
  TextOfFile out{sources.text(file), 0};
  if (out.text.size() > largest_submittal) {
    diagnostics.error(diagnose::Code::submittal_shape, {file, 0, 0},
                      "found a file of " + std::to_string(out.text.size()) + " bytes, more than the " +
                          std::to_string(largest_submittal) + " that a submittal may have",
                      "put each submittal in a file of its own");
    return std::nullopt;
  }
  if (!diagnose::check_encoding(sources, file, diagnostics) ||
      !without_control_characters(out, file, code, diagnostics)) {
    return std::nullopt;
  }
  while (out.text.starts_with(source::byte_order_mark)) {  // files joined by a program may have several
    out.text.remove_prefix(source::byte_order_mark.size());
    out.offset += source::byte_order_mark.size();
  }
  return out;
}

}  // namespace plumbrule::evidence
