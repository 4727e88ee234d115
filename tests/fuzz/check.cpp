// Any bytes as a rule file beside a vocabulary: checking ends; what passes the checks compiles, lints and evaluates on
// its own examples without a further error.

#include "judge/evaluate/evaluate.hpp"
#include "judge/evidence/evidence.hpp"
#include "target.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace plumbrule;
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  auto files = fuzz::parsed(sources, fuzz::text_of(data, size), diagnostics);
  auto library = fuzz::parsed(sources, fuzz::vocabulary(), diagnostics);
  if (!files.empty()) {
    files.push_back(std::move(library.front()));
    check::Loaded loaded;
    loaded.files = {files.front()};
    loaded.amendments = {files.front()};
    diagnose::Diagnostics mismatches;
    check::amend(loaded, {}, diagnostics, mismatches);
    const auto rules = check::check(sources, files, diagnostics);
    if (rules) {
      check::lint(*rules, diagnostics);
      const plan::Plan plan = plan::compile(*rules);
      for (const check::Example& example : rules->examples) {
        (void)evaluate::evaluate(plan, evidence::from_example(example, *rules));
      }
    }
  }
  fuzz::print_all(diagnostics, sources);
  return 0;
}
