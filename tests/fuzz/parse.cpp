// Any bytes as a rule file: parsing ends, and every diagnostic can be printed.

#include "target.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace plumbrule;
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  (void)fuzz::parsed(sources, fuzz::text_of(data, size), diagnostics);
  fuzz::print_all(diagnostics, sources);
  return 0;
}
