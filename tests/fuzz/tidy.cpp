// Any bytes as a rule file: what can be read is laid out with nothing but blanks changed, can be read again without an
// error, and laying it out a second time changes nothing.

#include "language/syntax/tidy.hpp"
#include "target.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace plumbrule;
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  const std::string text = fuzz::text_of(data, size);
  if (text.starts_with("\xEF\xBB\xBF") || diagnose::first_bad_byte(text)) {
    return 0;  // the precondition of tidy()
  }
  const auto once = syntax::tidy(sources, sources.add("fuzz.plumb", text), diagnostics);
  if (!once) {
    return 0;
  }
  const auto twice = syntax::tidy(sources, sources.add("again.plumb", *once), diagnostics);
  if (!syntax::same_but_for_blanks(text, *once) || !twice || *twice != *once) {
    __builtin_trap();
  }
  return 0;
}
