// Any bytes as a submittal: engine and independent judge agree on every clause.

#include <cstdio>

#include "engine.hpp"
#include "target.hpp"

namespace {

using namespace plumbrule;

struct Rules {
  source::SourceMap sources;
  std::unique_ptr<oracle::RuleSet> set;
};

std::unique_ptr<Rules> make_rules() {
  auto out = std::make_unique<Rules>();
  diagnose::Diagnostics diagnostics;
  check::Loaded loaded;
  loaded.files = fuzz::parsed(out->sources, fuzz::specification(), diagnostics);
  loaded.files.push_back(std::move(fuzz::parsed(out->sources, fuzz::vocabulary(), diagnostics).front()));
  out->set = oracle::prepare(out->sources, std::move(loaded), {}, diagnostics);
  if (!out->set) {
    fuzz::print_all(diagnostics, out->sources);
    __builtin_trap();  // the specification must stay right
  }
  return out;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const std::unique_ptr<Rules> rules = make_rules();  // made once: the same for every input
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  const auto document = evidence::read_yaml(sources, sources.add("fuzz.yaml", fuzz::text_of(data, size)), diagnostics);
  if (!document) {
    return 0;
  }
  const oracle::Comparison comparison = oracle::compare(*rules->set, *document, {}, std::nullopt);
  for (const oracle::Difference& one : comparison.differences) {
    std::fprintf(stderr, "clause %s: engine %s, judge %s\n", one.clause.c_str(), one.engine.c_str(), one.judge.c_str());
  }
  if (!comparison.differences.empty()) {
    __builtin_trap();
  }
  return 0;
}
